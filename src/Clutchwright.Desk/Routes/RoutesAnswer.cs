using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Routes;

/// <summary>By which pairings over several seasons is a wanted genotype reached?</summary>
/// <param name="Want">Trade text; alternatives joined by <c>or</c>.</param>
public sealed record RoutesQuestion(string Want)
{
    /// <summary>The longest horizon, in seasons.</summary>
    public const int MostSeasons = Planning.Routes.RouteSettings.MostSeasons;

    /// <summary>Gets a pedigree file to take the animals from; <c>null</c>: the stock.</summary>
    public NamedFile? File { get; init; }

    /// <summary>Gets the horizon in seasons.</summary>
    public int Seasons { get; init; } = 8;

    /// <summary>Gets how many routes are told at most.</summary>
    public int Most { get; init; } = 6;

    /// <summary>Gets the animals that could be bought: trade text with a sex, and perhaps <c>=PRICE</c>; <c>singles</c>: one of each sex for each wanted
    /// gene, showing it alone.</summary>
    public IReadOnlyList<string> Buy { get; init; } = [];

    /// <summary>Gets the chance that a held-back hatchling lives and breeds, 0 to 1.</summary>
    public double Rearing { get; init; } = 0.95;

    /// <summary>Gets how many animals may be held back in all; <c>null</c>: no limit.</summary>
    public int? MostRaised { get; init; }

    /// <summary>Gets how many equal females may be paired for one step in a season.</summary>
    public int MostDams { get; init; } = 3;

    /// <summary>Gets the most inbreeding accepted in any young of a route; <c>null</c>: no limit.</summary>
    public double? MostInbreeding { get; init; }

    /// <summary>Gets the cost of a clutch, of raising an animal, and of an animal bought without a price, in the keeper's unit.</summary>
    public (double Clutch, double Animal, double Bought) Costs { get; init; } = (1.0, 1.0, 1.0);

    /// <summary>Gets the ids of dangers that the keeper lifts, knowing them.</summary>
    public IReadOnlyList<string> Lifted { get; init; } = [];

    /// <summary>Gets the clutch.</summary>
    public ClutchSetting Clutch { get; init; } = new(null, null, null);

    /// <summary>Gets how often the programme is tried with planning anew; 0: not.</summary>
    public int Tries { get; init; } = 1000;

    /// <summary>Gets the seed of the tries.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Gets whether it is reckoned what one purchase would change.</summary>
    public bool WithPurchases { get; init; }

    /// <summary>Gets recombination fractions that replace the catalogue's.</summary>
    public IReadOnlyDictionary<string, double> Recombination { get; init; } = new Dictionary<string, double>();
}

/// <summary>Routes to what is wanted.</summary>
/// <param name="Want">What is wanted, as understood.</param>
/// <param name="Seasons">The horizon.</param>
/// <param name="Routes">The likeliest within the horizon first.</param>
/// <param name="RoutesFound">How many routes no other beats, those told and those too like them to be told.</param>
/// <param name="IsProven">Whether no route of the model beats these.</param>
/// <param name="Outlook">How the programme goes if it is planned anew after every hatch; <c>null</c>: there is no route, or it was not tried.</param>
/// <param name="Purchases">What one purchase would change, the most useful first.</param>
/// <param name="TargetNotes">What is to be known of the target: whether it breeds true.</param>
/// <param name="Dangers">Dangers of the target itself.</param>
/// <param name="ClutchText">The clutch reckoned with.</param>
/// <param name="Notes">What to mind.</param>
public sealed record RoutesAnswer(
    string Want,
    int Seasons,
    IReadOnlyList<RouteWords> Routes,
    int RoutesFound,
    bool IsProven,
    ProgrammeOutlook? Outlook,
    IReadOnlyList<PurchaseValue> Purchases,
    IReadOnlyList<string> TargetNotes,
    IReadOnlyList<Warning> Dangers,
    string ClutchText,
    IReadOnlyList<string> Notes);

/// <summary>One route in words.</summary>
/// <param name="Number">From 1.</param>
/// <param name="FirstSeason">The first season in which the wanted can hatch.</param>
/// <param name="Chance">Within the horizon.</param>
/// <param name="ChanceBySeason">By the end of each season, from the first.</param>
/// <param name="Clutches">Clutches expected.</param>
/// <param name="Raised">Animals held back.</param>
/// <param name="Price">Prices of the animals bought.</param>
/// <param name="Cost">In the keeper's unit.</param>
/// <param name="Inbreeding">Of the wanted young, by the recorded pedigree.</param>
/// <param name="Steps">The pairings, each after those it needs.</param>
/// <param name="Animals">The animals that have a part in it.</param>
/// <param name="Weakest">The place of the step that costs the most chance, and the chance if it succeeded in its first season.</param>
/// <param name="Goals">What to do in the first season: pairings and what to hold back, as wants for a season's plan.</param>
public sealed record RouteWords(
    int Number,
    int FirstSeason,
    Probability Chance,
    IReadOnlyList<double> ChanceBySeason,
    double Clutches,
    int Raised,
    double Price,
    double Cost,
    double Inbreeding,
    IReadOnlyList<RouteStepWords> Steps,
    IReadOnlyList<RouteAnimalWords> Animals,
    (int Step, double Chance)? Weakest,
    IReadOnlyList<RouteGoal> Goals)
{
    /// <summary>Gets which of several alternatives of the want it reaches, as trade text; <c>null</c>: there is but one.</summary>
    public string? Reaches { get; init; }
}

