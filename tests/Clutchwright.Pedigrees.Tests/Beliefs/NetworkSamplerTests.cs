using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Pedigrees.Beliefs.Explanations;
using Clutchwright.Testing;
using Clutchwright.Testing.Pedigrees;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>What is done where a network is too large to be solved in one piece, on networks where both can be done.</summary>
public class NetworkSamplerTests
{
    private static readonly Species Snake = Describe.Species(SexSystem.XY, Describe.Free("clown", Describe.Recessive("clown")));

    private static readonly Allele Clown = Snake.FindAllele("clown")!;

    [Theory]
    [InlineData(0.05, 1)]
    [InlineData(0.05, 2)]
    [InlineData(0.25, 3)]
    public void Of_OverTheTableBudget_SumsCasesAndIsStillExact(double frequency, int seed)
    {
        var (animals, settings) = Kennel(10, 10, 3, frequency, seed);
        var exact = PedigreeBeliefs.Of(Snake, animals, settings, cancel: TestContext.Current.CancellationToken);

        var summed = PedigreeBeliefs.Of(Snake, animals, settings with { TableBudget = 6_000 }, cancel: TestContext.Current.CancellationToken);

        Assert.True(summed.IsExact);
        Assert.Equal(exact.LogLikelihood, summed.LogLikelihood, 1e-9);
        Assert.All(animals, a => Assert.Equal(Carries(exact, a), Carries(summed, a), 1e-10));
    }

    /// <summary>Fixed seeds. Within six standard errors everywhere, and their spread as it should be.</summary>
    [Theory]
    [InlineData(10, 3, 0.05, 1, 3_000)]
    [InlineData(10, 3, 0.05, 2, 3_000)]
    [InlineData(10, 3, 0.25, 1, 5_000)]
    [InlineData(20, 5, 0.05, 2, 20_000)]
    public void Of_OverEveryBudget_IsSampledAndAgreesWithinItsError(int females, int males, double frequency, int seed, double sweep)
    {
        var (animals, settings) = Kennel(10, females, males, frequency, seed);
        var exact = PedigreeBeliefs.Of(Snake, animals, settings, cancel: TestContext.Current.CancellationToken);

        var sampled = PedigreeBeliefs.Of(
            Snake, animals, settings with { TableBudget = 100, WorkBudget = 100, SweepBudget = sweep }, cancel: TestContext.Current.CancellationToken);

        Assert.False(sampled.IsExact);
        Assert.InRange(sampled.StandardError, 1e-4, 0.05);
        var scores = animals
            .Select(a => (Difference: Carries(sampled, a) - Carries(exact, a), Error: sampled[a.Key].StandardErrors.Values.DefaultIfEmpty(0.0).Max()))
            .Where(s => s.Error > 0.0)
            .Select(s => Math.Abs(s.Difference / s.Error))
            .ToArray();
        Assert.True(scores.Length > animals.Count / 2);
        Assert.All(scores, s => Assert.InRange(s, 0.0, 6.0));
        Assert.InRange(Math.Sqrt(scores.Average(s => s * s)), 0.0, 2.0);
    }

    /// <summary>Nobody spoke of what founders carry: the first try finds no states that all records allow, and then what they need is let in.</summary>
    [Theory]
    [InlineData(10, 3, 1, 3_000)]
    [InlineData(10, 3, 2, 3_000)]
    [InlineData(20, 5, 2, 20_000)]
    public void Of_OverEveryBudgetWithoutFrequencies_LetsInWhatTheRecordsNeed(int females, int males, int seed, double sweep)
    {
        var (animals, settings) = Kennel(10, females, males, 0.1, seed);
        settings = settings with { Frequencies = new Dictionary<Allele, double>() };
        var exact = PedigreeBeliefs.Of(Snake, animals, settings, cancel: TestContext.Current.CancellationToken);

        var sampled = PedigreeBeliefs.Of(
            Snake, animals, settings with { TableBudget = 100, WorkBudget = 100, SweepBudget = sweep }, cancel: TestContext.Current.CancellationToken);

        Assert.False(sampled.IsExact);
        Assert.Empty(sampled.Clashes);
        var sure = animals.Where(a => Carries(exact, a) > 1.0 - 1e-12).ToArray();
        Assert.NotEmpty(sure);
        Assert.All(sure, a => Assert.Equal(1.0, Carries(sampled, a), 1e-9));
        Assert.InRange(animals.Average(a => Math.Abs(Carries(sampled, a) - Carries(exact, a))), 0.0, 0.1);
    }

