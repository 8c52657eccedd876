using Clutchwright.Desk.Condition;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using CsCheck;

namespace Clutchwright.Desk.Tests.Condition;

/// <summary>The day is 1 May 2026; the figures are worked by hand.</summary>
public sealed class MassTests
{
    private static readonly DateOnly Today = new(2026, 5, 1);

    [Theory]
    [InlineData(1400, null)]
    [InlineData(1350, WatchLevel.Look)]
    [InlineData(1260, WatchLevel.AskVeterinarian)]
    public void Mass_LostSinceThePeak_IsLookedAtFromATenth(double now, WatchLevel? level)
    {
        var answer = Of(Sex.Female, "2020", [(200, 1500), (10, now)]);

        Assert.Equal(level, answer.Remarks.Count == 0 ? null : answer.Remarks[0].Level);
        Assert.Equal(1.0 - (now / 1500.0), answer.Mass!.LossSincePeak, 1e-12);
    }

    /// <summary>A clutch is about 32 % of the female's mass before laying (Ellis and Chappell 1987), brooding costs less than 6 % (Aubret and
    /// others 2005): of 2,000 g 1,360 g are expected, or 1,278.4 g after brooding.</summary>
    [Theory]
    [InlineData(1360, false, 0.32, 0.0, WatchLevel.Told)]
    [InlineData(1278.4, true, 0.3608, 0.0, WatchLevel.Told)]
    [InlineData(1224, false, 0.32, 0.1, WatchLevel.Look)]
    [InlineData(1088, false, 0.32, 0.2, WatchLevel.AskVeterinarian)]
    public void Mass_LostByLaying_IsExplainedByTheClutch(double now, bool isWithDam, double normal, double beyond, WatchLevel level)
    {
        var answer = Of(Sex.Female, "2020", [(60, 2000), (10, now)], new CareClutch("C", Today.AddDays(-50), null, isWithDam));

        Assert.Equal((normal, beyond), (Math.Round(answer.Mass!.NormalLoss, 6), Math.Round(answer.Mass.Unexplained, 6)));
        Assert.Equal(level, answer.Remarks.Single(r => r.About == "mass").Level);
    }

    /// <summary>Fourfold in a year (Ellis and Chappell 1987), by the same share every day: twofold after half of it.</summary>
    [Theory]
    [InlineData(125, false)]
    [InlineData(92, false)]
    [InlineData(85, true)]
    public void Growth_OfAYoungAnimal_IsHeldAgainstAFourfoldFirstYear(double now, bool isSlow)
    {
        var hatched = Today.AddDays(-183);
        var answer = Of(Sex.Female, hatched.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), [(180, 62.5), (0, now)]);

