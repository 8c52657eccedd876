namespace Clutchwright.Planning.Seasons;

/// <summary>A male of the season.</summary>
/// <param name="Name">What he is called in the plan; unique among males and females.</param>
/// <param name="Matings">The most females he can be put to, 0 or more.</param>
public sealed record SeasonSire(string Name, int Matings)
{
    /// <summary>Gets whether he is ready to breed; one that is not is never used.</summary>
    public bool IsReady { get; init; } = true;

    /// <summary>Gets whether the keeper leaves him out.</summary>
    public bool IsBanned { get; init; }

    /// <summary>Gets whether the keeper asks that he is put to at least one female.</summary>
    public bool IsPinned { get; init; }
}

/// <summary>A female of the season. She has one clutch at most.</summary>
/// <param name="Name">What she is called in the plan; unique among males and females.</param>
public sealed record SeasonDam(string Name)
{
    /// <summary>Gets whether she is ready to breed; one that is not is never used.</summary>
    public bool IsReady { get; init; } = true;

    /// <summary>Gets whether the keeper leaves her out.</summary>
    public bool IsBanned { get; init; }

    /// <summary>Gets whether the keeper asks that she is paired.</summary>
    public bool IsPinned { get; init; }
}

/// <summary>A male and a female that could be paired.</summary>
/// <param name="Sire">The place of the male, from 0.</param>
/// <param name="Dam">The place of the female, from 0.</param>
public sealed record SeasonPair(int Sire, int Dam)
{
    /// <summary>Gets the expected inbreeding coefficient of the young, in [0, 1].</summary>
    public double Inbreeding { get; init; }

    /// <summary>Gets the expected number of eggs, the chance that she lays counted in; 0 or more.</summary>
    public double Eggs { get; init; }

    /// <summary>Gets the expected number of hatchlings, counted alike; 0 or more.</summary>
    public double Hatchlings { get; init; }

    /// <summary>Gets whether the pair can give young that die or suffer; then it is left out.</summary>
    public bool IsDangerous { get; init; }

    /// <summary>Gets whether the keeper has lifted that for this pair.</summary>
    public bool IsLifted { get; init; }

    /// <summary>Gets whether the keeper forbids the pair.</summary>
    public bool IsBanned { get; init; }

    /// <summary>Gets whether the keeper asks for the pair.</summary>
    public bool IsPinned { get; init; }
}

/// <summary>What a season has room for. <c>null</c>: no limit.</summary>
public sealed record SeasonLimits
{
    /// <summary>Gets the most clutches.</summary>
    public int? Clutches { get; init; }

    /// <summary>Gets the most eggs there is room for, as an expected number.</summary>
    public double? Eggs { get; init; }

    /// <summary>Gets the most hatchlings there is room for, as an expected number.</summary>
    public double? Hatchlings { get; init; }

    /// <summary>Gets the highest expected inbreeding accepted in any pairing, in [0, 1].</summary>
    public double? Inbreeding { get; init; }

    /// <summary>Gets the highest mean of it over all pairings of the plan, in [0, 1].</summary>
    public double? MeanInbreeding { get; init; }
}

/// <summary>Why a pair cannot be in a plan.</summary>
public enum SeasonBar
{
    /// <summary>The male is not ready.</summary>
    SireNotReady = 1,

    /// <summary>The female is not ready.</summary>
    DamNotReady = 2,

    /// <summary>The male is left out.</summary>
    SireBanned = 3,

    /// <summary>The female is left out.</summary>
    DamBanned = 4,

    /// <summary>The pair is forbidden.</summary>
    PairBanned = 5,

    /// <summary>The pair can give young that die or suffer, and this is not lifted.</summary>
    Danger = 6,

    /// <summary>The young would be more inbred than accepted.</summary>
    Inbreeding = 7,

    /// <summary>The male has no matings.</summary>
    NoMatings = 8,
}
