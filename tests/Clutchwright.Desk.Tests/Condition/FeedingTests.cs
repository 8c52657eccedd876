using Clutchwright.Desk.Condition;
using Clutchwright.Desk.Happenings;
using Clutchwright.Desk.Tests.Testing;
using CsCheck;

namespace Clutchwright.Desk.Tests.Condition;

/// <summary>The day is 1 May 2026; masses and gaps are worked by hand.</summary>
public sealed class FeedingTests
{
    private static readonly DateOnly Today = new(2026, 5, 1);

    [Fact]
    public async Task Condition_OfAnAnimalOnAWeeklyRhythm_IsCalm()
    {
        using var desk = await TestDesk.WithAsync("id,sex,hatched\nA,f,2020\n");
        await MealsAsync(desk, "A", every: 7, count: 12, lastDaysAgo: 6);
        await WriteAsync(desk, "A", "Shed", 20);

        var answer = await ConditionAsync(desk, "A");

        Assert.Empty(answer.Remarks);
        Assert.Equal((6, 12, 0), (answer.Feeding.DaysSinceMeal, answer.Feeding.MealsInARow, answer.Feeding.RefusalsInARow));
        Assert.Equal(new FeedingRhythm(7, 7, 0, 11, RhythmBasis.Own), answer.Feeding.Rhythm);
        Assert.Equal((1, 20), (answer.Feeding.DueInDays, answer.DaysSinceShed));
    }

