using System.Text;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Incubators;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Incubators;

public sealed class IncubatorDeedTests
{
    [Fact]
    public async Task ReadAsync_InFahrenheit_IsKeptInCelsiusAndShownInFahrenheit()
    {
        using var desk = await RoomAsync();
        Assert.Empty((await desk.Get<TemperatureSetting>().KeepAsync("f", TestDesk.Who, TestDesk.Cancel)).Problems);

        Assert.Empty((await desk.Get<WriteIncubator>().ReadAsync("north", new("88.7", "92,5 %", null, "after misting"), TestDesk.Who, TestDesk.Cancel)).Problems);

        var shown = (await desk.Get<ShowIncubator>().RunAsync("North", 1, TestDesk.Cancel)).Value!;
        var reading = Assert.Single(shown.Readings);
        Assert.Equal((31.5, 92.5, "after misting"), (reading.Celsius, reading.HumidityPercent, reading.Text));
        Assert.Equal((TemperatureUnit.Fahrenheit, "88.7 °F"), (shown.Unit, TemperatureText.Of(reading.Celsius!.Value, shown.Unit)));
    }

    [Fact]
    public async Task RunAsync_OutOfItsLimits_SaysSo()
    {
        using var desk = await RoomAsync();
        Assert.Empty((await desk.Get<WriteIncubator>().ReadAsync("North", new("33", null, "2026-05-01 08:00", null), TestDesk.Who, TestDesk.Cancel)).Problems);

        var all = await desk.Get<ListIncubators>().RunAsync(TestDesk.Cancel);

        Assert.Equal(["33.0 °C at the last reading, above its 32.5 °C."], Assert.Single(all).Remarks);
        var none = await desk.Get<ShowIncubator>().RunAsync("Noth", 1, TestDesk.Cancel);
        Assert.Equal(["North"], Assert.Single(none.Problems).DidYouMean);
    }

    [Theory]
    [InlineData("temperature", "warm", null, null)]
    [InlineData("temperature", null, null, null)]
    [InlineData("temperature", "315", null, null)]
    [InlineData("humidity", null, "101", null)]
    [InlineData("when", "31", null, "tomorrow")]
    [InlineData("when", "31", null, "2026-05-02 08:00")]
    public async Task ReadAsync_WhatCannotBe_SaysWhere(string where, string? temperature, string? humidity, string? when)
    {
        using var desk = await RoomAsync();

        var answer = await desk.Get<WriteIncubator>().ReadAsync("North", new(temperature, humidity, when, null), TestDesk.Who, TestDesk.Cancel);

        Assert.Equal(where, Assert.Single(answer.Problems).Where);
    }

    [Theory]
    [InlineData("Time;Temperature (°C);Humidity %;Battery\n2026-04-30 10:00;31,5;91;3\n2026-04-30 10:15;31,6;92;3\n")]
    [InlineData("date,time,temp_f,rh\n30.04.2026,10:00,88.7,91\n30.04.2026,10:15,88.88,92\n")]
    [InlineData("Date/Time\tcelsius\thumidity\n4/30/2026 10:00 AM\t31.5\t91\n4/30/2026 10:15 AM\t31.6\t92\n")]
    public async Task Take_LoggersFilesOfSeveralForms_AreReadAlike(string csv)
    {
        using var desk = await RoomAsync();

        var taken = (await desk.Get<TakeReadings>().RunAsync("North", File(csv), TestDesk.Who, TestDesk.Cancel)).Value!;

        Assert.Equal((2, 0), (taken.Added, taken.Skipped));
        var shown = (await desk.Get<ShowIncubator>().RunAsync("North", null, TestDesk.Cancel)).Value!;
        Assert.Equal([31.5, 31.6], shown.Readings.Select(r => r.Celsius!.Value));
        Assert.Equal([91.0, 92.0], shown.Readings.Select(r => r.HumidityPercent!.Value));
        Assert.Equal(new DateTimeOffset(2026, 4, 30, 10, 15, 0, TimeSpan.Zero), shown.Readings[1].TakenAt);
        Assert.Equal(new ReadingsTaken(0, 2, null), (await desk.Get<TakeReadings>().RunAsync("North", File(csv), TestDesk.Who, TestDesk.Cancel)).Value);
        Assert.Empty((await desk.Get<UndoDeed>().RunAsync(taken.Deed!.Value, TestDesk.Who, TestDesk.Cancel)).Problems);
        Assert.Empty((await desk.Get<ShowIncubator>().RunAsync("North", null, TestDesk.Cancel)).Value!.Readings);
    }

    [Fact]
    public async Task Take_SomeRowsWrong_NamesEachAndWritesNothing()
    {
        using var desk = await RoomAsync();
        var csv = "time,temperature,humidity\n2026-04-30 10:00,31.5,91\n2026-04-31 10:15,31.5,91\n2026-04-30 10:30,--,91\n2026-04-30 10:45,99,91\n2026-04-30 11:00,,\n2026-04-30 10:00,30,91\n";

        var preview = (await desk.Get<TakeReadings>().PreviewAsync("North", File(csv), TestDesk.Cancel)).Value!;
        var taken = await desk.Get<TakeReadings>().RunAsync("North", File(csv), TestDesk.Who, TestDesk.Cancel);

        Assert.Equal([3, 4, 5, 6, 7], preview.Problems.Select(p => p.Line));
        Assert.Equal(["line 3, time", "line 4, temperature"], taken.Problems.Select(p => p.Where));
        Assert.Equal(1, preview.Fresh);
        Assert.Empty((await desk.Get<ShowIncubator>().RunAsync("North", null, TestDesk.Cancel)).Value!.Readings);
    }

    [Fact]
    public async Task Preview_OfDatesInDoubt_AsksAndTakesTheAnswer()
    {
        using var desk = await RoomAsync();
        var csv = "time,temperature\n03/04/2026 10:00,31.5\n";

        var doubtful = (await desk.Get<TakeReadings>().PreviewAsync("North", File(csv), TestDesk.Cancel)).Value!;
        var said = (await desk.Get<TakeReadings>().PreviewAsync("North", File(csv) with { Dates = "dmy" }, TestDesk.Cancel)).Value!;

        Assert.True(doubtful.AsksForDates);
        Assert.Contains("which number of \"03/04/2026 10:00\" is the day", Assert.Single(doubtful.Problems).Text, StringComparison.Ordinal);
        Assert.Equal(new DateTimeOffset(2026, 4, 3, 10, 0, 0, TimeSpan.Zero), said.First);
    }

    [Theory]
    [InlineData("a,b\n1,2\n", "No column is read as the time")]
    [InlineData("time\n2026-04-30 10:00\n", "No column is read as a temperature or a humidity")]
    [InlineData("time,temperature\n", "The file has no rows")]
    [InlineData("", "empty")]
    public async Task Preview_OfNoLoggersFile_SaysWhy(string csv, string why)
    {
        using var desk = await RoomAsync();

        var preview = (await desk.Get<TakeReadings>().PreviewAsync("North", File(csv), TestDesk.Cancel)).Value!;

        Assert.Contains(why, preview.Problems[0].Text, StringComparison.OrdinalIgnoreCase);
    }

    private static ReadingsFile File(string csv) => new(Encoding.UTF8.GetBytes(csv), "log.csv", null, null);

    private static async Task<TestDesk> RoomAsync()
    {
        var desk = new TestDesk();
        Assert.Empty((await desk.Get<WriteIncubator>().AddAsync(new("North", "30", "32.5", "85", null, null), TestDesk.Who, TestDesk.Cancel)).Problems);
        return desk;
    }
}
