namespace Clutchwright.Desk.Animals;

/// <summary>A statement as a form holds it.</summary>
/// <param name="Kind"><c>Seen</c>, <c>LookedAtNormal</c>, <c>Told</c>, <c>DnaTest</c>, <c>ProvenByBreeding</c> or <c>RuledOut</c>.</param>
/// <param name="Text">Trade text.</param>
/// <param name="By">By whom.</param>
/// <param name="When">A date, a year or words.</param>
/// <param name="Confidence">How sure, above 0 and at most 1.</param>
public sealed record StatementForm(string Kind, string Text, string? By, string? When, double Confidence = 1.0)
{
    /// <summary>Gets whether a DNA test found what the text names.</summary>
    public bool IsFound { get; init; } = true;

    /// <summary>Gets the chance that the test finds it where it is.</summary>
    public double Sensitivity { get; init; } = 0.99;

    /// <summary>Gets the chance that the test finds nothing where it is not.</summary>
    public double Specificity { get; init; } = 0.99;
}
