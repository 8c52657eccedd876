using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Desk.Season;

/// <summary>What a keeper asks of a season, as read from the goals file.</summary>
internal sealed record GoalsFile(
    DateOnly? On,
    IReadOnlyList<SeasonWish> Wishes,
    SeasonRules Rules,
    IReadOnlyDictionary<string, SeasonAnimal> Animals,
    IReadOnlyList<SeasonCouple> Pinned,
    IReadOnlyList<SeasonCouple> Banned,
    IReadOnlyList<SeasonCouple> Lifted,
    (int First, int Second)? TradeOff);

/// <summary>One goal.</summary>
internal abstract record SeasonWish(string Name, double Weight, double? Least)
{
    /// <summary>At least so many of a want.</summary>
    public sealed record AtLeast(string Name, double Weight, double? Least, string Text, Want Want, int Count) : SeasonWish(Name, Weight, Least);

    /// <summary>The doubt whether an animal is het is to be settled.</summary>
    public sealed record Prove(string Name, double Weight, double? Least, string Tag, Allele Allele) : SeasonWish(Name, Weight, Least);

    /// <summary>The expected number of hatchlings of a kind.</summary>
    public sealed record Expect(string Name, double Weight, double? Least, string Text, Want Want) : SeasonWish(Name, Weight, Least);

    /// <summary>What hatchlings are worth, by kind.</summary>
    public sealed record Value(string Name, double Weight, double? Least, double Each, IReadOnlyList<(string Text, Want Want, double Worth)> Kinds)
        : SeasonWish(Name, Weight, Least);
}

/// <summary>The limits of the season.</summary>
internal sealed record SeasonRules(
    int? Matings, int? Clutches, double? Eggs, double? Hatchlings, double? Inbreeding, double? MeanInbreeding, int? RestMonths);

/// <summary>What a keeper says of one animal for the season.</summary>
internal sealed record SeasonAnimal(int? Matings, double? MassGrams, DateOnly? LastClutch, string? Hold, bool IsPinned, bool IsLeftOut);

/// <summary>A pair that is named, by tags as written in the stock.</summary>
internal sealed record SeasonCouple(string Sire, string Dam, string? Because);
