using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Clutches;

public sealed class ClutchTests
{
    [Fact]
    public async Task RecordLaying_SeveralSires_IsListedAndUndone()
    {
        using var book = await TestBook.NewAsync();
        var (dam, first, second) = (await book.AddAsync("F", Sex.Female), await book.AddAsync("M2", Sex.Male), await book.AddAsync("M1", Sex.Male));
        var before = await book.StateAsync();

        (await LayAsync(book, "24-1", dam, [first, second], goodEggs: 6)).Expect();

        var line = Assert.Single(await ListAsync(book));
        Assert.Equal(("24-1", "F", 6, 0, 0), (line.Clutch.Tag, line.Dam, line.Clutch.GoodEggs, line.HatchedCount, line.Lost));
        Assert.Equal(["M1", "M2"], line.Sires);
        Assert.Equal("24-1", (await OfParentAsync(book, second)).Clutch.Tag);
        Assert.Equal(line.Clutch.ClutchId, (await new ListClutches(book.Book).FindAsync(null, " 24-1 ", TestBook.Cancellation)).Expect().Clutch.ClutchId);
        await book.UndoLastAsync();
        Assert.Equal(before, await book.StateAsync());
    }

    public static TheoryData<string, ClutchEntry, Type> Wrong() => new()
    {
        { "no id", Entry() with { Tag = " " }, typeof(ClutchProblem.TagInvalid) },
        { "id taken", Entry() with { Tag = "TAKEN" }, typeof(ClutchProblem.TagTaken) },
        { "less than no egg", Entry() with { GoodEggs = -1 }, typeof(ClutchProblem.EggsOutOfRange) },
        { "too many slugs", Entry() with { Slugs = 201 }, typeof(ClutchProblem.EggsOutOfRange) },
        { "no mass", Entry() with { MassGrams = 0 }, typeof(ClutchProblem.MassOutOfRange) },
        { "hatched first", Entry() with { Hatched = Day("2023-01-01") }, typeof(ClutchProblem.HatchedBeforeLaid) },
        { "yet to come", Entry() with { Laid = Day("2199-01-01") }, typeof(ClutchProblem.InTheFuture) },
        { "no young counted", Entry() with { Counted = [new("normal", null, 0)] }, typeof(ClutchProblem.CountOutOfRange) },
        { "unreadable", Entry() with { Counted = [new("?", null, 2)] }, typeof(ClutchProblem.SeenUnreadable) },
        { "no such incubator", Entry() with { IncubatorId = new(Guid.CreateVersion7()) }, typeof(ClutchProblem.IncubatorNotFound) },
        { "no such sire", Entry() with { Sires = [AnimalId.New()] }, typeof(ClutchProblem.SireNotFound) },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public async Task RecordLaying_WhatCannotBe_IsRefusedAndNothingIsWritten(string why, ClutchEntry entry, Type problem)
    {
        using var book = await TestBook.NewAsync();
        var dam = await book.AddAsync("F", Sex.Female, hatched: "2020");
        (await LayAsync(book, "Taken", dam)).Expect();

        var refused = Assert.IsType<ClutchProblem.Refused>((await LayAsync(book, entry with { DamId = dam.AnimalId })).Problem);

        Assert.True(problem == Assert.Single(refused.Problems).GetType(), why);
        Assert.DoesNotContain("Problem", ProblemWords.Say(refused).ToString(), StringComparison.Ordinal);
        Assert.Equal(2, (await book.DeedsAsync()).Count);
    }

    [Fact]
    public async Task RecordLaying_ParentsOfTheWrongSexOrTooYoung_AreRefused()
    {
        using var book = await TestBook.NewAsync();
        var (male, female) = (await book.AddAsync("M", Sex.Male), await book.AddAsync("F", Sex.Female, hatched: "2024-08-01"));

        var refused = Assert.IsType<ClutchProblem.Refused>((await LayAsync(book, "1", male, [female])).Problem);

        Assert.Equal(
            [new ClutchProblem.DamIsMale("M"), new ClutchProblem.SireIsFemale("F"), new ClutchProblem.ParentNotOlder("F", female.Hatched!, Day("2024-04-02"))],
            refused.Problems);
    }

    [Fact]
    public async Task RecordHatchling_WithMass_IsAnAnimalOfTheClutchAndUndoneAsOne()
    {
        using var book = await TestBook.NewAsync();
        var (dam, sire) = (await book.AddAsync("F", Sex.Female), await book.AddAsync("M", Sex.Male));
        var clutch = (await LayAsync(book, "24-1", dam, [sire], goodEggs: 2)).Expect();
        var before = await book.StateAsync();

        var young = (await HatchAsync(book, clutch, "24-1-1", grams: 61)).Expect();

        var record = await book.FindAsync("24-1-1");
        Assert.Equal((dam.AnimalId, sire.AnimalId, clutch.ClutchId, 61.0), (record.Animal.DamId, record.Animal.SireId, record.Animal.ClutchId, record.Animal.MassGrams));
        Assert.Equal("seen: Pastel", Assert.Single(record.Statements).ToString());
        var line = Assert.Single(await ListAsync(book));
        Assert.Equal((1, "2024-06-01"), (line.HatchedCount, line.Clutch.Hatched!.Words));
        Assert.Equal(young.AnimalId, line.Young[0].AnimalId);
        await book.UndoLastAsync();
        Assert.Equal(before, await book.StateAsync());
    }

    [Fact]
    public async Task RecordHatchling_SentTwice_IsEnteredOnce()
    {
        using var book = await TestBook.NewAsync();
        var clutch = (await LayAsync(book, "24-1", await book.AddAsync("F", Sex.Female))).Expect();
        var id = AnimalId.New();

        (await HatchAsync(book, clutch, "24-1-1", id: id)).Expect();
        Assert.Equal(id, (await HatchAsync(book, clutch, "24-1-1", id: id)).Expect().AnimalId);

        Assert.Equal(3, (await book.DeedsAsync()).Count);
    }

    [Fact]
    public async Task RecordHatchling_MoreThanGoodEggs_IsAskedTwice()
    {
        using var book = await TestBook.NewAsync();
        var clutch = (await LayAsync(book, "24-1", await book.AddAsync("F", Sex.Female), goodEggs: 1)).Expect();
        (await HatchAsync(book, clutch, "24-1-1")).Expect();

        Assert.Equal(new ClutchProblem.MoreThanLaid("24-1", 1, 2), (await HatchAsync(book, clutch, "24-1-2")).Problem);
        Assert.True((await HatchAsync(book, clutch, "24-1-2", isMoreMeant: true)).IsDone);
    }

    [Fact]
    public async Task EditClutch_OtherSires_AreThoseOfItsYoung()
    {
        using var book = await TestBook.NewAsync();
        var (dam, first, second) = (await book.AddAsync("F", Sex.Female), await book.AddAsync("M1", Sex.Male), await book.AddAsync("M2", Sex.Male));
        var clutch = (await LayAsync(book, "24-1", dam, [first, second])).Expect();
        (await HatchAsync(book, clutch, "24-1-1")).Expect();
        Assert.Equal(2, (await book.FindAsync("24-1-1")).Animal.PossibleSireIds.Count);
        var before = await book.StateAsync();

        var now = (await ListAsync(book))[0].Clutch;
        (await EditAsync(book, now, now.ToEntry() with { Sires = [second.AnimalId] })).Expect();

        Assert.Equal(second.AnimalId, (await book.FindAsync("24-1-1")).Animal.SireId);
        Assert.Equal("Changed clutch 24-1: sires", (await book.DeedsAsync())[0].Words);
        Assert.Equal(new ClutchProblem.ChangedSince("24-1"), (await EditAsync(book, now, now.ToEntry())).Problem);
        await book.UndoLastAsync();
        Assert.Equal(before, await book.StateAsync());
    }

    [Fact]
    public async Task BinClutch_WithYoung_IsRefusedUntilTheyAreInTheBinToo()
    {
        using var book = await TestBook.NewAsync();
        var clutch = (await LayAsync(book, "24-1", await book.AddAsync("F", Sex.Female))).Expect();
        var young = (await HatchAsync(book, clutch, "24-1-1")).Expect();

        Assert.Equal(["24-1-1"], Assert.IsType<ClutchProblem.HasYoung>((await BinAsync(book, clutch)).Problem).Young);
        (await book.TryBinAsync(young)).Expect();
        (await BinAsync(book, clutch)).Expect();
        Assert.Empty(await ListAsync(book));

        // Its id is free again, and so it cannot come back.
        (await LayAsync(book, "24-1", await book.AddAsync("G", Sex.Female))).Expect();
        Assert.Equal(new ClutchProblem.TagTaken("24-1"), (await new BinClutch(book.Book).RestoreAsync(clutch.ClutchId, TestBook.Who, TestBook.Cancellation)).Problem);
    }

    [Fact]
    public async Task EditAnimal_OfAnotherDam_IsNoLongerOfTheClutch()
    {
        using var book = await TestBook.NewAsync();
        var clutch = (await LayAsync(book, "24-1", await book.AddAsync("F", Sex.Female))).Expect();
        var young = (await HatchAsync(book, clutch, "24-1-1")).Expect();
        var other = await book.AddAsync("G", Sex.Female);

        (await book.TryEditAsync(young, TestBook.Entry("24-1-1", dam: other, hatched: "2024-06-01"))).Expect();

        Assert.Null((await book.FindAsync("24-1-1")).Animal.ClutchId);
    }

    [Fact]
    public async Task RecordHappening_OfAClutch_CountsWhatIsLost()
    {
        using var book = await TestBook.NewAsync();
        var (dam, other) = (await book.AddAsync("F", Sex.Female), await book.AddAsync("G", Sex.Female));
        var clutch = (await LayAsync(book, "24-1", dam, goodEggs: 6)).Expect();

        (await WriteAsync(book, dam, clutch, HappeningKind.EggsLost, 2)).Expect();
        (await WriteAsync(book, dam, clutch, HappeningKind.Pipped, null)).Expect();

        var line = Assert.Single(await ListAsync(book));
        Assert.Equal((2, "2024-05-30"), (line.Lost, line.Pipped!.Words));
        Assert.Equal("24-1", (await new ListHappenings(book.Book).RunAsync(dam.AnimalId, [HappeningKind.Pipped], 5, TestBook.Cancellation)).Expect()[0].Clutch);
        Assert.IsType<HappeningProblem.ClutchNotFound>(Assert.Single(Assert.IsType<HappeningProblem.Refused>((await WriteAsync(book, other, clutch, HappeningKind.EggsLost, 2)).Problem).Problems));
        Assert.IsType<HappeningProblem.ClutchNotFitting>(Assert.Single(Assert.IsType<HappeningProblem.Refused>((await WriteAsync(book, dam, null, HappeningKind.EggsLost, 2)).Problem).Problems));
        Assert.Equal(new HistoryProblem.StillUsed(new DeedId(3), "Clutch 24-1", "eggs lost 2 eggs"), (await book.TryUndoAsync(new DeedId(3))).Problem);
    }

    [Fact]
    public async Task UndoDeed_SireOfAClutch_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("M", Sex.Male);
        (await LayAsync(book, "24-1", await book.AddAsync("F", Sex.Female), [sire])).Expect();

        Assert.Equal(new HistoryProblem.StillUsed(new DeedId(1), "M", "Clutch 24-1"), (await book.TryUndoAsync(new DeedId(1))).Problem);
    }