/// <summary>An animal of a route.</summary>
/// <param name="Name">Its tag, or a letter for one held back.</param>
/// <param name="Tags">Tags that will do, alike in all that counts; none: held back or bought.</param>
/// <param name="Sex">Its sex.</param>
/// <param name="Words">What it is at the genes that count.</param>
/// <param name="Price">Its price; <c>null</c>: not bought.</param>
/// <param name="FromStep">The place of the step it is held back from; <c>null</c>: there from the start.</param>
/// <param name="Count">How many alike.</param>
/// <param name="Trust">The chance that one that looks right is right.</param>
/// <param name="SecondCopy">What the chance of the route would be with a second one kept beside it; <c>null</c>: not held back.</param>
/// <param name="Ready">The first season in which it can be paired.</param>
public sealed record RouteAnimalWords(
    string Name, IReadOnlyList<string> Tags, Sex Sex, AnimalWords Words, double? Price, int? FromStep, int Count, double Trust, double? SecondCopy, int Ready);

/// <summary>One pairing of a route.</summary>
/// <param name="Season">The first season in which it can be tried.</param>
/// <param name="Sire">The place of the sire among the route's animals.</param>
/// <param name="Dam">The place of the dam.</param>
/// <param name="Dams">How many such females are paired in a season.</param>
/// <param name="Keep">The places of the animals held back; none: the wanted hatches.</param>
/// <param name="PerEgg">The chance per good egg of what is to be picked, for each held back, or of the wanted.</param>
/// <param name="Success">The chance that one season gives all of it.</param>
/// <param name="Eggs">Good eggs for nine chances in ten, each animal held back by itself the most.</param>
/// <param name="Inbreeding">Of its young, by the recorded pedigree.</param>
/// <param name="SeasonsToPlan">Seasons to plan for it so that all pairings of the route succeed with nine chances in ten, at the fewest seasons in all.</param>
/// <param name="Why">Why these are held back, in a sentence.</param>
public sealed record RouteStepWords(
    int Season, int Sire, int Dam, int Dams, IReadOnlyList<int> Keep, IReadOnlyList<double> PerEgg, double Success, int? Eggs, double Inbreeding, int SeasonsToPlan, string Why);

/// <summary>A goal of the season at hand that a route sets: from one pair, something to hold back.</summary>
/// <param name="Sire">The sire's tag.</param>
/// <param name="Dam">The dam's tag.</param>
/// <param name="Want">What to hold back, as trade text with the sex.</param>
/// <param name="Count">How many.</param>
public sealed record RouteGoal(string Sire, string Dam, string Want, int Count);

/// <summary>What one purchase would change.</summary>
/// <param name="Animal">The animal, as trade text.</param>
/// <param name="Chance">The best chance within the horizon with it.</param>
/// <param name="Gain">By how much that is more than without.</param>
/// <param name="FirstSeason">The first season in which the wanted could then hatch; <c>null</c>: never within the horizon.</param>
/// <param name="SeasonsSaved">How many seasons sooner the chance of the best route is reached; <c>null</c>: no route without it.</param>
public sealed record PurchaseValue(string Animal, double Chance, double Gain, int? FirstSeason, int? SeasonsSaved);

/// <summary>How a programme went in many tries, planned anew after every hatch.</summary>
/// <param name="Tries">How many tries.</param>
/// <param name="ChanceBySeason">The share of tries in which the wanted had hatched by the end of each season; index 0 is 0.</param>
/// <param name="StandardErrors">The standard error of each share.</param>
/// <param name="Clutches">Clutches laid until success or the end of the horizon.</param>
/// <param name="Raised">Animals held back until then.</param>
/// <param name="Cost">What it cost until then.</param>
/// <param name="StuckAt">For each step of the first route told, the share of failed tries that were waiting for it at the end.</param>
public sealed record ProgrammeOutlook(
    int Tries,
    IReadOnlyList<double> ChanceBySeason,
    IReadOnlyList<double> StandardErrors,
    TrySpread Clutches,
    TrySpread Raised,
    TrySpread Cost,
    IReadOnlyList<double> StuckAt)
{
    /// <summary>Gets the chance within the horizon.</summary>
    public double Chance => ChanceBySeason[^1];
}

/// <summary>How a number spread over many tries.</summary>
/// <param name="Mean">The mean.</param>
/// <param name="Low">A tenth of the tries had less.</param>
/// <param name="Middle">Half of the tries had less.</param>
/// <param name="High">A tenth of the tries had more.</param>
public sealed record TrySpread(double Mean, double Low, double Middle, double High);
