using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Routes;

namespace Clutchwright.Planning.Tests.Routes;

public class RouteSimulationTests
{
    // Two recessives, an incompletely dominant allele, one on the sex chromosomes, and one of which any copy hurts.
    private static readonly Species Snake = Species.From(new(
        "made-up",
        SexSystem.XY,
        [
            new("r", "R", new Placement.Autosomal(), [new("r", "Rec", InheritanceMode.Recessive)]),
            new("q", "Q", new Placement.Autosomal(), [new("q", "Quill", InheritanceMode.Recessive)]),
            new("d", "D", new Placement.Autosomal(), [new("d", "Dot", InheritanceMode.IncompleteDominant)]),
            new("b", "B", new Placement.SexLinked(RecombinationFraction.From(0.1)), [new("b", "Band", InheritanceMode.IncompleteDominant)]),
            new("w", "W", new Placement.Autosomal(), [new("w", "Weak", InheritanceMode.IncompleteDominant)]),
        ])
    {
        Dangers = [new("weak", [new GenotypeCondition.Carries("w")], Severity.Suffering, "Suffers.", Evidence.CommonPractice)],
    });

    private static RouteSettings Settings => new()
    {
        Seasons = 8, Clutch = GoodEggs.Of([0, 0, 0, 0, 0.25, 0.5, 0.25], Probability.From(0.8), ClutchRate.Of(0.9, 0.2), ClutchRate.Of(0.9, 0.1)),
        Laying = 0.8, Rearing = 0.9,
    };

    [Fact]
    public void Follow_EveryRoute_AgreesWithTheClosedFormWithinItsError()
    {
        // Doubles need two generations; a possible het puts the founder's doubt in; no better animal than asked can hatch.
        var problem = new RouteProblem(Snake, Wanted(("r", 1, 1), ("q", 1, 1)), [Male(("r", 1, 1)), Female(("q", 1, 1)), Female(("q", 0, 1))], Settings);

        var answer = RouteAnswer.Of(problem, cancel: TestContext.Current.CancellationToken);

        Assert.NotEmpty(answer.Routes);
        foreach (var route in answer.Routes)
        {
            var outlook = RouteSimulation.Follow(problem, route, 20_000, seed: 7, threads: 2, TestContext.Current.CancellationToken);
            for (var t = 1; t <= 8; t++)
            {
                Assert.InRange(outlook.ChanceBySeason[t] - route.ChanceBySeason[t], (-4.5 * outlook.StandardErrors[t]) - 1e-3, (4.5 * outlook.StandardErrors[t]) + 1e-3);
            }
        }
    }

