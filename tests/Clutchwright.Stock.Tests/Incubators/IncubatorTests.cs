using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Incubators;

public sealed class IncubatorTests
{
    private static readonly DateTime Noon = new(2026, 4, 30, 12, 0, 0, DateTimeKind.Utc);

    [Fact]
    public async Task Deeds_OfAnIncubator_AreEachUndone()
    {
        using var book = await TestBook.NewAsync();
        var states = new List<string> { await book.StateAsync() };
        var incubator = await AddAsync(book, "North");
        states.Add(await book.StateAsync());
        var changed = (await new EditIncubator(book.Book).RunAsync(
            incubator.IncubatorId, incubator.Version, new() { Name = "South", LowestCelsius = 30, HighestCelsius = 32.5, LowestHumidityPercent = 85 }, TestBook.Who, TestBook.Cancellation)).Expect();
        states.Add(await book.StateAsync());
        (await ReadAsync(book, changed, Noon, 31.5, 92)).Expect();
        states.Add(await book.StateAsync());
        (await new RetireIncubator(book.Book).RunAsync(changed.IncubatorId, TestBook.Who, TestBook.Cancellation)).Expect();
        states.Add(await book.StateAsync());
        (await new RetireIncubator(book.Book).BackAsync(changed.IncubatorId, TestBook.Who, TestBook.Cancellation)).Expect();

        var deeds = await book.DeedsAsync();
        Assert.Equal(
            ["Put incubator South back into use", "Put incubator South out of use", "Read of incubator South: 31.5 °C, 92 %", "Changed incubator North: name, lowest °C, highest °C, lowest humidity in %", "Added incubator North"],
            deeds.Select(d => d.Words));
        for (var i = 0; i < deeds.Count; i++)
        {
            (await book.TryUndoAsync(deeds[i].DeedId)).Expect();
            Assert.Equal(states[^(i + 1)], await book.StateAsync());
        }
    }

    public static TheoryData<string, IncubatorEntry, Type> Wrong() => new()
    {
        { "no name", new() { Name = " " }, typeof(IncubatorProblem.NameInvalid) },
        { "a name taken, in another case", new() { Name = "NORTH" }, typeof(IncubatorProblem.NameTaken) },
        { "too hot", new() { Name = "A", HighestCelsius = 61 }, typeof(IncubatorProblem.TemperatureOutOfRange) },
        { "not a number", new() { Name = "A", LowestCelsius = double.NaN }, typeof(IncubatorProblem.TemperatureOutOfRange) },
        { "more than all water", new() { Name = "A", HighestHumidityPercent = 101 }, typeof(IncubatorProblem.HumidityOutOfRange) },
        { "swapped", new() { Name = "A", LowestCelsius = 32, HighestCelsius = 31 }, typeof(IncubatorProblem.LimitsSwapped) },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public async Task AddIncubator_WhatCannotBe_IsRefusedAndNothingIsWritten(string why, IncubatorEntry entry, Type problem)
    {
        using var book = await TestBook.NewAsync();
        await AddAsync(book, "North");

        var refused = Assert.IsType<IncubatorProblem.Refused>((await new AddIncubator(book.Book).RunAsync(entry, TestBook.Who, TestBook.Cancellation)).Problem);

        Assert.True(problem == Assert.Single(refused.Problems).GetType(), why);
        Assert.Single(await book.DeedsAsync());
    }

    [Fact]
    public async Task RecordReading_OfTheSameTimeOrYetToCome_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var incubator = await AddAsync(book, "North");
        var first = (await ReadAsync(book, incubator, Noon, 31, null)).Expect();

        Assert.Equal(new IncubatorProblem.ReadAlready(Noon), OnlyProblem(await ReadAsync(book, incubator, Noon, 31, null)));
        Assert.IsType<IncubatorProblem.InTheFuture>(OnlyProblem(await ReadAsync(book, incubator, FakeClock.Start.AddHours(1), 31, null)));
        Assert.IsType<IncubatorProblem.NothingRead>(OnlyProblem(await ReadAsync(book, incubator, Noon.AddHours(-1), null, null)));
        (await new WithdrawReading(book.Book).RunAsync(first.ReadingId, TestBook.Who, TestBook.Cancellation)).Expect();
        Assert.IsType<IncubatorProblem.ReadingNotFound>((await new WithdrawReading(book.Book).RunAsync(first.ReadingId, TestBook.Who, TestBook.Cancellation)).Problem);
        (await ReadAsync(book, incubator, Noon, 30, null)).Expect();
        Assert.Equal([30.0], (await ListAsync(book, incubator)).Select(r => r.Celsius!.Value));
    }

