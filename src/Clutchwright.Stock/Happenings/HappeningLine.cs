using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Happenings;

/// <summary>Something that happened, as it is listed.</summary>
/// <remarks><c>Tag</c> is the animal on whose page it was written, <c>Mate</c> the other of the pair, null if it is about none, <c>Clutch</c> the clutch it is about.</remarks>
public sealed record HappeningLine(
    HappeningId HappeningId, string Tag, string? Mate, string? Clutch, HappeningKind Kind, DateRange When, double? Amount, string Text, Guid Version);
