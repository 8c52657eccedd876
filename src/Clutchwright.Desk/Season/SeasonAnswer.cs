using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Season;

/// <summary>Which male goes to which female this season?</summary>
/// <param name="Goals">The goals file: JSON, as docs/how-to/season.md describes it.</param>
public sealed record SeasonQuestion(NamedFile Goals)
{
    /// <summary>Gets the pedigree file that stands for the stock; <c>null</c>: the keeper's book.</summary>
    public NamedFile? Stock { get; init; }

    /// <summary>Gets whether each choice is compared with the best plan without it.</summary>
    public bool WithRunnersUp { get; init; } = true;

    /// <summary>Gets the pairings of an earlier plan to begin from, sire and dam by tag.</summary>
    public IReadOnlyList<(string Sire, string Dam)> Before { get; init; } = [];
}

/// <summary>The plan of a season.</summary>
/// <param name="On">The day it is made for.</param>
/// <param name="Status"><c>optimal</c>, <c>feasible</c> or <c>infeasible</c>.</param>
/// <param name="Objective">What the goals' figures weigh in all.</param>
/// <param name="Bound">No plan weighs more.</param>
/// <param name="Gap">How much better another could be, as a share.</param>
/// <param name="Goals">Each goal with its figure.</param>
/// <param name="Pairings">The pairings.</param>
/// <param name="NotReady">Animals that are not ready, and why.</param>
/// <param name="LeftOut">Females that are ready and not paired.</param>
/// <param name="Dangerous">How many pairs were left out because their young could die or suffer.</param>
/// <param name="TooInbred">How many were left out for inbreeding.</param>
/// <param name="MeanInbreeding">The mean expected inbreeding of the pairings.</param>
/// <param name="Clashes">Where there is no plan: what clashes, in sentences, each with what would help.</param>
/// <param name="TradeOff">Plans from the best for one goal to the best for another, if asked for.</param>
/// <param name="ClutchText">The clutch reckoned with.</param>
/// <param name="Notes">What to mind.</param>
public sealed record SeasonAnswer(
    DateOnly On,
    string Status,
    double Objective,
    double Bound,
    double Gap,
    IReadOnlyList<SeasonGoalLine> Goals,
    IReadOnlyList<SeasonPairing> Pairings,
    IReadOnlyList<SeasonNotReady> NotReady,
    IReadOnlyList<string> LeftOut,
    int Dangerous,
    int TooInbred,
    double MeanInbreeding,
    IReadOnlyList<SeasonClashLine> Clashes,
    SeasonTradeOffLines? TradeOff,
    string ClutchText,
    IReadOnlyList<string> Notes);

/// <summary>What a goal's figure is.</summary>
public enum SeasonFigureKind
{
    /// <summary>A chance.</summary>
    Chance = 1,

    /// <summary>Bits of information.</summary>
    Bits = 2,

    /// <summary>An expected number or a value.</summary>
    Amount = 3,
}

/// <summary>A goal with its figure.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Text">What it is, in a sentence.</param>
/// <param name="Kind">What its figure is.</param>
/// <param name="Weight">What one unit weighs.</param>
/// <param name="Figure">The exact figure of the plan.</param>
/// <param name="Least">The least figure asked; <c>null</c>: none.</param>
/// <param name="Pairs">How many of the pairs that can be chosen serve it.</param>
public sealed record SeasonGoalLine(string Name, string Text, SeasonFigureKind Kind, double Weight, double Figure, double? Least, int Pairs);

/// <summary>A pairing of the plan.</summary>
/// <param name="Sire">The male.</param>
/// <param name="Dam">The female.</param>
/// <param name="Serves">The goals it serves.</param>
/// <param name="Inbreeding">The expected inbreeding of the young.</param>
/// <param name="IsPinned">Whether it was asked for.</param>
/// <param name="Lifted">The dangers that were lifted for it.</param>
/// <param name="Watch">Dangers that are told.</param>
/// <param name="RunnerUp">The best plan without it, in a sentence; <c>null</c>: not asked for.</param>
/// <param name="Instead">The male her dam goes to then; <c>null</c>: none, or not asked for.</param>
/// <param name="Cost">How much less that plan weighs; <c>null</c>: there is none, or not asked for.</param>
public sealed record SeasonPairing(
    SeasonNamed Sire,
    SeasonNamed Dam,
    IReadOnlyList<SeasonServed> Serves,
    double Inbreeding,
    bool IsPinned,
    IReadOnlyList<Warning> Lifted,
    IReadOnlyList<Warning> Watch,
    string? RunnerUp,
    string? Instead,
    double? Cost);

/// <summary>An animal of a plan.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Name">Its name, if it has one.</param>
/// <param name="Words">Its genotype as believed.</param>
public sealed record SeasonNamed(string Tag, string? Name, AnimalWords Words);

/// <summary>What a pairing does for a goal.</summary>
/// <param name="Goal">The goal.</param>
/// <param name="Kind">What the figures are.</param>
/// <param name="Alone">The goal's figure from this clutch alone.</param>
/// <param name="Adds">How much the plan's figure falls without it.</param>
public sealed record SeasonServed(string Goal, SeasonFigureKind Kind, double Alone, double Adds);

/// <summary>An animal that is not ready.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Name">Its name, if it has one.</param>
/// <param name="Why">Why, in a sentence.</param>
public sealed record SeasonNotReady(string Tag, string? Name, string Why);

/// <summary>One of several things asked for that clash.</summary>
/// <param name="Text">What was asked.</param>
/// <param name="Change">The least change of it alone that would help; <c>null</c>: none would.</param>
public sealed record SeasonClashLine(string Text, string? Change);

/// <summary>What more of one goal costs of another.</summary>
/// <param name="First">One goal.</param>
/// <param name="Second">The other.</param>
/// <param name="Points">Both figures of each plan, the second rising.</param>
public sealed record SeasonTradeOffLines(string First, string Second, IReadOnlyList<(double First, double Second)> Points);
