using System.Globalization;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Planning.Seasons;

namespace Clutchwright.Desk.Season;

/// <summary>Puts what a plan says into sentences.</summary>
internal static class SeasonWords
{
    /// <summary>A figure of a goal.</summary>
    public static string Figure(SeasonFigureKind kind, double figure) => kind switch
    {
        SeasonFigureKind.Chance => OddsText.Percent(Probability.Rounded(figure)),
        SeasonFigureKind.Bits => $"{figure:0.00} bits",
        _ => figure.ToString("0.##"),
    };

    /// <summary>One of several things that clash.</summary>
    public static SeasonClashLine Clash(SeasonProblem problem, SeasonClash clash, Func<int, string?> whyBarred)
    {
        var place = clash.Place ?? -1;
        var text = clash.Kind switch
        {
            SeasonDemand.PinnedPair => $"{Pair(place)} is pinned.",
            SeasonDemand.PinnedSire => $"{problem.Sires[place].Name} is to be used.",
            SeasonDemand.PinnedDam => $"{problem.Dams[place].Name} is to be used.",
            SeasonDemand.Matings => $"{problem.Sires[place].Name} has {clash.Asked:0} {(clash.Asked == 1.0 ? "mating" : "matings")} at most.",
            SeasonDemand.OneClutch => $"{problem.Dams[place].Name} has one clutch a season.",
            SeasonDemand.Clutches => $"There are {clash.Asked:0} clutches at most.",
            SeasonDemand.Eggs => $"There is room for {clash.Asked:0.#} eggs.",
            SeasonDemand.Hatchlings => $"There is room for {clash.Asked:0.#} hatchlings.",
            SeasonDemand.MeanInbreeding => $"The mean inbreeding is to be {clash.Asked:0.##%} at most.",
            SeasonDemand.Least => $"The goal '{problem.Goals[place].Name}' asks for {Asked(place, clash.Asked!.Value)} at least.",
            _ => $"{Pair(place)} cannot be paired: {Bar(problem, place, whyBarred)}",
        };
        return new(text, Change(problem, clash, place));

        string Pair(int p) => $"{problem.Sires[problem.Pairs[p].Sire].Name} with {problem.Dams[problem.Pairs[p].Dam].Name}";

        string Asked(int g, double figure) => Figure(KindOf(problem.Goals[g]), figure);
    }

    /// <summary>What a goal's figure is.</summary>
    public static SeasonFigureKind KindOf(SeasonGoal goal) => goal switch
    {
        SeasonGoal.AtLeast => SeasonFigureKind.Chance,
        SeasonGoal.Doubt => SeasonFigureKind.Bits,
        _ => SeasonFigureKind.Amount,
    };

    private static string? Change(SeasonProblem problem, SeasonClash clash, int place) => (clash.Kind, clash.Enough) switch
    {
        (SeasonDemand.PinnedPair or SeasonDemand.PinnedSire or SeasonDemand.PinnedDam, _) => "Take this away.",
        (SeasonDemand.Barred, { } enough) => $"Accept inbreeding of {Up(enough * 100.0)} %.",
        (SeasonDemand.OneClutch, _) or (_, null) => null,
        (SeasonDemand.Matings, { } enough) => $"Let him have {enough:0}.",
        (SeasonDemand.Clutches, { } enough) => $"Allow {enough:0}.",
        (SeasonDemand.Eggs or SeasonDemand.Hatchlings, { } enough) => $"Make room for {Up(enough)}.",
        (SeasonDemand.MeanInbreeding, { } enough) => $"Accept {Up(enough * 100.0)} %.",
        (SeasonDemand.Least, { } enough) => $"Ask for no more than {Figure(KindOf(problem.Goals[place]), enough)}.",
        _ => null,
    };

    // Rounded so that the number said is enough.
    private static string Up(double number) => (Math.Ceiling((number * 100.0) - 1e-6) / 100.0).ToString("0.##", CultureInfo.CurrentCulture);

    private static string Bar(SeasonProblem problem, int place, Func<int, string?> whyBarred) => problem.Bars[place] switch
    {
        SeasonBar.SireNotReady or SeasonBar.DamNotReady => whyBarred(place) ?? "one of them is not ready.",
        SeasonBar.SireBanned or SeasonBar.DamBanned => "one of them is left out.",
        SeasonBar.PairBanned => "the pair is banned.",
        SeasonBar.Danger => whyBarred(place) ?? "their young can die or suffer.",
        SeasonBar.Inbreeding => $"their young would be inbred {problem.Pairs[place].Inbreeding:0.##%}.",
        SeasonBar.NoMatings => "he has no matings.",
        _ => "it is barred.",
    };
}
