namespace Clutchwright.Desk.Happenings;

/// <summary>Something that happened, as a person writes it.</summary>
/// <param name="Animal">The animal's tag.</param>
/// <param name="Kind">What happened, by its name.</param>
/// <param name="When">A date, a year or words; empty: today.</param>
/// <param name="Amount">A number in the unit of the kind; empty: none.</param>
/// <param name="Mate">The tag of the other of the pair; empty: none.</param>
/// <param name="Text">What else is to be said.</param>
public sealed record HappeningForm(string Animal, string Kind, string? When, string? Amount, string? Mate, string? Text)
{
    /// <summary>Gets the tag of the clutch it is about; <c>null</c> or empty: none.</summary>
    public string? Clutch { get; init; }
}
