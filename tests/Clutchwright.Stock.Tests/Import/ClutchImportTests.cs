using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Import;

public sealed class ClutchImportTests
{
    private const string Good =
        """
        clutch,female,sires,lay date,good eggs,infertile,lost,mass (g),incubator,hatched,counted,young,rack
        K1,dora,Sam|Tom,2023-05-01,7,1,2,"540,5",warm,2023-06-28,3 Pied; 1.1 normal,H1,left
        K2,Dora,Sam,about May 2022,,,,,,,,,

        """;

    [Fact]
    public async Task RunAsync_GoodFile_IsWrittenAndUndoneAsAWholeAndReadTwiceWithoutHarm()
    {
        using var book = await NewAsync();
        var before = await book.StateAsync();

        var preview = (await Deed(book).PreviewAsync(ClutchFile.Read(Good), TestBook.Cancellation)).Expect();
        Assert.Empty(preview.Problems);
        Assert.Equal(before, await book.StateAsync());
        var done = (await Deed(book).RunAsync(ClutchFile.Read(Good), "c.csv", TestBook.Who, TestBook.Cancellation)).Expect();

        Assert.Equal((2, 0), (done.Added, done.Skipped));
        Assert.Equal("Imported 2 clutches from c.csv", (await book.DeedsAsync())[0].Words);
        var line = (await new ListClutches(book.Book).FindAsync(null, "k1", TestBook.Cancellation)).Expect();
        Assert.Equal(("K1", "Dora", "Warm", 2), (line.Clutch.Tag, line.Dam, line.Incubator, line.Lost));
        Assert.Equal(["Sam", "Tom"], line.Sires);
        Assert.Equal((7, 1, 540.5, "2023-05-01", "2023-06-28"), (line.Clutch.GoodEggs!.Value, line.Clutch.Slugs!.Value, line.Clutch.MassGrams!.Value, line.Clutch.Laid.Words, line.Clutch.Hatched!.Words));
        Assert.Equal([new CountedYoung("Pied", null, 3), new("normal", Sex.Male, 1), new("normal", Sex.Female, 1)], line.Clutch.Counted);
        Assert.Equal("rack: left", line.Clutch.Notes);
        Assert.Equal("H1", Assert.Single(line.Young).Tag);
        var young = await book.FindAsync("H1");
        Assert.Equal(("Dora", line.Clutch.ClutchId), (young.Dam?.Tag, young.Animal.ClutchId));
        Assert.Equal(["Sam", "Tom"], young.PossibleSires.Select(s => s.Tag));

        Assert.Equal(new ImportProblem.NothingNew(2), (await Deed(book).RunAsync(ClutchFile.Read(Good), "c.csv", TestBook.Who, TestBook.Cancellation)).Problem);
        var exported = await ExportAsync(book);
        Assert.Equal(new ImportProblem.NothingNew(2), (await Deed(book).RunAsync(ClutchFile.Read(exported), "c.csv", TestBook.Who, TestBook.Cancellation)).Problem);

        (await book.TryUndoAsync(done.Deed)).Expect();
        Assert.Equal(before, await book.StateAsync());
        Assert.Equal(2, (await Deed(book).RunAsync(ClutchFile.Read(exported), "c.csv", TestBook.Who, TestBook.Cancellation)).Expect().Added);
        Assert.Equal(exported, await ExportAsync(book));
    }

    [Fact]
    public async Task RunAsync_RowsWithoutId_AreNamedByTheSchemeAndKnownByDamAndDay()
    {
        using var book = await NewAsync();
        const string File = "dam,laid,eggs\nDora,2022-05-01,6\nDora,2023-05-01,7\n";

        Assert.Equal(2, (await Deed(book).RunAsync(ClutchFile.Read(File), "c.csv", TestBook.Who, TestBook.Cancellation)).Expect().Added);

        Assert.Equal(["C2022-1", "C2023-1"], (await new AllClutches(book.Book).RunAsync(TestBook.Cancellation)).Expect().Select(c => c.Tag).Order());
        Assert.Equal(new ImportProblem.NothingNew(2), (await Deed(book).RunAsync(ClutchFile.Read(File), "c.csv", TestBook.Who, TestBook.Cancellation)).Problem);
    }

