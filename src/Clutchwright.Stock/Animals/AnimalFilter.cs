namespace Clutchwright.Stock.Animals;

/// <summary>Which animals are asked for, in which order, and which page of them.</summary>
public sealed class AnimalFilter
{
    public const int MaxPageSize = 500;

    /// <summary>Words that must all be found in the tag, name, notes or statements, whatever the case.</summary>
    public string? Text { get; init; }

    public SexFilter Sex { get; init; } = SexFilter.Any;

    /// <summary>The statuses asked for; empty for all.</summary>
    public IReadOnlyList<AnimalStatus> Statuses { get; init; } = [];

    /// <summary>Whether the animals in the bin are asked for instead of those out of it.</summary>
    public bool InBin { get; init; }

    public AnimalOrder Order { get; init; } = AnimalOrder.Tag;

    public bool IsDescending { get; init; }

    /// <summary>From 1. A page after the last is empty.</summary>
    public int Page { get; init; } = 1;

    /// <summary>From 1 to <see cref="MaxPageSize"/>.</summary>
    public int PageSize { get; init; } = 50;
}

public enum SexFilter
{
    Any = 0,
    Female = 1,
    Male = 2,
    Unsexed = 3,
}

/// <summary>In which order animals are listed. What is not known comes last, and the tag decides between equals.</summary>
public enum AnimalOrder
{
    /// <summary>B2 before B10.</summary>
    Tag = 0,
    Name,
    Sex,
    Hatched,
    Status,
    Mass,

    /// <summary>In the order in which they were entered.</summary>
    Added,
}