    [Fact]
    public async Task Condition_AGapTwiceItsLongOne_IsLookedAtByItsOwnRecord()
    {
        using var desk = await TestDesk.WithAsync("id,sex,hatched\nA,f,2020\n");
        await MealsAsync(desk, "A", every: 7, count: 12, lastDaysAgo: 15);

        var remark = Assert.Single((await ConditionAsync(desk, "A")).Remarks);

        Assert.Equal((WatchLevel.Look, "feeding"), (remark.Level, remark.About));
        Assert.Equal("No meal for 15 days, and no refusal either: perhaps it was not offered any, or that was not written down.", remark.Text);
        Assert.StartsWith("Its own record: of its last 11 gaps between meals half are 7 days or less", remark.Source, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Condition_FourRefusalsInARow_AreLookedAtAndThoseBeforeAShedAreNot()
    {
        using var desk = await TestDesk.WithAsync("id,sex,hatched\nA,f,2020\nB,f,2020\n");
        foreach (var tag in new[] { "A", "B" })
        {
            await MealsAsync(desk, tag, every: 3, count: 12, lastDaysAgo: 6);
            foreach (var day in new[] { 5, 4, 3, 2 })
            {
                await WriteAsync(desk, tag, "FoodRefused", day);
            }
        }

        await WriteAsync(desk, "B", "Shed", 1);

        var (a, b) = (await ConditionAsync(desk, "A"), await ConditionAsync(desk, "B"));
        Assert.Equal("No meal for 6 days, refused 4 times in a row.", Assert.Single(a.Remarks).Text);
        Assert.Equal((0, 4), (b.Feeding.RefusalsInARow, b.Feeding.RefusalsBeforeShed));
        Assert.Empty(b.Remarks);
    }

    [Fact]
    public async Task Condition_OfAShortRecord_GoesByTheStockOfItsAge()
    {
        using var desk = await TestDesk.WithAsync("id,sex,hatched\nA,f,2020\nB,f,2020\nY,f,2026-01-01\n");
        await MealsAsync(desk, "B", every: 10, count: 41, lastDaysAgo: 0);
        await WriteAsync(desk, "A", "Fed", 21);

        Assert.Equal((10, 10, 30, RhythmBasis.Own), Rhythm(await ConditionAsync(desk, "B")));
        Assert.Equal(RhythmBasis.Practice, (await ConditionAsync(desk, "A")).Feeding.Rhythm.Basis);
        await MealsAsync(desk, "A", every: 10, count: 8, lastDaysAgo: 31);
        Assert.Equal((10, 10, 8, RhythmBasis.Own), Rhythm(await ConditionAsync(desk, "A")));
        Assert.Equal((7, 10, 0, RhythmBasis.Practice), Rhythm(await ConditionAsync(desk, "Y")));
    }

    [Theory]
    [InlineData("2026-01-20", "m", "it is the pairing season")]
    [InlineData("2026-01-20", "f", null)]
    public async Task Condition_OfAMaleInThePairingSeason_IsToldNotAlarmed(string lastMeal, string sex, string? fast)
    {
        // April is the last month of pairing in the shipped catalogue: asked on 30 April.
        using var desk = await TestDesk.WithAsync($"id,sex,hatched\nA,{sex},2020\nB,f,2020\n");
        await MealsAsync(desk, "B", every: 7, count: 3, lastDaysAgo: 2);
        for (var i = 0; i < 12; i++)
        {
            await NoteAsync(desk, "A", "Fed", DateOnly.Parse(lastMeal, System.Globalization.CultureInfo.InvariantCulture).AddDays(-7 * i));
        }

        var all = await new Stock.Happenings.ListCare(desk.Get<Desk.Opened.OpenBook>().Book).RunAsync(null, Today.AddDays(-400), TestDesk.Cancel);
        var answer = new ConditionReckoning(Shipped.Catalogue.Catalogue.Biology, new(2026, 4, 30)).Of(all.Value!.Single(c => c.Tag == "A"), null, isFeedingKept: true);

        var remark = Assert.Single(answer.Remarks);
        Assert.Equal(fast is null ? WatchLevel.Look : WatchLevel.Told, remark.Level);
        Assert.Contains(fast ?? "No meal for 100 days", remark.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Condition_OfAGravidFemale_IsTold()
    {
        using var desk = await TestDesk.WithAsync("id,sex,hatched\nA,f,2020\n");
        await MealsAsync(desk, "A", every: 7, count: 12, lastDaysAgo: 40);
        await WriteAsync(desk, "A", "Ovulated", 30);

        var remark = Assert.Single((await ConditionAsync(desk, "A")).Remarks);

        Assert.Equal(WatchLevel.Told, remark.Level);
        Assert.Contains("carrying eggs", remark.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(12, WatchLevel.Told)]
    [InlineData(50, WatchLevel.AskVeterinarian)]
    public async Task Condition_OfAHatchlingBeforeItsFirstMeal_IsToldAndThenAskedAbout(int age, WatchLevel level)
    {
        using var desk = await TestDesk.WithAsync($"id,sex,hatched\nA,f,{Today.AddDays(-age):yyyy-MM-dd}\nB,f,2020\n");
        await WriteAsync(desk, "B", "Fed", 3);

        Assert.Equal(level, Assert.Single((await ConditionAsync(desk, "A")).Remarks).Level);
    }

    [Fact]
    public async Task Condition_WhereNoMealsAreKept_HoldsNoGapAgainstAnyone()
    {
        using var desk = await TestDesk.WithAsync($"id,sex,hatched\nA,f,{Today.AddDays(-50):yyyy-MM-dd}\nB,f,2020\n");
        await WriteAsync(desk, "B", "Fed", 100);

        var watch = await desk.Get<ShowWatch>().RunAsync(TestDesk.Cancel);

        Assert.False(watch.IsFeedingKept);
        Assert.DoesNotContain(watch.Lines, l => l.Level > WatchLevel.Told);
    }

    /// <summary>The slow twin counts, for each number, how many are no larger.</summary>
    [Fact]
    public void Share_OfAnyNumbers_IsTheSmallestThatEnoughDoNotPass() => Gen.Select(Gen.Int[1, 60].Array[1, 40], Gen.Int[1, 100]).Sample(
        (numbers, percent) =>
        {
            var twin = numbers.Where(n => 100 * numbers.Count(m => m <= n) >= percent * numbers.Length).Min();
            Assert.Equal(twin, FeedingRhythm.Share([.. numbers], percent / 100.0));
        });

    private static (int, int, int, RhythmBasis) Rhythm(ConditionAnswer answer) =>
        (answer.Feeding.Rhythm.UsualDays, answer.Feeding.Rhythm.LongDays, answer.Feeding.Rhythm.Gaps, answer.Feeding.Rhythm.Basis);

    private static async Task<ConditionAnswer> ConditionAsync(TestDesk desk, string tag) => (await desk.Get<ShowCondition>().RunAsync(tag, TestDesk.Cancel)).Value!;

    private static async Task MealsAsync(TestDesk desk, string tag, int every, int count, int lastDaysAgo)
    {
        for (var i = 0; i < count; i++)
        {
            await WriteAsync(desk, tag, "Fed", lastDaysAgo + (every * i));
        }
    }

    private static Task WriteAsync(TestDesk desk, string tag, string kind, int daysAgo) => NoteAsync(desk, tag, kind, Today.AddDays(-daysAgo));

    private static async Task NoteAsync(TestDesk desk, string tag, string kind, DateOnly day) =>
        Assert.Empty((await desk.Get<WriteHappening>().RunAsync(new(tag, kind, day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), null, null, null), TestDesk.Who, TestDesk.Cancel)).Problems);
}