    [Fact]
    public async Task RecordReadings_SomeThereAlready_AddsTheRestInOneDeedThatIsUndone()
    {
        using var book = await TestBook.NewAsync();
        var incubator = await AddAsync(book, "North");
        (await ReadAsync(book, incubator, Noon, 31, 90)).Expect();
        var before = await book.StateAsync();
        ReadingEntry[] file = [Entry(0, 31, 90), Entry(1, 31.2, 91), Entry(2, 31.4, 92), Entry(2, 31.4, 92)];

        var preview = (await new RecordReadings(book.Book).PreviewAsync(incubator.IncubatorId, file, TestBook.Cancellation)).Expect();
        var done = (await new RecordReadings(book.Book).RunAsync(incubator.IncubatorId, file, "log.csv", TestBook.Who, TestBook.Cancellation)).Expect();

        Assert.Equal((2, 2, 0), (preview.Fresh, preview.Skipped, preview.Refused.Count));
        Assert.Equal((2, 2), (done.Added, done.Skipped));
        Assert.Equal(3, (await ListAsync(book, incubator)).Count);
        Assert.Equal("Took 2 readings of incubator North from log.csv", (await book.DeedsAsync())[0].Words);
        Assert.Equal(new ReadingsResult(0, 4, null), (await new RecordReadings(book.Book).RunAsync(incubator.IncubatorId, file, "log.csv", TestBook.Who, TestBook.Cancellation)).Expect());
        await book.UndoLastAsync();
        Assert.Equal(before, await book.StateAsync());
    }

    [Fact]
    public async Task RecordReadings_SomeWrong_NamesEachAndWritesNothing()
    {
        using var book = await TestBook.NewAsync();
        var incubator = await AddAsync(book, "North");
        (await ReadAsync(book, incubator, Noon, 31, 90)).Expect();
        ReadingEntry[] file = [Entry(1, 31, 90), Entry(0, 25, 90), Entry(2, 310, 90), Entry(3, 31, 90), Entry(3, 32, 90)];

        var refused = Assert.IsType<IncubatorProblem.RowsRefused>(
            (await new RecordReadings(book.Book).RunAsync(incubator.IncubatorId, file, "log.csv", TestBook.Who, TestBook.Cancellation)).Problem);

        Assert.Equal([1, 2, 4], refused.Rows.Select(r => r.Index));
        Assert.Single(await ListAsync(book, incubator));
        Assert.Equal(2, (await book.DeedsAsync()).Count);
    }

    [Fact]
    public async Task ListIncubators_WithClutches_TellsSinceWhenAndRetiringIsRefused()
    {
        using var book = await TestBook.NewAsync();
        var (north, south) = (await AddAsync(book, "North"), await AddAsync(book, "South"));
        var dam = await book.AddAsync("F", Sex.Female, hatched: "2020");
        var entry = new ClutchEntry { Tag = "C1", DamId = dam.AnimalId, Laid = DateRange.Read("2026-04-01").Expect(), IncubatorId = north.IncubatorId };
        var clutch = (await new RecordLaying(book.Book, TestBook.Check).RunAsync(entry, TestBook.Who, TestBook.Cancellation)).Expect();

        var before = (await new ListIncubators(book.Book).RunAsync(TestBook.Cancellation)).Expect();
        var moved = (await new EditClutch(book.Book, TestBook.Check).RunAsync(clutch.ClutchId, clutch.Version, entry with { IncubatorId = south.IncubatorId }, TestBook.Who, TestBook.Cancellation)).Expect();
        (await new EditClutch(book.Book, TestBook.Check).RunAsync(clutch.ClutchId, moved.Version, entry with { IncubatorId = south.IncubatorId, Notes = "dry" }, TestBook.Who, TestBook.Cancellation)).Expect();
        var after = (await new ListIncubators(book.Book).RunAsync(TestBook.Cancellation)).Expect();

        Assert.Null(Assert.Single(before[0].Clutches).PutIn);
        Assert.Equal("F", before[0].Clutches[0].Dam);
        Assert.Empty(after[0].Clutches);
        var deed = (await book.DeedsAsync()).Single(d => d.Words.Contains("incubator", StringComparison.Ordinal) && d.Words.StartsWith("Changed clutch", StringComparison.Ordinal));
        Assert.Equal(deed.When, Assert.Single(after[1].Clutches).PutIn);
        var refused = Assert.IsType<IncubatorProblem.InUse>((await new RetireIncubator(book.Book).RunAsync(south.IncubatorId, TestBook.Who, TestBook.Cancellation)).Problem);
        Assert.Equal(["C1"], refused.Clutches);
        (await new RetireIncubator(book.Book).RunAsync(north.IncubatorId, TestBook.Who, TestBook.Cancellation)).Expect();
        Assert.IsType<IncubatorProblem.NotFound>((await ReadAsync(book, north, Noon, 31, null)).Problem);
    }

    private static IncubatorProblem OnlyProblem(Outcome<Reading> outcome) =>
        Assert.Single(Assert.IsType<IncubatorProblem.Refused>(outcome.Problem).Problems);

    private static ReadingEntry Entry(int hours, double? celsius, double? humidity) => new() { TakenAt = Noon.AddHours(hours), Celsius = celsius, HumidityPercent = humidity };

    private static async Task<Incubator> AddAsync(TestBook book, string name) =>
        (await new AddIncubator(book.Book).RunAsync(new() { Name = name }, TestBook.Who, TestBook.Cancellation)).Expect();

    private static Task<Outcome<Reading>> ReadAsync(TestBook book, Incubator incubator, DateTime at, double? celsius, double? humidity) =>
        new RecordReading(book.Book).RunAsync(incubator.IncubatorId, new() { TakenAt = at, Celsius = celsius, HumidityPercent = humidity }, TestBook.Who, TestBook.Cancellation);

    private static async Task<IReadOnlyList<Reading>> ListAsync(TestBook book, Incubator incubator) =>
        (await new ListReadings(book.Book).RunAsync(incubator.IncubatorId, null, null, TestBook.Cancellation)).Expect();
}
