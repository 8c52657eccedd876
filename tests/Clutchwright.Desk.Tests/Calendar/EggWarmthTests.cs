using System.Globalization;
using Clutchwright.Desk.Calendar;
using Clutchwright.Desk.Incubators;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Incubators;

namespace Clutchwright.Desk.Tests.Calendar;

/// <summary>The clock of the desk stands on 1 May 2026.</summary>
public sealed class EggWarmthTests
{
    [Fact]
    public void Mean_ManyReadingsOnOneDay_CountsDaysAlike()
    {
        var days = new Dictionary<DateOnly, double> { [new(2026, 4, 1)] = 31.0, [new(2026, 4, 3)] = 32.0, [new(2026, 4, 9)] = 40.0 };

        Assert.Equal(31.5, EggWarmth.Mean(days, new(2026, 4, 1), new(2026, 4, 8)));
        Assert.Null(EggWarmth.Mean(days, new(2026, 4, 4), new(2026, 4, 8)));
    }

    // Ellis and Chappell 1987: eggs at 29.2 degrees hatched after 58 to 70 days, in the middle 64.
    [Fact]
    public async Task Run_EggsAtAPublishedTemperature_HatchInTheMiddleOfThePublishedDays()
    {
        var usual = await HatchAsync(null, "C");
        var cool = await HatchAsync(29.2, "C");

        Assert.InRange(cool.Median!.Value.DayNumber - new DateOnly(2026, 4, 1).DayNumber, 62, 66);
        Assert.InRange(usual.Median!.Value.DayNumber - new DateOnly(2026, 4, 1).DayNumber, 56, 60);
        Assert.Contains(cool.Why, w => w.StartsWith("The eggs are kept at 29.2 °C on the mean, by the readings of their incubator", StringComparison.Ordinal));
        Assert.DoesNotContain(usual.Why, w => w.StartsWith("The eggs are kept", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Run_KeeperReadsFahrenheit_SaysItSo()
    {
        var cool = await HatchAsync(29.2, "F");

        Assert.Contains(cool.Why, w => w.Contains("84.6 °F on the mean", StringComparison.Ordinal) && w.Contains("longer", StringComparison.Ordinal));
    }

    private static async Task<CalendarDue> HatchAsync(double? celsius, string unit)
    {
        using var desk = await TestDesk.WithAsync("id,sex,hatched\nM,m,2020\nF,f,2020\n");
        var book = desk.Get<OpenBook>().Book;
        Assert.Empty((await desk.Get<TemperatureSetting>().KeepAsync(unit, TestDesk.Who, TestDesk.Cancel)).Problems);
        var box = (await new AddIncubator(book).RunAsync(new() { Name = "Box" }, TestDesk.Who, TestDesk.Cancel)).Value!;
        if (celsius is { } kept)
        {
            // Two a day around the mean; before the laying, when the box was empty, it was cold.
            ReadingEntry[] readings =
            [
                .. Enumerable.Range(0, 25).SelectMany(d => new[] { -0.2, 0.2 }.Select((off, i) => new ReadingEntry
                {
                    TakenAt = new DateTime(2026, 4, 2, 6 + (12 * i), 0, 0, DateTimeKind.Utc).AddDays(d), Celsius = Math.Round(kept + off, 1),
                })),
                new() { TakenAt = new DateTime(2026, 3, 20, 12, 0, 0, DateTimeKind.Utc), Celsius = 20.0 },
            ];
            Assert.True((await new RecordReadings(book).RunAsync(box.IncubatorId, readings, "logger.csv", TestDesk.Who, TestDesk.Cancel)).IsDone);
        }

        var dam = (await desk.StateAsync()).Find("F")!.Animal.AnimalId;
        var laid = new ClutchEntry { Tag = "C-1", DamId = dam, Laid = DateRange.On(DateOnly.Parse("2026-04-01", CultureInfo.InvariantCulture)), GoodEggs = 6, IncubatorId = box.IncubatorId };
        Assert.True((await new RecordLaying(book, (_, _) => null).RunAsync(laid, TestDesk.Who, TestDesk.Cancel)).IsDone);
        var answer = await desk.Get<ShowCalendar>().RunAsync(null, 200, asOnThatDay: false, TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        return answer.Value!.Due.Single(d => d.Step == "Hatch");
    }
}
