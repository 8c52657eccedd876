namespace Clutchwright.Desk.Happenings;

/// <summary>Something that happened, in words.</summary>
/// <param name="Id">For correcting it and taking it back; empty: it stands in its clutch, and is changed there.</param>
/// <param name="Version">For noticing that someone else changed it meanwhile.</param>
/// <param name="Tag">The animal.</param>
/// <param name="Mate">The other of a pair; <c>null</c>: it is about none.</param>
/// <param name="Clutch">The clutch it is about; <c>null</c>: it is about none.</param>
/// <param name="Kind">By its name.</param>
/// <param name="What">What happened, with its amount.</param>
/// <param name="When">As the keeper put it.</param>
/// <param name="Day">The last day on which it can have been.</param>
/// <param name="Amount">In <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit; <c>null</c>: the kind has none.</param>
/// <param name="Text">What else was said.</param>
public sealed record HappeningWords(
    Guid Id, Guid Version, string Tag, string? Mate, string? Clutch, string Kind, string What, string When, DateOnly Day, double? Amount, string? Unit, string Text);

/// <summary>A kind of happening, for a form.</summary>
/// <param name="Kind">By its name.</param>
/// <param name="Words">In a word or two.</param>
/// <param name="Unit">The unit of its amount; <c>null</c>: it has none.</param>
/// <param name="IsOfAPair">Whether it is about a pair.</param>
public sealed record HappeningKindWords(string Kind, string Words, string? Unit, bool IsOfAPair);
