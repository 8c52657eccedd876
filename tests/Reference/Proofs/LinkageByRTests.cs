using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Linkages;
using Clutchwright.Reference.Tests.R;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Proofs;

/// <summary>LOD scores and intervals from counts, against R.</summary>
public sealed class LinkageByRTests
{
    private static readonly double[] Fractions = [0.001, 0.05, 0.17, 0.3, 0.45];

    [Fact]
    public async Task Lod_OfCountedMeioses_IsThatOfRsBinomialChances()
    {
        var random = new SplitMix64(5);
        (int K, int N)[] cases = [.. Enumerable.Range(0, 60).Select(i =>
        {
            var n = 1 + random.Below(i % 2 == 0 ? 12 : 300);
            return (random.Below(n + 1), n);
        })];
        var answers = await RNumbers.AskAsync(cases.Select(c =>
            $"c({string.Join(',', Fractions.Select(r => $"lod({c.K}, {c.N}, {RNumbers.Say(r)}), lod.unknown({c.K}, {c.N}, {RNumbers.Say(r)})"))}, pmin(0.5, binom.test({c.K}, {c.N})$conf.int))"));

        for (var i = 0; i < cases.Length; i++)
        {
            var (k, n) = cases[i];
            for (var at = 0; at < Fractions.Length; at++)
            {
                Near.Check(answers[i][2 * at], new LinkageFamily(k, n, LinkagePhase.Known).Lod(Fractions[at]), 1e-9, cases[i]);
                Near.Check(answers[i][(2 * at) + 1], new LinkageFamily(k, n, LinkagePhase.Unknown).Lod(Fractions[at]), 1e-9, cases[i]);
            }

            var interval = LinkageTest.Of([new(k, n, LinkagePhase.Known)], Probability.From(0.95)).Interval!.Value;
            Near.Check(answers[i][^2], interval.Low, 1e-9, cases[i]);
            Near.Check(answers[i][^1], interval.High, 1e-9, cases[i]);
        }
    }

    [Fact]
    public async Task Intercross_OfRandomCounts_HasTheMaximumThatRFinds()
    {
        var random = new SplitMix64(6);
        (int[] Counts, bool IsCoupling)[] cases = [([284, 21, 21, 55], true), .. Enumerable.Range(0, 60).Select(i =>
            (new[] { 20 + random.Below(100), 1 + random.Below(20), 1 + random.Below(20), 1 + random.Below(30) }, i % 2 == 0))];
        var answers = await RNumbers.AskAsync(cases.Select(c => $"intercross({RNumbers.Vector(c.Counts)}, {(c.IsCoupling ? "TRUE" : "FALSE")})"));

        for (var i = 0; i < cases.Length; i++)
        {
            var curve = IntercrossTest.Of(cases[i].Counts, cases[i].IsCoupling).Curve;

            // R searches for the maximum, and finds its place to half the digits of its height.
            Near.Check(answers[i][0], curve.Best, 1e-6, cases[i].Counts);
            Near.Check(answers[i][1], curve.Most, 1e-9, cases[i].Counts);
            Near.Check(answers[i][2], curve.At(0.1), 1e-9, cases[i].Counts);
            Near.Check(answers[i][3], curve.At(0.3), 1e-9, cases[i].Counts);
        }
    }
}
