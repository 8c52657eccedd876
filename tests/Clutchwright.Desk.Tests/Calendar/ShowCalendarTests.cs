using Clutchwright.Desk.Calendar;
using Clutchwright.Desk.Happenings;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Desk.Tests.Calendar;

/// <summary>The clock of the desk stands on 1 May 2026. Figures of days are those of common practice (catalogue/python-regius/species.yaml).</summary>
public sealed class ShowCalendarTests
{
    private const string Room = "id,sex,hatched\nM,m,2020\nF,f,2020\nG,f,2020\nH,f,2020\n";

    [Fact]
    public async Task Run_EmptyStock_HasNothing()
    {
        using var desk = new TestDesk();

        var calendar = await AskAsync(desk);

        Assert.True(calendar.IsEmpty);
        Assert.Equal(9, calendar.Learnt.Count);
        Assert.All(calendar.Learnt, l => Assert.Equal(0, l.Records));
    }

    [Fact]
    public async Task Run_Demo_Answers()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var calendar = await AskAsync(desk);

        Assert.Equal(new DateOnly(2026, 5, 1), calendar.On);
        Assert.Empty(calendar.Doubts);
    }

    [Fact]
    public async Task Run_OvulationAndShed_GiveTheEggsWithTheirTask()
    {
        using var desk = await TestDesk.WithAsync(Room);
        await NoteAsync(desk, "F", "Ovulated", "2026-03-24");

        var ovulated = await AskAsync(desk);
        await NoteAsync(desk, "F", "PreLayShed", "2026-04-12");
        var shed = await AskAsync(desk);

        // 24 March and 48 days: 11 May; 12 April and 30 days: 12 May.
        var (before, after) = (Of(ovulated, "Eggs"), Of(shed, "Eggs"));
        Assert.InRange(before.Median!.Value, new(2026, 5, 10), new(2026, 5, 12));
        Assert.InRange(after.Median!.Value, new(2026, 5, 11), new(2026, 5, 13));
        Assert.True(Width(after) < Width(before));
        Assert.Equal(before.Id, after.Id);
        var task = Assert.Single(shed.Tasks, t => t.For.Step == "Eggs");
        Assert.Equal((after.Nine!.From.AddDays(-7), "F"), (task.By, task.Tag));
        Assert.Contains(after.Why, w => w.StartsWith("Pre-lay shed: 2026-04-12", StringComparison.Ordinal));
        Assert.Contains(after.Why, w => w.Contains("common practice, weighing 6 records", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Run_LongAfterTheShed_IsOverdueAndNamesTheVeterinarian()
    {
        using var desk = await TestDesk.WithAsync(Room);
        await NoteAsync(desk, "F", "PreLayShed", "2026-03-20");
        await NoteAsync(desk, "G", "PreLayShed", "2026-03-27");

        var calendar = await AskAsync(desk);

        Assert.Equal([("F", CalendarLevel.Overdue), ("G", CalendarLevel.Late)], calendar.Overdue.Select(d => (d.Tag, d.Level)));
        Assert.Contains("reptile veterinarian", calendar.Overdue[0].Advice, StringComparison.Ordinal);
        Assert.InRange(calendar.Overdue[0].StillOpen, 0.0, 0.025);
        Assert.True(calendar.Overdue[0].Likely >= calendar.On);
    }

    [Fact]
    public async Task Run_OnlyPaired_SaysThatSheMaySkip()
    {
        using var desk = await TestDesk.WithAsync(Room);
        await NoteAsync(desk, "M", "Introduced", "2026-02-01", "F");
        await NoteAsync(desk, "F", "Locked", "2026-04-28", "M");

        var calendar = await AskAsync(desk);

        var ovulation = calendar.Due.Concat(calendar.Overdue).Single(d => d.Step == "Ovulation");
        Assert.Equal("F", ovulation.Tag);
        Assert.Contains(ovulation.Why, w => w.StartsWith("Last lock seen: 2026-04-28", StringComparison.Ordinal));
        Assert.InRange(ovulation.WillHappen, 0.5, 0.76);
        Assert.Empty(calendar.Tasks);
    }

    [Fact]
    public async Task Run_Clutches_TeachTheFemaleAndOthersLess()
    {
        using var desk = await TestDesk.WithAsync(Room);
        foreach (var year in new[] { 2022, 2023, 2024, 2025 })
        {
            await NoteAsync(desk, "F", "PreLayShed", $"{year}-03-01");
            await LayAsync(desk, "F", $"F-{year}", $"{year}-03-27", $"{year}-05-25");
        }

        await NoteAsync(desk, "F", "PreLayShed", "2026-04-20");
        await NoteAsync(desk, "G", "PreLayShed", "2026-04-20");

        var calendar = await AskAsync(desk);

        // Hers take 26 days each time, where 30 are usual.
        var (hers, others) = (calendar.Due.Single(d => d is { Step: "Eggs", Tag: "F" }), calendar.Due.Single(d => d is { Step: "Eggs", Tag: "G" }));
        Assert.InRange(hers.Median!.Value, new(2026, 5, 16), new(2026, 5, 17));
        Assert.InRange(others.Median!.Value, new(2026, 5, 17), new(2026, 5, 19));
        Assert.Equal(4, calendar.Learnt.Single(l => l.Interval == "prelay-shed-to-eggs-days").Records);
        Assert.Equal(4, calendar.Learnt.Single(l => l.Interval == "incubation-days").Records);
        Assert.Contains(hers.Why, w => w.Contains("4 in your book, 4 of hers", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Run_Laid_WaitsForThePipUntilTheYoungAreOut()
    {
        using var desk = await TestDesk.WithAsync(Room);
        await LayAsync(desk, "F", "C1", "2026-03-20", null);
        var before = await AskAsync(desk);

        await LayAsync(desk, "G", "C2", "2026-03-01", "2026-04-28");
        var after = await AskAsync(desk);

        // 20 March and 58 days: 17 May.
        Assert.InRange(Of(before, "Pip").Median!.Value, new(2026, 5, 16), new(2026, 5, 18));
        Assert.DoesNotContain(after.Due, d => d is { Tag: "G", Step: "Pip" });
        Assert.DoesNotContain(before.Due, d => d.Step is "Eggs" or "Ovulation");
    }

    [Fact]
    public async Task Run_Hatchlings_WaitForTheFirstShedTogether()
    {
        using var desk = await TestDesk.WithAsync(Room + "Y1,u,2026-04-28\nY2,u,2026-04-28\n");
        await NoteAsync(desk, "Y1", "Shed", "2026-04-30");

        var calendar = await AskAsync(desk);

        Assert.Contains(calendar.Due, d => d.Step == "FirstShed" && d.Animals.SequenceEqual(["Y2"]));
        Assert.Contains(calendar.Due.Concat(calendar.Overdue), d => d.Step == "FirstMeal" && d.Animals.SequenceEqual(["Y1"]));
    }

    [Fact]
    public async Task Run_PastDay_LeavesOutWhatCameLater()
    {
        using var desk = await TestDesk.WithAsync(Room);
        await NoteAsync(desk, "F", "Ovulated", "2026-01-10");
        await NoteAsync(desk, "F", "PreLayShed", "2026-01-30");

        var then = (await desk.Get<ShowCalendar>().RunAsync(new(2026, 1, 20), 90, asOnThatDay: true, TestDesk.Cancel)).Value!;

        Assert.Equal(new DateOnly(2026, 1, 20), then.On);
        Assert.Contains(then.Due, d => d.Step == "PreLayShed");
    }

    [Fact]
    public async Task Run_ImpossibleInterval_IsTold()
    {
        using var desk = await TestDesk.WithAsync(Room);
        await NoteAsync(desk, "F", "Ovulated", "2026-04-01");
        await NoteAsync(desk, "F", "PreLayShed", "2026-04-04");

        var doubt = Assert.Single((await AskAsync(desk)).Doubts);

        Assert.StartsWith("F: ovulation to pre-lay shed would be 3 days", doubt, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_AskedWrongly_SaysWhat()
    {
        using var desk = new TestDesk();

        Assert.Equal("days", (await desk.Get<ShowCalendar>().RunAsync(null, 0, false, TestDesk.Cancel)).Problems[0].Where);
        Assert.Equal("from", (await desk.Get<ShowCalendar>().RunAsync(new(2099, 1, 1), 10, false, TestDesk.Cancel)).Problems[0].Where);
    }

    [Fact]
    public async Task Feed_Renewed_OpensToTheNewTokenOnly()
    {
        using var desk = await TestDesk.WithAsync(Room);
        var feed = desk.Get<CalendarFeed>();
        Assert.Null(await feed.TokenAsync(TestDesk.Cancel));
        Assert.False(await feed.IsOpenToAsync(string.Empty, TestDesk.Cancel));

        await feed.RenewAsync(TestDesk.Who, TestDesk.Cancel);
        var first = (await feed.TokenAsync(TestDesk.Cancel))!;
        await feed.RenewAsync(TestDesk.Who, TestDesk.Cancel);
        var second = (await feed.TokenAsync(TestDesk.Cancel))!;

        Assert.Equal(40, second.Length);
        Assert.False(await feed.IsOpenToAsync(first, TestDesk.Cancel));
        Assert.True(await feed.IsOpenToAsync(second, TestDesk.Cancel));
        await feed.CloseAsync(TestDesk.Who, TestDesk.Cancel);
        Assert.False(await feed.IsOpenToAsync(second, TestDesk.Cancel));
    }

    [Fact]
    public async Task Feed_StepMoves_KeepsItsIdentityAndCountsUp()
    {
        using var desk = await TestDesk.WithAsync(Room);
        await NoteAsync(desk, "F", "Ovulated", "2026-04-20");
        var before = (await desk.Get<CalendarFeed>().RunAsync(TestDesk.Cancel)).Value!;

        await NoteAsync(desk, "F", "Locked", "2026-04-01", "M");
        var after = (await desk.Get<CalendarFeed>().RunAsync(TestDesk.Cancel)).Value!;

        Assert.Equal(Lines(before, "UID:").Order(), Lines(after, "UID:").Order());
        Assert.True(Sequence(after) > Sequence(before));

        static string[] Lines(string file, string name) => [.. file.Replace("\r\n ", string.Empty, StringComparison.Ordinal).Split("\r\n").Where(l => l.StartsWith(name, StringComparison.Ordinal))];
        static long Sequence(string file) => long.Parse(Lines(file, "SEQUENCE:")[0]["SEQUENCE:".Length..], System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public async Task Run_TwoThousandAnimalsWithSeasons_AnswersInSeconds()
    {
        var csv = new System.Text.StringBuilder("id,sex,hatched\nM,m,2015\n");
        for (var i = 0; i < 2_000; i++)
        {
            csv.Append(System.Globalization.CultureInfo.InvariantCulture, $"F{i},f,2018\n");
        }

        using var desk = await TestDesk.WithAsync(csv.ToString());
        for (var i = 0; i < 60; i++)
        {
            await NoteAsync(desk, $"F{i}", i % 3 == 0 ? "Ovulated" : "Locked", i % 2 == 0 ? "2026-04-10" : "about 10 March 2026", i % 3 == 0 ? null : "M");
        }

        _ = await desk.StateAsync();
        var (clock, before) = (System.Diagnostics.Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        var calendar = await AskAsync(desk);

        TestContext.Current.TestOutputHelper?.WriteLine($"{calendar.Due.Count} due of 60 females among 2,000 in {clock.ElapsedMilliseconds} ms, {(Environment.CpuUsage.TotalTime - before).TotalMilliseconds:0} ms of processor time of all tests that ran");
        Assert.True(calendar.Due.Count > 60);
    }

    private static async Task<CalendarAnswer> AskAsync(TestDesk desk)
    {
        var answer = await desk.Get<ShowCalendar>().RunAsync(null, 200, asOnThatDay: false, TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }

    private static CalendarDue Of(CalendarAnswer calendar, string step) => calendar.Due.Single(d => d.Step == step);

    private static int Width(CalendarDue due) => due.Nine!.To.DayNumber - due.Nine.From.DayNumber;

    private static async Task NoteAsync(TestDesk desk, string tag, string kind, string when, string? mate = null) =>
        Assert.Empty((await desk.Get<WriteHappening>().RunAsync(new(tag, kind, when, null, mate, null), TestDesk.Who, TestDesk.Cancel)).Problems);

    private static async Task LayAsync(TestDesk desk, string dam, string tag, string laid, string? hatched)
    {
        var state = await desk.StateAsync();
        var entry = new ClutchEntry
        {
            Tag = tag,
            DamId = state.Find(dam)!.Animal.AnimalId,
            Laid = DateRange.On(DateOnly.Parse(laid, System.Globalization.CultureInfo.InvariantCulture)),
            Hatched = hatched is null ? null : DateRange.On(DateOnly.Parse(hatched, System.Globalization.CultureInfo.InvariantCulture)),
            GoodEggs = 6,
        };
        Assert.True((await new RecordLaying(desk.Get<OpenBook>().Book, (_, _) => null).RunAsync(entry, TestDesk.Who, TestDesk.Cancel)).IsDone);
    }
}
