using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Pedigrees.Beliefs.Contradictions;
using Clutchwright.Testing.Stocks;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Contradictions;

/// <summary>One wrong entry among three hundred animals, in 200 kennels from counted seeds.</summary>
/// <remarks>Half of the trials exchange what is recorded of two hatchlings of one season, of one sex and of other parents; half enter the look of one animal for
/// another. A wrong entry that makes the records no less probable cannot be found by anyone; such trials are counted apart.</remarks>
public class SuspectTrialTests(ITestOutputHelper output)
{
    private const int Trials = 200;
    private const double Same = 1e-6;

    [Fact]
    public void Of_OneWrongEntryAmongThreeHundred_IsAmongTheFirstThree()
    {
        var (findable, found, plain, plainFound) = (0, 0, 0, 0);
        var exchangedFound = 0;
        var missed = new List<string>();
        for (var seed = 1; seed <= Trials; seed++)
        {
            var drop = BredStock.Of(BredStock.Snake, seed, females: 10, males: 3, least: 300);
            var random = new Random(1000 + seed);
            var entered = seed % 2 == 0 ? Exchange(drop, random, out var wrong) : EnterAnothers(drop, random, out wrong);
            var right = Ranked(drop, drop.Animals);
            var suspects = Ranked(drop, entered);
            var lost = (right.LogLikelihood - suspects.LogLikelihood) / Math.Log(10.0);
            var place = Enumerable.Range(0, suspects.Animals.Count).First(i => wrong.Contains(suspects.Animals[i].Key)) + 1;
            findable += lost > Same ? 1 : 0;
            found += lost > Same && place <= 3 ? 1 : 0;
            plain += lost >= 2.0 ? 1 : 0;
            plainFound += lost >= 2.0 && place <= 3 ? 1 : 0;
            exchangedFound += wrong.Length == 2 && place <= 3 ? 1 : 0;
            if (place > 3)
            {
                missed.Add($"seed {seed}, {(wrong.Length == 2 ? "exchanged" : "entered for another")}: place {place}, records 10^{lost:0.0} times less probable");
            }
        }

        var summary = $"{Trials} trials: {Trials - findable} no less probable; of {findable} others {found} found; of {plain} at least 100 times less probable {plainFound} found; of the exchanges {exchangedFound}.";
        output.WriteLine(summary);
        missed.ForEach(output.WriteLine);
        Assert.InRange(findable, 175, 190);
        Assert.True(plain >= 0.95 * findable, summary);
        Assert.Equal(plain, plainFound);
        Assert.True(found >= 0.98 * findable, summary);
        Assert.True(exchangedFound >= 97, summary);
    }

    private static Suspects Ranked(BredStock drop, IReadOnlyList<RecordedAnimal> animals) => Suspects.Of(
        PedigreeBeliefs.Of(drop.Species, animals, cancel: TestContext.Current.CancellationToken), CauseRates.Default, TestContext.Current.CancellationToken);

    private static RecordedAnimal[] Exchange(BredStock drop, Random random, out string[] wrong)
    {
        var young = drop.Animals.Where(a => a.Dam is not null).ToArray();
        while (true)
        {
            var (a, b) = (young[random.Next(young.Length)], young[random.Next(young.Length)]);
            if (a.Hatched!.Value.Year == b.Hatched!.Value.Year && a.Dam != b.Dam && a.Sire != b.Sire && a.Sex == b.Sex)
            {
                wrong = [a.Key, b.Key];
                return [.. drop.Animals.Select(x => x == a ? x with { Observations = b.Observations } : x == b ? x with { Observations = a.Observations } : x)];
            }
        }
    }

    private static RecordedAnimal[] EnterAnothers(BredStock drop, Random random, out string[] wrong)
    {
        while (true)
        {
            var (a, b) = (drop.Animals[random.Next(drop.Animals.Count)], drop.Animals[random.Next(drop.Animals.Count)]);
            if (!Forms(a).SetEquals(Forms(b)))
            {
                wrong = [a.Key];
                return [.. drop.Animals.Select(x => x == a ? x with { Observations = [b.Observations[0], .. a.Observations.Skip(1)] } : x)];
            }
        }

        static HashSet<string> Forms(RecordedAnimal animal) => ((Observation.Seen)animal.Observations[0]).Forms.Select(f => f.Id).ToHashSet(StringComparer.Ordinal);
    }
}
