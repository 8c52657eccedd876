namespace Clutchwright.Desk.Animals;

/// <summary>A statement as a form holds it.</summary>
/// <param name="Kind"><c>Seen</c>, <c>LookedAtNormal</c>, <c>Told</c>, <c>DnaTest</c>, <c>ProvenByBreeding</c> or <c>RuledOut</c>.</param>
/// <param name="Text">Trade text.</param>
/// <param name="By">By whom.</param>
/// <param name="When">A date, a year or words.</param>
/// <param name="Confidence">How sure, in [0, 1].</param>
public sealed record StatementForm(string Kind, string Text, string? By, string? When, double Confidence = 1.0);
