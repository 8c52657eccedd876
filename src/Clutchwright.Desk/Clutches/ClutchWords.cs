using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Happenings;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Clutches;

/// <summary>How far a clutch is.</summary>
public enum ClutchStage
{
    /// <summary>Eggs are kept warm.</summary>
    Eggs = 1,

    /// <summary>Shells have been cut, or some young are out.</summary>
    Hatching,

    /// <summary>All young are out, or no egg is left.</summary>
    Over,
}

/// <summary>A clutch, in words.</summary>
/// <param name="Id">For the deeds.</param>
/// <param name="Version">For noticing that someone else changed it meanwhile.</param>
/// <param name="Tag">The keeper's id of it.</param>
/// <param name="Dam">Her tag.</param>
/// <param name="Sires">The sire's tag, or that of each that may be it.</param>
/// <param name="Laid">As the keeper put it.</param>
/// <param name="LaidDay">The last day on which it can have been.</param>
/// <param name="GoodEggs">Good eggs laid; <c>null</c>: not counted.</param>
/// <param name="Slugs">Slugs laid; <c>null</c>: not counted.</param>
/// <param name="MassGrams">Of the good eggs together; <c>null</c>: not weighed.</param>
/// <param name="Incubator">Where it is; <c>null</c>: in none.</param>
/// <param name="Lost">Good eggs lost since.</param>
/// <param name="Pipped">When the first shell was cut; <c>null</c>: not written down.</param>
/// <param name="Hatched">When the young came out; <c>null</c>: not yet.</param>
/// <param name="HatchedCount">How many came out, as far as it is written down.</param>
/// <param name="Left">Good eggs that may still hatch; <c>null</c>: they were not counted.</param>
/// <param name="Stage">How far it is.</param>
public sealed record ClutchWords(
    Guid Id,
    Guid Version,
    string Tag,
    string Dam,
    IReadOnlyList<string> Sires,
    string Laid,
    DateOnly LaidDay,
    int? GoodEggs,
    int? Slugs,
    double? MassGrams,
    string? Incubator,
    int Lost,
    string? Pipped,
    string? Hatched,
    int HatchedCount,
    int? Left,
    ClutchStage Stage)
{
    /// <summary>Gets the number of days since it was laid, at the least.</summary>
    public int Days { get; init; }

    /// <summary>Gets whether it lies in the bin.</summary>
    public bool IsInBin { get; init; }

    /// <summary>Gets the keeper's notes; empty: none.</summary>
    public string Notes { get; init; } = string.Empty;
}

/// <summary>Young of a clutch of which only the number was kept.</summary>
/// <param name="Count">How many.</param>
/// <param name="Look">What they show.</param>
/// <param name="Sex"><c>1.0</c>, <c>0.1</c>, or empty: not told.</param>
public sealed record CountedWords(int Count, string Look, string Sex);

/// <summary>One of the young of a clutch.</summary>
/// <param name="Animal">It.</param>
/// <param name="MassGrams">Its last mass; <c>null</c>: not weighed.</param>
/// <param name="Advice">Whether to hold it back, and why; empty: no route is followed.</param>
public sealed record YoungWords(AnimalLine Animal, double? MassGrams, IReadOnlyList<Advice> Advice);

/// <summary>One clutch, whole.</summary>
/// <param name="Clutch">The clutch.</param>
/// <param name="Young">Its young in the book.</param>
/// <param name="Counted">Young that are in the book only as a number.</param>
/// <param name="Log">What happened to it, the latest first.</param>
/// <param name="Looks">What can hatch, or could: likeliest first.</param>
/// <param name="LooksUnknown">Why the looks cannot be told; <c>null</c>: they can.</param>
public sealed record ClutchAnswer(
    ClutchWords Clutch,
    IReadOnlyList<YoungWords> Young,
    IReadOnlyList<CountedWords> Counted,
    IReadOnlyList<HappeningWords> Log,
    IReadOnlyList<HatchLook> Looks,
    string? LooksUnknown);

/// <summary>A look that can hatch.</summary>
/// <param name="Name">All that is seen, in trade words.</param>
/// <param name="Label">The trade's name of it, or <c>null</c>.</param>
/// <param name="Sex">The sex, where the odds differ by it; <c>null</c>: either.</param>
/// <param name="PerHatchling">Its chance for each hatchling, by all that is known of the parents by now.</param>
/// <param name="Seen">The same as it can be written down: a name that many pairs of alleles share is told by the pair that these parents can give.</param>
/// <param name="Hatched">How many of this look are written down for this clutch.</param>
/// <param name="Look">How it looks by age.</param>
public sealed record HatchLook(
    string Name, string? Label, Genetics.Loci.Sex? Sex, Genetics.Numbers.Probability PerHatchling, string Seen, int Hatched, LookWords Look);

/// <summary>A clutch as a form holds it.</summary>
public sealed record ClutchForm
{
    /// <summary>Gets the keeper's id; empty: the next by the scheme.</summary>
    public string? Tag { get; init; }

    /// <summary>Gets the dam's tag.</summary>
    public string Dam { get; init; } = string.Empty;

    /// <summary>Gets the sire's tag; several possible ones with <c>|</c> between; empty: not known.</summary>
    public string? Sire { get; init; }

    /// <summary>Gets when it was laid; empty: today.</summary>
    public string? Laid { get; init; }

    /// <summary>Gets the good eggs.</summary>
    public string? GoodEggs { get; init; }

    /// <summary>Gets the slugs.</summary>
    public string? Slugs { get; init; }

    /// <summary>Gets the mass of the good eggs together, in grams.</summary>
    public string? MassGrams { get; init; }

    /// <summary>Gets the name of the incubator.</summary>
    public string? Incubator { get; init; }

    /// <summary>Gets when it hatched; empty: it has not.</summary>
    public string? Hatched { get; init; }

    /// <summary>Gets young of which only the number is kept: a line each, <c>3 Pied</c> or <c>1.2 Pied</c>.</summary>
    public string? Counted { get; init; }

    /// <summary>Gets notes.</summary>
    public string? Notes { get; init; }

    /// <summary>Gets the version the form was opened with; <c>null</c> for a new clutch.</summary>
    public Guid? Version { get; init; }
}
