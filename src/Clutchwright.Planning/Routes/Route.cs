using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>One way to what is wanted: pairings in order, each tried every season until what is wanted of it is held back.</summary>
/// <remarks>Immutable. The figures are exact in the model of docs/model/routes.md.</remarks>
public sealed class Route
{
    internal Route(
        IReadOnlyList<RouteRole> roles, IReadOnlyList<RouteStep> steps, int alternative, IReadOnlyList<double> chance, double pairings, double clutches, int raised, double price, double cost)
    {
        Roles = roles;
        Steps = steps;
        Alternative = alternative;
        ChanceBySeason = chance;
        Pairings = pairings;
        Clutches = clutches;
        Raised = raised;
        Price = price;
        Cost = cost;
    }

    /// <summary>Gets the animals that have a part in it: of the stock, bought, or held back on the way.</summary>
    public IReadOnlyList<RouteRole> Roles { get; }

    /// <summary>Gets the pairings, each after those it needs; the last gives what is wanted.</summary>
    public IReadOnlyList<RouteStep> Steps { get; }

    /// <summary>Gets the place of the alternative of the want that it reaches.</summary>
    public int Alternative { get; }

    /// <summary>Gets the chance that what is wanted has hatched by the end of each season; index 0 is before the first and 0.</summary>
    public IReadOnlyList<double> ChanceBySeason { get; }

    /// <summary>Gets the chance within the horizon.</summary>
    public double Chance => ChanceBySeason[^1];

    /// <summary>Gets the first season in which what is wanted can hatch.</summary>
    public int FirstSeason => Enumerable.Range(1, ChanceBySeason.Count - 1).First(t => ChanceBySeason[t] > 0.0);

    /// <summary>Gets how many pairings it takes on average, a female and a season each, if one goes on until it succeeds.</summary>
    public double Pairings { get; }

    /// <summary>Gets how many clutches it takes on average, if one goes on until it succeeds.</summary>
    public double Clutches { get; }

    /// <summary>Gets the world it was found in.</summary>
    internal RouteWorld? World { get; init; }

    /// <summary>Gets how many clutches are expected within the horizon.</summary>
    public double ClutchesWithin { get; internal init; }

    /// <summary>Gets how many animals are held back and raised.</summary>
    public int Raised { get; }

    /// <summary>Gets the prices of the animals bought, together.</summary>
    public double Price { get; }

    /// <summary>Gets what it costs in the keeper's unit: prices, clutches expected, and animals raised.</summary>
    public double Cost { get; }
}

/// <summary>An animal that has a part in a route.</summary>
/// <param name="Sex">Its sex.</param>
/// <param name="Genotype">What it is taken for, or better, at the loci that count; wild elsewhere.</param>
/// <param name="Animals">Of the problem's animals the places of those that will do, all alike; none: it is held back on the way.</param>
/// <param name="FromStep">The place of the step it is held back from; <c>null</c>: it is there from the start.</param>
/// <param name="Trust">The chance that one which looks right is what it is taken for.</param>
/// <param name="Ready">The first season in which it can be paired.</param>
public sealed record RouteRole(Sex Sex, Genotype Genotype, IReadOnlyList<int> Animals, int? FromStep, double Trust, int Ready)
{
    /// <summary>Gets how many alike are held back, or are needed of the stock.</summary>
    public int Count { get; init; } = 1;
}

/// <summary>One pairing of a route.</summary>
/// <param name="Season">The first season in which it can be tried.</param>
/// <param name="Sire">The place of the sire's role.</param>
/// <param name="Dam">The place of the dam's role.</param>
/// <param name="Dams">How many such females are paired in a season.</param>
/// <param name="Keep">The roles held back from it; none: the last step.</param>
/// <param name="Seen">For each animal held back, or for the target, the chance per good egg of a hatchling that looks right.</param>
/// <param name="Trust">The chance that what looks right is right, of all held back together.</param>
/// <param name="Success">The chance that one season gives all that is wanted of it.</param>
public sealed record RouteStep(
    int Season, int Sire, int Dam, int Dams, IReadOnlyList<int> Keep, IReadOnlyList<double> Seen, double Trust, double Success);