    internal static Task<Outcome<Clutch>> LayAsync(TestBook book, string tag, Animal dam, Animal[]? sires = null, int? goodEggs = null) =>
        LayAsync(book, Entry() with { Tag = tag, DamId = dam.AnimalId, Sires = [.. (sires ?? []).Select(s => s.AnimalId)], GoodEggs = goodEggs });

    internal static Task<Outcome<Animal>> HatchAsync(
        TestBook book, Clutch clutch, string tag, AnimalId? id = null, double? grams = null, bool isMoreMeant = false) =>
        new RecordHatchling(book.Book, TestBook.Check).RunAsync(
            clutch.ClutchId,
            new()
            {
                AnimalId = id ?? AnimalId.New(),
                Tag = tag,
                Hatched = Day("2024-06-01"),
                MassGrams = grams,
                Statements = [new() { Kind = StatementKind.Seen, Text = "Pastel" }],
                IsMoreMeant = isMoreMeant,
            },
            TestBook.Who,
            TestBook.Cancellation);

    [Fact]
    public async Task Open_ClutchesOfEveryKind_AreThoseNotHatchedOrWithEggsLeft()
    {
        using var book = await TestBook.NewAsync();
        var dam = await book.AddAsync("F", Sex.Female);
        var tags = new[] { "eggs", "over", "left", "untold", "binned" };
        int?[] eggs = [4, 2, 3, null, 4];
        for (var i = 0; i < tags.Length; i++)
        {
            var clutch = (await LayAsync(book, tags[i], dam, goodEggs: eggs[i])).Expect();
            if (tags[i] is "over" or "left" or "untold")
            {
                (await HatchAsync(book, clutch, tags[i] + "-1")).Expect();
                (await WriteAsync(book, dam, clutch, HappeningKind.EggsLost, 1)).Expect();
            }
            else if (tags[i] == "binned")
            {
                (await BinAsync(book, clutch)).Expect();
            }
        }

        var open = (await new ListClutches(book.Book).OpenAsync(TestBook.Cancellation)).Expect();

        Assert.Equal(["eggs", "left"], open.Select(l => l.Clutch.Tag).Order(StringComparer.Ordinal));
        Assert.Equal((1, 1), open.Where(l => l.Clutch.Tag == "left").Select(l => (l.Lost, l.HatchedCount)).Single());
    }

