using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Settings;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Tests.Clutches;
using Clutchwright.Stock.Tests.Happenings;
using Clutchwright.Stock.Tests.Testing;
using CsCheck;
using Xunit;

namespace Clutchwright.Stock.Tests.History;

public sealed class UndoTests
{
    [Fact]
    public async Task ListDeeds_EveryKindOfDeed_KeepsWhoWhenAndWhat()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A");
        var edited = (await book.TryEditAsync(animal, TestBook.Entry("B", Sex.Male))).Expect();
        var statement = await book.SayAsync(edited, StatementKind.Told, "het Clown");
        await book.TryWithdrawAsync(statement);
        await book.TryBinAsync(edited);
        await book.TryRestoreAsync(edited);
        (await book.TryUndoAsync(new DeedId(6))).Expect();

        var deeds = await book.DeedsAsync();

        Assert.Equal(
            [
                "7 Undid 6: Took B out of the bin",
                "6 Took B out of the bin",
                "5 Put B in the bin",
                "4 Withdrew of B: told: het Clown",
                "3 Recorded of B: told: het Clown",
                "2 Changed A: tag, sex",
                "1 Added A",
            ],
            deeds.Select(d => $"{d.DeedId} {d.Words}"));
        Assert.All(deeds, d => Assert.Equal((TestBook.Who, DateTimeKind.Utc, 1), (d.Who, d.When.Kind, d.Changes)));
        Assert.Equal(deeds.Select(d => d.When).OrderDescending(), deeds.Select(d => d.When));
        Assert.Equal((new DeedId(6), new DeedId(7)), (deeds[0].Undoes, deeds[1].UndoneBy));
        Assert.Equal(deeds.Select(d => d.DeedId), (await book.FindAsync(animal)).History.Select(d => d.DeedId));
        Assert.Equal([new DeedId(2), new DeedId(1)], (await new ListDeeds(book.Book).RunAsync(5, new DeedId(3), TestBook.Cancellation)).Expect().Select(d => d.DeedId));
    }

    /// <summary>The heart of the history: any deeds, undone one by one from the last, lead back through every state there was;
    /// undoing the undoings leads forward again.</summary>
    [Fact]
    public async Task RunAsync_AnyDeedsUndoneBackwards_GivesEveryStateAgain() =>
        await Gen.Int[0, 20].Array[1, 16].SampleAsync(
            async choices =>
            {
                using var book = await TestBook.NewAsync();
                var states = new List<string> { await book.StateAsync() };
                foreach (var (choice, step) in choices.Select((choice, step) => (choice, step)))
                {
                    await DoSomethingAsync(book, choice, step);
                    if ((await book.DeedsAsync()).Count == states.Count)
                    {
                        states.Add(await book.StateAsync());
                    }
                }

                var deeds = states.Count - 1;
                for (var deed = deeds; deed >= 1; deed--)
                {
                    (await book.TryUndoAsync(new DeedId(deed))).Expect();
                    Assert.Equal(states[deed - 1], await book.StateAsync());
                }

                for (var deed = 1; deed <= deeds; deed++)
                {
                    (await book.TryUndoAsync(new DeedId(2 * deeds - deed + 1))).Expect();
                    Assert.Equal(states[deed], await book.StateAsync());
                }
            },
            iter: 40,
            threads: 1);

    [Fact]
    public async Task RunAsync_EditUndoneTwice_IsRefusedTheSecondTime()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A");
        await book.TryEditAsync(animal, TestBook.Entry("B"));
        (await book.TryUndoAsync(new DeedId(2))).Expect();

        var problem = Assert.IsType<HistoryProblem.ChangedSince>((await book.TryUndoAsync(new DeedId(2))).Problem);

        var record = Assert.Single(problem.Records);
        Assert.Equal((RecordKind.Animal, animal.AnimalId.Value, "B", new DeedId(3)), (record.Kind, record.RecordId, record.Label, record.LastDeed));
        Assert.Equal(["Tag"], record.Fields);
    }

    [Fact]
    public async Task RunAsync_ChangedSince_NamesWhatAndByWhichDeed()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A");
        var edited = (await book.TryEditAsync(animal, TestBook.Entry("A", Sex.Male))).Expect();
        await book.TryEditAsync(edited, TestBook.Entry("A", Sex.Male, hatched: "2024", status: AnimalStatus.Sold));
        var before = await book.StateAsync();

        var problem = Assert.IsType<HistoryProblem.ChangedSince>((await book.TryUndoAsync(new DeedId(2))).Problem);

        var record = Assert.Single(problem.Records);
        Assert.Equal(["Status", "Hatched"], record.Fields);
        Assert.Equal("Changed A: status, hatched", record.LastWords);
        Assert.Equal(before, await book.StateAsync());
        Assert.Equal(3, (await book.DeedsAsync()).Count);
    }

    [Fact]
    public async Task RunAsync_OtherRecordsChangedSince_IsDone()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A");
        await book.TryEditAsync(animal, TestBook.Entry("A", Sex.Male));
        await book.AddAsync("B");

        Assert.True((await book.TryUndoAsync(new DeedId(2))).IsDone);

        Assert.Null((await book.FindAsync("A")).Animal.Sex);
    }

    [Fact]
    public async Task RunAsync_AddedAnimalHasOffspringNow_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("S", Sex.Male);
        await book.AddAsync("H", sire: sire);

        Assert.Equal(new HistoryProblem.StillUsed(new DeedId(1), "S", "H"), (await book.TryUndoAsync(new DeedId(1))).Problem);
    }

    [Fact]
    public async Task RunAsync_AddedAnimalHasStatementNow_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        await book.SayAsync(await book.AddAsync("A"), StatementKind.Told, "het Clown");

        Assert.Equal(new HistoryProblem.StillUsed(new DeedId(1), "A", "told: het Clown"), (await book.TryUndoAsync(new DeedId(1))).Problem);
    }

    [Fact]
    public async Task RunAsync_OldTagGivenToAnother_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A");
        await book.TryEditAsync(animal, TestBook.Entry("B"));
        await book.AddAsync("a");

        Assert.Equal(
            new HistoryProblem.NoLongerAllowed(new DeedId(2), "A", new AnimalProblem.TagTaken("A")),
            (await book.TryUndoAsync(new DeedId(2))).Problem);
    }

    [Fact]
    public async Task RunAsync_TakenOutOfBinAndBredSince_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("S", Sex.Male);
        await book.TryBinAsync(sire);
        await book.TryRestoreAsync(sire);
        await book.AddAsync("H", sire: sire);

        var problem = Assert.IsType<HistoryProblem.NoLongerAllowed>((await book.TryUndoAsync(new DeedId(3))).Problem);

        Assert.Equal(["H"], Assert.IsType<AnimalProblem.HasOffspring>(problem.Because).Offspring);
    }

    [Fact]
    public async Task RunAsync_NoSuchDeed_IsRefused()
    {
        using var book = await TestBook.NewAsync();

        Assert.Equal(new HistoryProblem.NoSuchDeed(new DeedId(1)), (await book.TryUndoAsync(new DeedId(1))).Problem);
    }

    [Fact]
    public async Task EditAnimal_NothingDifferent_IsNoDeed()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A", Sex.Male);

        Assert.True((await book.TryEditAsync(animal, TestBook.Entry("A", Sex.Male))).IsDone);

        Assert.Single(await book.DeedsAsync());
    }

    internal static async Task DoSomethingAsync(TestBook book, int choice, int step)
    {
        var all = await book.AllAsync();
        var animal = all.Count == 0 ? null : all[step % all.Count];
        var males = all.Where(a => a.Sex == Sex.Male).ToArray();
        switch (choice)
        {
            case 0 or 1:
                await book.AddAsync($"M{step}", Sex.Male);
                break;
            case 2:
                await book.TryAddAsync(
                    TestBook.Entry($"F{step}", Sex.Female, sire: males.FirstOrDefault()),
                    new StatementEntry { Kind = StatementKind.Seen, Text = "Pastel" },
                    new StatementEntry { Kind = StatementKind.Seen, Text = "normal" });
                break;
            case 3 when males.Length >= 2:
                await book.TryAddAsync(TestBook.Entry($"P{step}", possibleSires: males));
                break;
            case 4 when animal is not null:
                await book.TryEditAsync(animal, TestBook.Entry($"E{step}", animal.Sex, hatched: "2020"));
                break;
            case 5 when animal is not null && males.Length >= 2:
                await book.TryEditAsync(animal, TestBook.Entry(animal.Tag, animal.Sex, possibleSires: [.. males.Where(m => m.AnimalId != animal.AnimalId)]));
                break;
            case 6 when animal is not null:
                await book.TryBinAsync(animal);
                break;
            case 7 when animal is not null:
                await book.SayAsync(animal, StatementKind.ProvenByBreeding, "Clown");
                break;
            case 8 when animal is { Statements.Count: > 0 }:
                await book.TryWithdrawAsync(animal.Statements[0]);
                break;
            case 9:
                await book.TryImportAsync($"id,sire,dam,seen\nI{step},J{step}|K{step},L{step},Pastel\nJ{step},,,\nK{step},,,normal\nL{step},,,\n");
                break;
            case 10:
                var kept = (await new ListSeasons(book.Book).RunAsync(TestBook.Cancellation)).Expect().FirstOrDefault(s => s.Year == 2027);
                (await new KeepSeason(book.Book).RunAsync(
                    new(2027, kept?.Version, $"{{ \"note\": \"{step}\" }}", animal is null ? [] : [new(animal.Tag, animal.AnimalId)]), TestBook.Who, TestBook.Cancellation)).Expect();
                break;
            case 11:
                (await new AdoptRoute(book.Book).RunAsync(
                    AdoptedRouteId.New(), new($"Clown {step}", 2027, 2030, "{}", "{}"), null, TestBook.Who, TestBook.Cancellation)).Expect();
                break;
            case 12 when (await new ListRoutes(book.Book).RunAsync(TestBook.Cancellation)).Expect().FirstOrDefault(r => r.Ending is null) is { } route:
                (await new EndRoute(book.Book).RunAsync(route.AdoptedRouteId, RouteEnding.GivenUp, null, TestBook.Who, TestBook.Cancellation)).Expect();
                break;
            case 13 when animal is not null:
                (await HappeningTests.WriteAsync(book, animal, HappeningKind.Weighed, "2025-05-01", 100 + step)).Expect();
                break;
            case 14 when animal is not null && (await new ListHappenings(book.Book).RunAsync(animal.AnimalId, [], 1, TestBook.Cancellation)).Expect() is [{ } line]:
                (await new WithdrawHappening(book.Book).RunAsync(line.HappeningId, TestBook.Who, TestBook.Cancellation)).Expect();
                break;
            case 15 or 16 when all.FirstOrDefault(a => a.Sex == Sex.Female) is { } dam:
                (await ClutchTests.LayAsync(book, $"C{step}", dam, [.. males], goodEggs: step % 3)).Expect();
                break;
            case 17 when (await ClutchTests.ListAsync(book)) is [{ } clutch, ..]:
                await ClutchTests.HatchAsync(book, clutch.Clutch, $"Y{step}", grams: step % 2 == 0 ? null : 60, isMoreMeant: true);
                break;
            case 18 when (await ClutchTests.ListAsync(book)) is [{ } edited, ..]:
                await new EditClutch(book.Book, TestBook.Check).RunAsync(
                    edited.Clutch.ClutchId,
                    edited.Clutch.Version,
                    edited.Clutch.ToEntry() with { Sires = [.. males.Skip(step % 2).Select(m => m.AnimalId)], Counted = [new("normal", null, step + 1)] },
                    TestBook.Who,
                    TestBook.Cancellation);
                break;
            case 19 when (await ClutchTests.ListAsync(book)) is [{ } going, ..]:
                await new BinClutch(book.Book).RunAsync(going.Clutch.ClutchId, TestBook.Who, TestBook.Cancellation);
                break;
            case 20:
                (await new KeepSetting(book.Book).RunAsync("label-size", $"{{\"mm\":{step}}}", "Set the size of labels", TestBook.Who, TestBook.Cancellation)).Expect();
                break;
        }
    }
}
