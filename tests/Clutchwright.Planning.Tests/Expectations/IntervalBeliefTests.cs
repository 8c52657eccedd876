using Clutchwright.Planning.Expectations;
using CsCheck;

namespace Clutchwright.Planning.Tests.Expectations;

public class IntervalBeliefTests
{
    private static readonly IntervalPrior Long = new(1_000.0, 100.0, 6.0);
    private static readonly IntervalPrior Shed = new(30.0, 2.5, 6.0);

    private static readonly Gen<IntervalRecord> AnyRecord = Gen.Select(Gen.Int[0, 2].Select(i => "ABC"[i].ToString()), Gen.Int[22, 40], Gen.Int[0, 3], Gen.Int[1, 6]).Select((female, days, kind, width) => kind switch
    {
        0 => IntervalRecord.Between(female, days - width, days + width),
        1 => IntervalRecord.Running(female, days - 5, 0.9),
        _ => IntervalRecord.Exact(female, days),
    });

    [Fact]
    public void Below_TabledValues_AreTheTables()
    {
        // Standard normal tables; the last digits by the complementary error function of the C library.
        Assert.Equal(0.0013498980316301, NormalCurve.Below(-3.0), 15);
        Assert.Equal(0.0668072012688581, NormalCurve.Below(-1.5), 14);
        Assert.Equal(0.6179114221889526, NormalCurve.Below(0.3), 14);
        Assert.Equal(0.9772498680518208, NormalCurve.Below(2.0), 14);
        Assert.Equal(9.865876450377018, NormalCurve.Below(-6.0) * 1e10, 7);
    }

    [Theory]
    [InlineData(18.0, 2.5, 6.0)]
    [InlineData(58.0, 2.5, 6.0)]
    [InlineData(75.0, 30.0, 6.0)]
    [InlineData(7.0, 4.0, 8.0)]
    public void Expect_NoRecords_HasTheMeanAndSpreadOfThePrior(double mean, double sd, double weight)
    {
        var days = IntervalBelief.From(new(mean, sd, weight), []).Expect(null);

        // Exact on the scale of logarithms; a skewed prior differs a little in days, and whole days add a twelfth to the variance.
        Assert.InRange(days.Mean / mean, 0.98, 1.05);
        Assert.InRange(days.Sd / sd, 0.95, 1.4);
    }

    [Fact]
    public void Expect_OneRecordOfEachFemale_IsTheHandbooksStudentT()
    {
        // Murphy (2007), Conjugate Bayesian analysis of the Gaussian distribution, equations 85 to 89 and 110 [recalled]; so too Gelman et al., Bayesian Data
        // Analysis, 3.3. Four records of four females: mu_n 6.898636, alpha_n 5, beta_n 0.0281241, so t with 10 degrees of freedom and scale
        // 0.0786594 around 6.898636; t tables: 0.95 at 1.812, 0.75 at 0.700.
        var belief = IntervalBelief.From(Long, [.. new[] { 900.0, 1_000.0, 1_100.0, 950.0 }.Select((d, i) => IntervalRecord.Exact($"F{i}", d))]);

        var days = belief.Expect(null);

        Assert.InRange(days.By(0.05), 857, 861);
        Assert.InRange(days.By(0.25), 936, 940);
        Assert.InRange(days.Median, 990, 992);
        Assert.InRange(days.By(0.75), 1_045, 1_049);
        Assert.InRange(days.By(0.95), 1_141, 1_145);
    }

    [Fact]
    public void Expect_NoRecords_IsTheHandbooksStudentT()
    {
        // The same with nothing recorded: 6 degrees of freedom, t table 0.95 at 1.943: 849.4, 995.0 and 1165.6 days.
        var days = IntervalBelief.From(Long, []).Expect("F1");

        Assert.InRange(days.By(0.05), 848, 851);
        Assert.InRange(days.Median, 994, 996);
        Assert.InRange(days.By(0.95), 1_164, 1_167);
    }

    [Fact]
    public void Expect_RandomRecords_AgreesWithTheTwin() => AnyRecord.Array[0, 7].Sample(
        records =>
        {
            var belief = IntervalBelief.From(Shed, records);
            foreach (var female in new[] { "A", "D" })
            {
                var twin = new IntervalTwin(Shed, records, female, 60_000, 5);
                var days = belief.Expect(female);
                foreach (var most in new[] { 26, 29, 31, 35 })
                {
                    var (chance, error) = twin.AtMost(most);
                    Assert.InRange(1.0 - days.NotBefore(most + 1), chance - (6.0 * error) - 0.002, chance + (6.0 * error) + 0.002);
                }
            }
        },
        iter: 12, threads: 1);

    [Fact]
    public void Expect_RelabelledAndReordered_IsTheSame() => Gen.Select(AnyRecord.Array[1, 9], Gen.Int).Sample(
        (records, seed) =>
        {
            var random = new Random(seed);
            var changed = records.Select(r => (Order: random.Next(), Record: Renamed(r))).OrderBy(r => r.Order).Select(r => r.Record).ToArray();

            var (before, after) = (IntervalBelief.From(Shed, records).Expect("A"), IntervalBelief.From(Shed, changed).Expect("x-A"));

            Assert.Equal(before.First, after.First);
            Assert.All(before.Chances.Zip(after.Chances), p => Assert.Equal(p.First, p.Second, 9));
        },
        iter: 40, threads: 1);