    internal static async Task<IReadOnlyList<ClutchLine>> ListAsync(TestBook book) =>
        (await new ListClutches(book.Book).RunAsync(binned: false, TestBook.Cancellation)).Expect();

    private static ClutchEntry Entry() => new() { Tag = "24-2", DamId = default, Laid = Day("2024-04-02") };

    private static DateRange Day(string words) => DateRange.Read(words).Expect();

    private static Task<Outcome<Clutch>> LayAsync(TestBook book, ClutchEntry entry) =>
        new RecordLaying(book.Book, TestBook.Check).RunAsync(entry, TestBook.Who, TestBook.Cancellation);

    private static Task<Outcome<Clutch>> EditAsync(TestBook book, Clutch clutch, ClutchEntry entry) =>
        new EditClutch(book.Book, TestBook.Check).RunAsync(clutch.ClutchId, clutch.Version, entry, TestBook.Who, TestBook.Cancellation);

    private static Task<Outcome<Clutch>> BinAsync(TestBook book, Clutch clutch) =>
        new BinClutch(book.Book).RunAsync(clutch.ClutchId, TestBook.Who, TestBook.Cancellation);

    private static async Task<ClutchLine> OfParentAsync(TestBook book, Animal parent) =>
        Assert.Single((await new ListClutches(book.Book).OfParentAsync(parent.AnimalId, TestBook.Cancellation)).Expect());

    private static Task<Outcome<Happening>> WriteAsync(TestBook book, Animal dam, Clutch? clutch, HappeningKind kind, double? amount) =>
        new RecordHappening(book.Book).RunAsync(
            dam.AnimalId, new() { Kind = kind, When = Day("2024-05-30"), Amount = amount, ClutchId = clutch?.ClutchId }, TestBook.Who, TestBook.Cancellation);
}