    /// <summary>A clock on which the time is up after a few sweeps: fewer batches, larger errors, and these still honest.</summary>
    [Theory]
    [InlineData(10, 3, 0.05, 1, 3_000)]
    [InlineData(10, 3, 0.05, 2, 3_000)]
    [InlineData(20, 5, 0.05, 2, 20_000)]
    public void Of_WhenTimeIsUp_StopsSamplingAndAgreesWithinItsLargerError(int females, int males, double frequency, int seed, double sweep)
    {
        var (animals, settings) = Kennel(10, females, males, frequency, seed);
        var exact = PedigreeBeliefs.Of(Snake, animals, settings, cancel: TestContext.Current.CancellationToken);
        var all = settings with { TableBudget = 100, WorkBudget = 100, SweepBudget = sweep, Sweeps = 100_000 };

        var clock = new CountingClock();
        var sampled = PedigreeBeliefs.Of(
            Snake, animals, all with { Clock = clock, Patience = TimeSpan.FromSeconds(160) }, cancel: TestContext.Current.CancellationToken);

        Assert.InRange(clock.Readings, 160, 400);
        Assert.InRange(sampled.StandardError, 1e-3, 0.2);
        var scores = animals
            .Select(a => (Difference: Carries(sampled, a) - Carries(exact, a), Error: sampled[a.Key].StandardErrors.Values.DefaultIfEmpty(0.0).Max()))
            .Where(s => s.Error > 0.0)
            .Select(s => Math.Abs(s.Difference / s.Error))
            .ToArray();
        Assert.True(scores.Length > animals.Count / 2);
        Assert.All(scores, s => Assert.InRange(s, 0.0, 6.0));
        Assert.InRange(Math.Sqrt(scores.Average(s => s * s)), 0.0, 2.0);
    }

    [Fact]
    public void Of_WithAClockAndTimeEnough_IsTheSameAsWithout()
    {
        var (animals, settings) = Kennel(8, 8, 3, 0.05, 5);
        settings = settings with { TableBudget = 100, WorkBudget = 100, SweepBudget = 2_000, Sweeps = 100 };

        var without = PedigreeBeliefs.Of(Snake, animals, settings, cancel: TestContext.Current.CancellationToken);
        var with = PedigreeBeliefs.Of(
            Snake, animals, settings with { Clock = new CountingClock(), Patience = TimeSpan.FromDays(1) }, cancel: TestContext.Current.CancellationToken);

        Assert.All(animals, a => Assert.Equal(Carries(without, a), Carries(with, a)));
        Assert.Equal(without.StandardError, with.StandardError);
    }

    [Fact]
    public void Of_SampledTwice_IsTheSameWhateverTheThreads()
    {
        var (animals, settings) = Kennel(8, 8, 3, 0.05, 5);
        settings = settings with { TableBudget = 100, WorkBudget = 100, SweepBudget = 2_000, Sweeps = 100 };

        var first = PedigreeBeliefs.Of(Snake, animals, settings, cancel: TestContext.Current.CancellationToken);
        var second = PedigreeBeliefs.Of(Snake, animals, settings, cancel: TestContext.Current.CancellationToken);

        Assert.All(animals, a => Assert.Equal(Carries(first, a), Carries(second, a)));
    }

    // A share of a number of draws is a ratio, and would read as if it were exact.
    [Theory]
    [InlineData(40)]
    [InlineData(100)]
    public void Explanation_OfASampledBelief_GivesNoRatio(int sweeps)
    {
        // Where no frequency is stated all that goes in is a ratio.
        var (animals, _) = Kennel(8, 8, 3, 0.2, 5);
        var sampled = PedigreeBeliefs.Of(
            Snake, animals, BeliefSettings.Default with { TableBudget = 100, WorkBudget = 100, SweepBudget = 2_000, Sweeps = sweeps }, cancel: TestContext.Current.CancellationToken);

        var chances = animals.Where(a => sampled[a.Key].StandardErrors.Count > 0)
            .Select(a => BeliefExplanation.Of(sampled, a.Key, new GenotypeClaim.Carries(Clown), TestContext.Current.CancellationToken).Chance)
            .Where(c => !c.IsCertain && !c.IsImpossible)
            .ToArray();

        Assert.NotEmpty(chances);
        Assert.All(chances, c => Assert.Null(c.Exact));
    }

    private static double Carries(PedigreeBeliefs beliefs, RecordedAnimal animal) => beliefs[animal.Key].Genotype.ChanceOfCarrying(Clown).Value;

    private static (IReadOnlyList<RecordedAnimal> Animals, BeliefSettings Settings) Kennel(int seasons, int females, int males, double frequency, int seed)
    {
        var frequencies = new Dictionary<Allele, double> { [Clown] = frequency };
        return (GeneDrop.Record(Snake, Kennels.Seasons(seasons, females, males, (ulong)seed), frequencies, (ulong)(seed + 100)),
            new BeliefSettings { Frequencies = frequencies });
    }

    // A second goes by whenever someone looks.
    private sealed class CountingClock : TimeProvider
    {
        private long _readings;

        public long Readings => Interlocked.Read(ref _readings);

        public override long TimestampFrequency => 1;

        public override long GetTimestamp() => Interlocked.Increment(ref _readings);
    }
}