    [Fact]
    public void Expect_HerOwnEarlierYears_CountMoreThanThoseOfOthers()
    {
        IntervalRecord[] records = [.. Enumerable.Range(0, 4).Select(_ => IntervalRecord.Exact("early", 26.0)), .. Enumerable.Range(0, 4).Select(_ => IntervalRecord.Exact("late", 34.0))];
        var belief = IntervalBelief.From(Shed, records);

        var (early, other, late) = (belief.Expect("early"), belief.Expect("other"), belief.Expect("late"));

        Assert.InRange(early.Median, 26, 27);
        Assert.InRange(other.Median, 29, 31);
        Assert.InRange(late.Median, 33, 34);
        Assert.True(early.Sd < other.Sd / 1.5);
        Assert.InRange(belief.ShareBetweenFemales(), 0.6, 1.0);
    }

    [Fact]
    public void Expect_MoreRecords_NarrowInExpectation()
    {
        var random = new Random(3);
        var (none, five, fifty) = (0.0, 0.0, 0.0);
        for (var k = 0; k < 200; k++)
        {
            var (middle, sd) = Keeper(random, Shed);
            IntervalRecord[] records = [.. Enumerable.Range(0, 50).Select(i => IntervalRecord.Exact($"F{i}", Math.Exp(middle + (sd * IntervalTwin.Normal(random)))))];
            none += Width([]);
            five += Width(records[..5]);
            fifty += Width(records);
        }

        Assert.True(none > five);
        Assert.True(five > fifty);

        static int Width(IntervalRecord[] records)
        {
            var middle = IntervalBelief.From(Shed, records).Expect(null).Middle(0.9);
            return middle.To - middle.From;
        }
    }

    [Fact]
    public void Expect_RunningLong_PushesOthersLater()
    {
        var alone = IntervalBelief.From(Shed, []).Expect(null);
        var after = IntervalBelief.From(Shed, [IntervalRecord.Running("A", 38.0, 1.0), IntervalRecord.Running("B", 38.0, 1.0)]).Expect(null);
        var own = IntervalBelief.From(Shed, [IntervalRecord.Running("A", 38.0, 1.0)]).Expect("A");

        Assert.True(after.Mean > alone.Mean + 0.5);
        Assert.Equal(alone.Mean, own.Mean, 2);
    }

    [Fact]
    public void Expect_Pace_StretchesTheDays()
    {
        var belief = IntervalBelief.From(new(58.0, 2.5, 6.0), [IntervalRecord.Exact("A", 69.6) with { Pace = 1.2 }, IntervalRecord.Exact("B", 58.0)]);

        Assert.Equal(58.0, belief.Expect("C").Mean, 0.6);
        Assert.InRange(belief.Expect("C", 1.2).Mean / belief.Expect("C").Mean, 1.199, 1.201);
        Assert.True(belief.Expect("C", 1.2, 0.05).Sd > belief.Expect("C", 1.2).Sd);
    }

    [Fact]
    public void Expect_SimulatedKeepers_RangesHoldWhatTheySay()
    {
        // Keepers, females and years drawn from the model; the next year of a female with two years behind her. Whole days hold a little more than
        // is said: a day at an end has about 4 % here.
        var random = new Random(11);
        var (inHalf, inNine, runs) = (0, 0, 400);
        for (var k = 0; k < runs; k++)
        {
            var share = IntervalTwin.Share(random);
            var (middle, sd) = Keeper(random, Long);
            var females = Enumerable.Range(0, 5).Select(_ => middle + (Math.Sqrt(share) * sd * IntervalTwin.Normal(random))).ToArray();
            double Year(int f) => Math.Exp(females[f] + (Math.Sqrt(1.0 - share) * sd * IntervalTwin.Normal(random)));
            var belief = IntervalBelief.From(Long, [.. Enumerable.Range(0, 10).Select(i => IntervalRecord.Exact($"F{i % 5}", Year(i % 5)))]);
            var (days, next) = (belief.Expect("F0"), (int)Math.Round(Year(0)));
            inHalf += next >= days.Middle(0.5).From && next <= days.Middle(0.5).To ? 1 : 0;
            inNine += next >= days.Middle(0.9).From && next <= days.Middle(0.9).To ? 1 : 0;
        }

        Assert.InRange(inHalf / (double)runs, 0.5 - (6.0 * Math.Sqrt(0.25 / runs)), 0.5 + (6.0 * Math.Sqrt(0.25 / runs)));
        Assert.InRange(inNine / (double)runs, 0.9 - (6.0 * Math.Sqrt(0.09 / runs)), 0.9 + (6.0 * Math.Sqrt(0.09 / runs)));
    }

    private static (double Middle, double Sd) Keeper(Random random, IntervalPrior prior)
    {
        var variance = prior.Scale / IntervalTwin.Gamma(random, 3);
        return (prior.Middle + (IntervalTwin.Normal(random) * Math.Sqrt(variance / prior.Weight)), Math.Sqrt(variance));
    }

    private static IntervalRecord Renamed(IntervalRecord r) => r.LeastDays == r.MostDays ? IntervalRecord.Exact("x-" + r.Female, r.LeastDays)
        : double.IsPositiveInfinity(r.MostDays) ? IntervalRecord.Running("x-" + r.Female, r.LeastDays, r.WillEnd)
        : IntervalRecord.Between("x-" + r.Female, r.LeastDays, r.MostDays);
}