    [Fact]
    public void Follow_SexLinked_AgreesWithTheClosedFormWithinItsError()
    {
        // Band on the Y of the father: daughters have it by recombination alone.
        var problem = new RouteProblem(
            Snake, Wanted(Sex.Female, ("b", 0, 1), ("d", 0, 1)), [Male(("b", 0, 1)), Female(("d", 0, 1)), Female()], Settings);

        var answer = RouteAnswer.Of(problem, cancel: TestContext.Current.CancellationToken);

        var best = answer.Routes[0];
        var outlook = RouteSimulation.Follow(problem, best, 20_000, seed: 3, threads: 1, TestContext.Current.CancellationToken);
        Assert.InRange(outlook.Chance - best.Chance, -4.5 * outlook.StandardErrors[^1], 4.5 * outlook.StandardErrors[^1]);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Replan_AnyNumberOfThreads_GivesTheSameFigures(int threads)
    {
        var problem = new RouteProblem(Snake, Wanted(("r", 1, 1), ("d", 0, 1)), [Male(("r", 1, 1)), Female(("d", 0, 1)), Female(("r", 0, 1))], Settings);
        var routes = RouteAnswer.Of(problem, cancel: TestContext.Current.CancellationToken).Routes;

        var one = RouteSimulation.Replan(problem, routes, 500, seed: 11, threads: 1, TestContext.Current.CancellationToken);
        var many = RouteSimulation.Replan(problem, routes, 500, seed: 11, threads, TestContext.Current.CancellationToken);

        Assert.Equal(one.ChanceBySeason, many.ChanceBySeason);
        Assert.Equal(one.Cost, many.Cost);
    }

    [Fact]
    public void Replan_RoutesToChooseFrom_DoesNoWorseThanFollowingTheBest()
    {
        var problem = new RouteProblem(
            Snake, Wanted(("r", 1, 1), ("q", 1, 1), ("d", 0, 1)),
            [Male(("r", 1, 1), ("d", 0, 1)), Female(("q", 1, 1)), Female(("q", 1, 1), ("r", 0, 1)), Male(("q", 1, 1))], Settings);
        var routes = RouteAnswer.Of(problem, cancel: TestContext.Current.CancellationToken).Routes;

        var follow = RouteSimulation.Follow(problem, routes[0], 10_000, seed: 5, threads: 2, TestContext.Current.CancellationToken);
        var replan = RouteSimulation.Replan(problem, routes, 10_000, seed: 6, threads: 2, TestContext.Current.CancellationToken);

        Assert.True(replan.Chance >= follow.Chance - (3.0 * (follow.StandardErrors[^1] + replan.StandardErrors[^1])));
    }

    [Fact]
    public void Of_MateWithASufferingAllele_IsLeftOutUnlessLifted()
    {
        RouteAnimal[] animals = [Male(("r", 1, 1), ("w", 0, 1)), Female(("r", 1, 1))];
        var problem = new RouteProblem(Snake, Wanted(("r", 1, 1)), animals, Settings);

        Assert.Empty(RouteAnswer.Of(problem, cancel: TestContext.Current.CancellationToken).Routes);
        Assert.NotEmpty(RouteAnswer.Of(
            problem with { Settings = Settings with { Lifted = Snake.Dangers.ToHashSet() } }, cancel: TestContext.Current.CancellationToken).Routes);
    }

    [Fact]
    public void Of_ForbiddenPair_IsInNoRoute()
    {
        RouteAnimal[] animals = [Male(("r", 1, 1)), Male(("r", 0, 1)), Female(("r", 1, 1))];
        var problem = new RouteProblem(Snake, Wanted(("r", 1, 1)), animals, Settings) { Forbidden = (sire, dam) => sire == 0 && dam == 2 };

        var routes = RouteAnswer.Of(problem, cancel: TestContext.Current.CancellationToken).Routes;

        Assert.NotEmpty(routes);
        Assert.All(routes.SelectMany(r => r.Steps.Select(s => (r.Roles[s.Sire].Animals, r.Roles[s.Dam].Animals))), pair => Assert.False(
            pair.Item1.SequenceEqual([0]) && pair.Item2.SequenceEqual([2])));
    }

    // The sample-size law of a certain pair, docs/references.md [common practice, no source]: n = ln(1 - γ) / ln(1 - p), here as seasons.
    [Fact]
    public void Of_OneCertainPair_FollowsTheLawOfRepeatedTries()
    {
        var problem = new RouteProblem(Snake, Wanted(("r", 1, 1)), [Male(("r", 0, 1)), Female(("r", 0, 1))], new() { Seasons = 6, Clutch = GoodEggs.Exactly(3) });

        var route = RouteAnswer.Of(problem, cancel: TestContext.Current.CancellationToken).Routes[0];

        for (var t = 1; t <= 6; t++)
        {
            Assert.Equal(1.0 - Math.Pow(0.75, 3 * t), route.ChanceBySeason[t], 12);
        }

        Assert.Equal(1.0 / (1.0 - Math.Pow(0.75, 3)), route.Pairings, 12);
    }

    private static RouteAnimal Male(params (string Locus, int First, int Second)[] pairs) => Animal(Sex.Male, pairs);

    private static RouteAnimal Female(params (string Locus, int First, int Second)[] pairs) => Animal(Sex.Female, pairs);

    private static RouteAnimal Animal(Sex sex, (string Locus, int First, int Second)[] pairs)
    {
        var genotype = Genotype.Wild(Snake, sex);
        foreach (var (locus, first, second) in pairs)
        {
            genotype = genotype.With(Snake.FindLocus(locus)!, first, second);
        }

        return new(sex, GenotypeBelief.Certain(genotype));
    }

    private static Want Wanted(params (string Locus, int First, int Second)[] pairs) => Wanted(null, pairs);

    private static Want Wanted(Sex? sex, params (string Locus, int First, int Second)[] pairs) =>
        new([new WantedGenotype(sex, [.. pairs.Select(p => WantedPairs.Of(Snake.FindLocus(p.Locus)!, [(p.First, p.Second)]))])]);
}