        Assert.Equal(2.0, answer.Mass!.Growth!.Expected, 0.01);
        Assert.Equal((62.5, now / 62.5), (answer.Mass.Growth.HatchGrams, answer.Mass.Growth.Factor));
        Assert.Equal(isSlow, answer.Remarks.Any(r => r.About == "growth"));
    }

    [Fact]
    public void Aim_AtTwoGramsADay_IsTheDayTheLineGetsThere()
    {
        // 1,000 g at 2 g a day: 1,200 g in 100 days.
        var answer = Of(Sex.Female, "2023", [(90, 820), (60, 880), (30, 940), (0, 1000)]);

        Assert.Equal((1200.0, false), (answer.Aim!.LeastGrams, answer.Aim.IsReached));
        Assert.Equal((2.0, Today.AddDays(100)), (answer.Aim.At!.GramsADay, answer.Aim.At.Likely));
        Assert.True(Of(Sex.Male, "2023", [(0, 600)]).Aim!.IsReached);
        Assert.Null(Of(null, "2023", [(0, 600)]).Aim);
    }

    [Fact]
    public void Aim_OfAnAnimalThatDoesNotGrow_IsNotPromised()
    {
        var at = Of(Sex.Female, "2023", [(120, 1000), (90, 1010), (60, 990), (30, 1005), (0, 1000)]).Aim!.At!;

        Assert.Null(at.Latest);
    }

    [Fact]
    public void Aim_OfAnAnimalThatLosesMass_TellsNoDay() =>
        Assert.Null(Of(Sex.Female, "2023", [(150, 950), (120, 1050), (90, 1120), (60, 1180), (0, 1000)]).Aim!.At);

    [Theory]
    [InlineData("2020", 92, false)]
    [InlineData("2020", 93, true)]
    [InlineData("2025-12-01", 31, false)]
    [InlineData("2025-12-01", 32, true)]
    public void Weighing_LongAgo_IsDue(string hatched, int daysAgo, bool isDue) =>
        Assert.Equal(isDue, Of(Sex.Female, hatched, [(daysAgo, 500)]).Remarks.Any(r => r is { Level: WatchLevel.Due, About: "weighing" }));

    /// <summary>The slow twin takes the middle of all slopes, sorted by hand, and the ranks of the interval by trying them.</summary>
    [Fact]
    public void GrowthLine_OfAnyWeighings_IsTheMedianSlopeInsideItsInterval() => Gen.Select(Gen.Int[1, 60], Gen.Int[500, 1500]).Array[4, 14].Sample(
        steps =>
        {
            Weighing[] weighings = [.. steps.Select((s, i) => new Weighing(Today.AddDays(steps.Take(i + 1).Sum(x => x.Item1)), s.Item2))];
            var line = GrowthLine.Of(weighings);
            var days = weighings[^1].Day.DayNumber - weighings[0].Day.DayNumber;
            if (days < 60)
            {
                Assert.Null(line);
                return;
            }

            var slopes = (from i in weighings from j in weighings where i.Day < j.Day orderby (j.Grams - i.Grams) / (j.Day.DayNumber - i.Day.DayNumber) select (j.Grams - i.Grams) / (j.Day.DayNumber - i.Day.DayNumber)).ToArray();
            var (low, median, high) = line!.Value;
            Assert.True(slopes.Count(s => s <= median + 1e-9) * 2 >= slopes.Length && slopes.Count(s => s >= median - 1e-9) * 2 >= slopes.Length);
            Assert.True(low <= median && median <= high);
            Assert.Contains(low, slopes);
            Assert.Contains(high, slopes);
        });

    /// <summary>Sen (1968): of seven points the interval of nine in ten goes from the 5th to the 18th of the 21 slopes, reckoned from
    /// 1.645 times the root of 7 · 6 · 19 / 18 = 44.33, which is 10.95.</summary>
    [Fact]
    public void GrowthLine_OfSevenWeighings_TakesTheRanksOfSen()
    {
        double[] grams = [100, 130, 125, 170, 165, 210, 190];
        Weighing[] weighings = [.. grams.Select((g, i) => new Weighing(Today.AddDays(20 * i), g))];
        var slopes = (from i in Enumerable.Range(0, 7) from j in Enumerable.Range(i + 1, 6 - i) select (grams[j] - grams[i]) / (20.0 * (j - i))).Order().ToArray();

        var (low, median, high) = GrowthLine.Of(weighings)!.Value;

        Assert.Equal((slopes[5], slopes[10], slopes[16]), (low, median, high));
    }

    [Fact]
    public void Condition_WhateverTheOrderOfEntriesOfADay_IsTheSame() => Gen.Shuffle(Enumerable.Range(0, 8).ToArray()).Sample(order =>
    {
        var events = order.Select(i => new CareEvent(i % 2 == 0 ? HappeningKind.Fed : HappeningKind.FoodRefused, Today.AddDays(-10 * (i / 2)), null)).OrderBy(e => e.Day).ToArray();
        var answer = Of(Sex.Female, "2020", events, []);
        Assert.Equal((0, 0, 0), (answer.Feeding.DaysSinceMeal, answer.Feeding.MealsInARow, answer.Feeding.RefusalsInARow));
    });

    private static ConditionAnswer Of(Sex? sex, string hatched, (int DaysAgo, double Grams)[] weighings, params CareClutch[] clutches) =>
        Of(sex, hatched, [.. weighings.OrderByDescending(w => w.DaysAgo).Select(w => new CareEvent(HappeningKind.Weighed, Today.AddDays(-w.DaysAgo), w.Grams))], clutches);

    private static ConditionAnswer Of(Sex? sex, string hatched, CareEvent[] events, CareClutch[] clutches) =>
        new ConditionReckoning(Shipped.Catalogue.Catalogue.Biology, Today).Of(
            new CareRecord(AnimalId.New(), "A", null, sex, DateRange.Read(hatched).Value, null)
            {
                Events = events,
                Last = events.GroupBy(e => e.Kind).ToDictionary(g => g.Key, g => g.Max(e => e.Day)),
                Clutches = clutches,
            },
            null,
            isFeedingKept: false);
}
