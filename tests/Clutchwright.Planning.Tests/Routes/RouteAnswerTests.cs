using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Routes;
using CsCheck;

namespace Clutchwright.Planning.Tests.Routes;

public class RouteAnswerTests
{
    [Fact]
    public void Of_SmallRoom_IsWhatEverySchemeWrittenOutGives() => Gen.Select(
        Gen.Bool, Gen.Int[0, 2].Array[1, 2], Gen.Int[0, 2].Array[1, 1], Gen.Int[1, 3], Gen.Int[1, 3], Gen.Int[1, 3], Gen.Int[1, 2], Gen.Int[1, 2]).Sample(
        (isRecessive, males, females, wanted, eggs, seasons, maleAge, femaleAge) =>
        {
            var target = Enumerable.Range(1, 2).Where(c => (wanted & c) != 0).ToHashSet();
            var species = OneLocus(isRecessive);
            RouteAnimal[] animals = [.. males.Select(c => Animal(species, Sex.Male, c)), .. females.Select(c => Animal(species, Sex.Female, c))];
            var problem = new RouteProblem(species, Want(species, target), animals, new()
            {
                Seasons = seasons, MaleMaturity = maleAge, FemaleMaturity = femaleAge, Clutch = GoodEggs.Exactly(eggs), MostDams = 1,
            });

            var answer = RouteAnswer.Of(problem, cancel: TestContext.Current.CancellationToken);

            Assert.True(answer.IsProven);
            var all = new RouteTwin(isRecessive, males, females, target, eggs, seasons, maleAge, femaleAge).Schemes();
            var best = all.Select(s => s.Chance[^1]).DefaultIfEmpty().Max();
            var listed = all.Where(s => s.Chance[^1] >= 0.05 * best && s.Chance[^1] >= 1e-4).ToArray();

            // Every route told is a scheme, none told is beaten by a scheme, and every scheme is matched by a route.
            foreach (var route in answer.Routes)
            {
                Assert.Contains(listed, s => Math.Abs(s.Pairings - route.Pairings) < 1e-9 && s.Raised == route.Raised && Same(s.Chance, route.ChanceBySeason));
            }

            foreach (var (chance, pairings, raised) in listed)
            {
                for (var t = 1; t < chance.Length; t++)
                {
                    Assert.True(chance[t] <= 1e-12 || answer.Routes.Any(r => r.Cost <= pairings + raised + 1e-6 && r.Raised <= raised && r.ChanceBySeason[t] >= chance[t] - 1e-9));
                }
            }
        },
        iter: 25,
        threads: 1);

    private static bool Same(double[] one, IReadOnlyList<double> other) => one.Zip(other).All(p => Math.Abs(p.First - p.Second) < 1e-9);

    internal static Species OneLocus(bool isRecessive) => Species.From(new(
        "made-up",
        SexSystem.XY,
        [new("r", "R", new Placement.Autosomal(), [new("r", "Rec", isRecessive ? InheritanceMode.Recessive : InheritanceMode.IncompleteDominant)])]));

    internal static Want Want(Species species, IEnumerable<int> copies) =>
        new([new WantedGenotype(null, [WantedPairs.Of(species.Loci[0], copies.Select(c => c switch { 0 => (0, 0), 1 => (0, 1), _ => (1, 1) }))])]);

    internal static RouteAnimal Animal(Species species, Sex sex, int copies) => new(sex, GenotypeBelief.Certain(
        Genotype.Wild(species, sex).With(species.Loci[0], copies == 2 ? 1 : 0, copies > 0 ? 1 : 0)));
}
