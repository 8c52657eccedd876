using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Segregations;
using Clutchwright.Reference.Tests.R;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Proofs;

/// <summary>Segregation tests against R.</summary>
public sealed class SegregationByRTests
{
    private static readonly int[][] Ratios = [[3, 1], [1, 1], [1, 2, 1], [9, 3, 3, 1], [9, 7], [12, 3, 1], [2, 1], [1, 1, 1, 1]];

    [Fact]
    public async Task ChiSquare_OfRandomCounts_IsThatOfRsChisqTest()
    {
        var (counts, ratios) = Draw(100, 400, 1);
        var answers = await RNumbers.AskAsync(counts.Zip(ratios, (c, r) =>
            $"with(suppressWarnings(chisq.test({RNumbers.Vector(c)}, p = {RNumbers.Vector(r)} / {r.Sum()})), c(statistic, p.value))"));

        for (var i = 0; i < counts.Count; i++)
        {
            var test = SegregationTest.Of(counts[i], Fractions(ratios[i]));
            Near.Check(answers[i][0], test.ChiSquare, 1e-11, counts[i]);
            Near.Check(answers[i][1], test.PValue, 1e-9, counts[i]);
        }
    }

    [Fact]
    public async Task Exact_OfRandomCounts_IsTheSumOverAllOutcomesByR()
    {
        var (counts, ratios) = Draw(100, 30, 2);
        var answers = await RNumbers.AskAsync(counts.Zip(ratios, (c, r) => $"multinomial.p({RNumbers.Vector(c)}, {RNumbers.Vector(r)})"));

        for (var i = 0; i < counts.Count; i++)
        {
            var exact = SegregationTest.Of(counts[i], Fractions(ratios[i])).Exact;
            Assert.True(exact.IsExact);
            Near.Check(answers[i][0], exact.Value, 1e-9, counts[i]);
        }
    }

    [Fact]
    public async Task BinomialTest_OfRandomCounts_IsThatOfRsBinomTest()
    {
        var random = new SplitMix64(3);
        (int Count, int Number, int Top, int Bottom)[] cases = [.. Enumerable.Range(0, 200).Select(i =>
        {
            var number = 1 + random.Below(i % 2 == 0 ? 20 : 1000);
            var bottom = 2 + random.Below(15);
            return (random.Below(number + 1), number, 1 + random.Below(bottom - 1), bottom);
        })];
        var answers = await RNumbers.AskAsync(cases.Select(c => $"with(binom.test({c.Count}, {c.Number}, {c.Top} / {c.Bottom}), c(p.value, conf.int))"));

        for (var i = 0; i < cases.Length; i++)
        {
            var test = BinomialTest.Of(cases[i].Count, cases[i].Number, new Fraction(cases[i].Top, cases[i].Bottom));
            Near.Check(answers[i][0], test.PValue, 1e-9, cases[i]);
            Near.Check(answers[i][1], test.Interval.Low, 1e-9, cases[i]);
            Near.Check(answers[i][2], test.Interval.High, 1e-9, cases[i]);
        }
    }

    [Fact]
    public async Task Heterogeneity_OfRandomClutches_IsThatOfRsFisherTestAndChiSquares()
    {
        var random = new SplitMix64(4);
        var cases = Enumerable.Range(0, 60).Select(_ =>
        {
            var ratio = Ratios[random.Below(Ratios.Length)];
            var clutches = Enumerable.Range(0, 2 + random.Below(3)).Select(_ => ratio.Select(r => 1 + random.Below(2 * r)).ToArray()).ToArray();
            return (Ratio: ratio, Clutches: clutches);
        }).ToArray();
        var answers = await RNumbers.AskAsync(cases.Select(c =>
            $"{{ t <- matrix({RNumbers.Vector(c.Clutches.SelectMany(row => row))}, {c.Clutches.Length}, byrow = TRUE); "
            + $"c(fisher.test(t, workspace = 2e7)$p.value, heterogeneity(t, {RNumbers.Vector(c.Ratio)})) }}"));

        var exact = 0;
        for (var i = 0; i < cases.Length; i++)
        {
            var test = HeterogeneityTest.Of(cases[i].Clutches, Fractions(cases[i].Ratio));
            Near.Check(answers[i][0], test.Exact.Value, test.Exact.IsExact ? 1e-8 : 6 * test.Exact.StandardError, cases[i].Clutches);
            Near.Check(answers[i][1], test.ChiSquare, 1e-9, cases[i].Clutches);
            Near.Check(answers[i][2], test.PValue, 1e-8, cases[i].Clutches);
            exact += test.Exact.IsExact ? 1 : 0;
        }

        Assert.True(exact >= cases.Length / 2, $"{exact} of {cases.Length} were added up, the others drawn");
    }

    private static (IReadOnlyList<int[]> Counts, IReadOnlyList<int[]> Ratios) Draw(int cases, int most, ulong seed)
    {
        var random = new SplitMix64(seed);
        var ratios = Enumerable.Range(0, cases).Select(_ => Ratios[random.Below(Ratios.Length)]).ToArray();

        // Near the ratio and away from it.
        return ([.. ratios.Select(ratio => ratio
            .Select(r => random.Below(2) == 0 ? random.Below((most / ratio.Length) + 1) : most * r / ratio.Sum() * (1 + random.Below(2)) / 2)
            .Select((n, at) => at == 0 ? n + 1 : n)
            .ToArray())], ratios);
    }

    private static Fraction[] Fractions(int[] ratio) => [.. ratio.Select(r => new Fraction(r, 1))];
}