    /// <summary>Each problem as row, column, kind.</summary>
    public static TheoryData<string, string> Faults => new()
    {
        { "dam,eggs\nDora,3\n", "1::NoColumn" },
        { "dam,laid\n,\n,2023\n", "3:dam:CellMissing" },
        { "dam,laid\nDora,\n", "2:laid:CellMissing" },
        { "dam,laid\nDorra,2023\n", "2:dam:NoSuchTag" },
        { "dam,laid\nSam,2023\n", "2:dam:DamIsMale" },
        { "dam,laid,sire\nDora,2023,Dora\n", "2:sire:SireIsDam 2:sire:SireIsFemale" },
        { "dam,laid\nDora,2017\n", "2:laid:ParentNotOlder" },
        { "dam,laid\nDora,2199\n", "2:laid:InTheFuture" },
        { "dam,laid,hatched\nDora,2023-05-01,2023-04-01\n", "2:hatched:HatchedBeforeLaid" },
        { "dam,laid,eggs\nDora,2023,some\nDora,2022,201\n", "2:eggs:EggsUnreadable 3:eggs:EggsOutOfRange" },
        { "dam,laid,mass_g\nDora,2023,\"1,450\"\n", "2:mass_g:MassUnreadable" },
        { "dam,laid,incubator\nDora,2023,cold\n", "2:incubator:NotFound" },
        { "dam,laid,counted\nDora,2023,5\nDora,2022,3 ?\n", "2:counted:CountedUnreadable 3:counted:SeenUnreadable" },
        { "id,dam,laid\nA,Dora,2023\na,Dora,2022\n", "3:id:IdTwice" },
        { "dam,laid\nDora,2023\nDora,2023\n", "3:laid:RowTwice" },
        { "dam,laid,young\nDora,2023,H1\nDora,2022,H1\n", "3:young:YoungOfOtherClutch" },
        { "dam,laid,young\nDora,2023,G\n", "2:young:YoungOfOtherParents" },
        { "dam,laid,young\nDora,2024,H1\n", "2:young:HatchedBeforeLaid" },
        { "dam,laid,sire,young\nZoe,2020,Sam,M\n", "2:young:OwnAncestor" },
    };

    [Theory]
    [MemberData(nameof(Faults), DisableDiscoveryEnumeration = true)]
    public async Task PreviewAsync_Fault_IsNamedWithRowAndColumnAndNothingIsWritten(string text, string faults)
    {
        using var book = await NewAsync();
        var before = await book.StateAsync();

        var preview = (await Deed(book).PreviewAsync(ClutchFile.Read(text), TestBook.Cancellation)).Expect();
        var refused = await Deed(book).RunAsync(ClutchFile.Read(text), "c.csv", TestBook.Who, TestBook.Cancellation);

        Assert.Equal(faults, string.Join(' ', preview.Problems.Select(p => $"{p.Row}:{p.Column}:{p.Problem.GetType().Name}")));
        Assert.Equal(preview.Problems.Count, Assert.IsType<ImportProblem.Refused>(refused.Problem).Problems.Count);
        Assert.Equal(before, await book.StateAsync());
    }

    [Fact]
    public async Task PreviewAsync_ClutchThereOtherwise_NamesTheColumns()
    {
        using var book = await NewAsync();
        await Deed(book).RunAsync(ClutchFile.Read("id,dam,laid,eggs\nK1,Dora,2023,7\n"), "c.csv", TestBook.Who, TestBook.Cancellation);

        var preview = (await Deed(book).PreviewAsync(ClutchFile.Read("id,dam,laid,eggs,sire\nK1,Dora,2023,8,Sam\n"), TestBook.Cancellation)).Expect();

        Assert.Equal("row 2, column id: Clutch K1 is in the book already, with other sire, eggs. Change it there, or mend the row.", ProblemWords.Say(Assert.Single(preview.Problems)));
    }

    [Fact]
    public async Task RunAsync_Eggs_LostStandInTheLogOfTheDam()
    {
        using var book = await NewAsync();
        await Deed(book).RunAsync(ClutchFile.Read(Good), "c.csv", TestBook.Who, TestBook.Cancellation);

        var log = (await new ListHappenings(book.Book).RunAsync(null, [HappeningKind.EggsLost], 10, TestBook.Cancellation)).Expect();

        Assert.Equal(("Dora", "K1", 2.0, "2023-05-01 to 2023-06-28"), (Assert.Single(log).Tag, log[0].Clutch, log[0].Amount!.Value, log[0].When.Words));
    }

    private static async Task<TestBook> NewAsync()
    {
        var book = await TestBook.NewAsync();
        var dora = await book.AddAsync("Dora", Sex.Female, hatched: "2018");
        await book.AddAsync("Sam", Sex.Male, hatched: "2018");
        await book.AddAsync("Tom", Sex.Male);
        await book.AddAsync("Eve", Sex.Female);
        await book.AddAsync("Zoe", Sex.Female, dam: await book.AddAsync("M", Sex.Female));
        await book.AddAsync("H1", hatched: "2023-06-29", dam: dora);
        await book.AddAsync("G", dam: (await book.FindAsync("Eve")).Animal);
        (await new AddIncubator(book.Book).RunAsync(new() { Name = "Warm" }, TestBook.Who, TestBook.Cancellation)).Expect();
        return book;
    }

    private static ImportClutches Deed(TestBook book) => new(book.Book, TestBook.Check, (laid, _, _, isTaken) =>
        Enumerable.Range(1, 99).Select(n => $"C{laid.Year}-{n}").First(tag => !isTaken(tag)));

    private static async Task<string> ExportAsync(TestBook book)
    {
        await using var writer = new StringWriter();
        (await new ExportClutches(book.Book).RunAsync(writer, TestBook.Cancellation)).Expect();
        return writer.ToString();
    }
}
