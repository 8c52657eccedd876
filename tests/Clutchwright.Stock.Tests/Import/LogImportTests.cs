using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Import;

public sealed class LogImportTests
{
    private const string Good =
        """
        snake,day,event,weight,prey,with,notes
        dora,2023-03-01,Ate,,small rat,,
        Dora,2023-03-01,,1450 g,,,
        Dora,about 3 March 2023,lock,,,Sam,evening
        Dora,2023-04-01,refused,"1430,5",rat,,in shed
        Dora,2023-05-01,Full Shed,,,,
        Sam,2023-06-01,sold,,,,to a school
        Dora,2023-03-01,fed,,small rat,,

        """;

    [Fact]
    public async Task RunAsync_GoodFile_IsWrittenAndUndoneAsAWholeAndReadTwiceWithoutHarm()
    {
        using var book = await NewAsync();
        var before = await book.StateAsync();

        var preview = (await new ImportLog(book.Book).PreviewAsync(LogFile.Read(Good), TestBook.Cancellation)).Expect();
        Assert.Empty(preview.Problems);
        var done = (await RunAsync(book, Good)).Expect();

        Assert.Equal((8, 0), (done.Added, done.Skipped));
        Assert.Equal("Imported 8 entries of the log from l.csv", (await book.DeedsAsync())[0].Words);
        Assert.Equal(
            [
                "Dora 2023-03-01 Fed  small rat",
                "Dora 2023-03-01 Fed  small rat",
                "Dora 2023-03-01 Weighed 1450 ",
                "Dora 2023-04-01 FoodRefused  rat; in shed",
                "Dora 2023-04-01 Weighed 1430.5 ",
                "Dora 2023-05-01 Shed  ",
                "Dora about 3 March 2023 Locked  evening with Sam",
                "Sam 2023-06-01 Sold  to a school",
            ],
            await LinesAsync(book));
        Assert.Equal((1430.5, AnimalStatus.Sold), ((await book.FindAsync("Dora")).Animal.MassGrams, (await book.FindAsync("Sam")).Animal.Status));

        Assert.Equal(new ImportProblem.NothingNew(7), (await RunAsync(book, Good)).Problem);
        var exported = await ExportAsync(book);
        Assert.Equal(new ImportProblem.NothingNew(8), (await RunAsync(book, exported)).Problem);

        (await book.TryUndoAsync(done.Deed)).Expect();
        Assert.Equal(before, await book.StateAsync());
        Assert.Equal(8, (await RunAsync(book, exported)).Expect().Added);
        Assert.Equal(exported, await ExportAsync(book));
    }

    [Fact]
    public async Task RunAsync_SameRowOnceMore_IsNewOnce()
    {
        using var book = await NewAsync();
        await RunAsync(book, "animal,date,kind\nDora,2023,shed\n");

        var done = (await RunAsync(book, "animal,date,kind\nDora,2023,shed\nDora,2023,shed\n")).Expect();

        Assert.Equal((1, 1), (done.Added, done.Skipped));
    }

    [Fact]
    public async Task RunAsync_OldWeighing_LeavesTheMassOfALaterOne()
    {
        using var book = await NewAsync();
        await RunAsync(book, "animal,date,mass\nDora,2024,1600\n");

        await RunAsync(book, "animal,date,mass\nDora,2023,1500\n");

        Assert.Equal(1600.0, (await book.FindAsync("Dora")).Animal.MassGrams);
    }

    /// <summary>Each problem as row, column, kind.</summary>
    public static TheoryData<string, string> Faults => new()
    {
        { "animal,kind\nDora,shed\n", "1::NoColumn" },
        { "animal,date,kind\n,2023,shed\nDora,,shed\nDora,2023,\n", "2:animal:CellMissing 3:date:CellMissing 4:kind:CellMissing" },
        { "animal,date,kind\nDorra,2023,shed\n", "2:animal:NoSuchTag" },
        { "animal,date,kind\nDora,03/04/2023,shed\n", "2:date:DateUnreadable" },
        { "animal,date,kind\nDora,2199,shed\nDora,2016,shed\n", "2:date:InTheFuture 3:date:BeforeItHatched" },
        { "animal,date,kind\nDora,2023,danced\n", "2:kind:KindUnknown" },
        { "animal,date,kind\nDora,2023,eggs laid\n", "2:kind:WrittenAsClutch" },
        { "animal,date,kind,amount\nDora,2023,shed,3\nDora,2023,weighed,\n", "2:amount:AmountNotFitting 3:amount:AmountNotFitting" },
        { "animal,date,mass_g\nDora,2023,0\nDora,2023,\"1,450\"\n", "2:mass_g:AmountNotFitting 3:mass_g:MassUnreadable" },
        { "animal,date,kind,mate\nDora,2023,locked,\nDora,2023,locked,Eve\nDora,2023,shed,Sam\nDora,2023,locked,Som\n", "2:mate:MateNotFitting 3:mate:NoPair 4:mate:MateNotFitting 5:mate:NoSuchTag" },
        { "animal,date,kind,clutch\nDora,2023,candled,K9\n", "2:clutch:NotFound" },
        { "animal,date,kind,food\nDora,2023,shed,rat\n", "2:food:FoodNotFitting" },
        { "animal,date,kind\nDora,2023,noted\nSam,2023,ovulated\n", "2::TextNotFitting 3:kind:NotOfAMale" },
    };

    [Theory]
    [MemberData(nameof(Faults), DisableDiscoveryEnumeration = true)]
    public async Task PreviewAsync_Fault_IsNamedWithRowAndColumnAndNothingIsWritten(string text, string faults)
    {
        using var book = await NewAsync();
        var before = await book.StateAsync();

        var preview = (await new ImportLog(book.Book).PreviewAsync(LogFile.Read(text), TestBook.Cancellation)).Expect();
        var refused = await RunAsync(book, text);

        Assert.Equal(faults, string.Join(' ', preview.Problems.Select(p => $"{p.Row}:{p.Column}:{p.Problem.GetType().Name}")));
        Assert.Equal(preview.Problems.Count, Assert.IsType<ImportProblem.Refused>(refused.Problem).Problems.Count);
        Assert.Equal(before, await book.StateAsync());
    }

    [Theory]
    [InlineData("PLS", HappeningKind.PreLayShed)]
    [InlineData("didn't eat", HappeningKind.FoodRefused)]
    [InlineData(" Pre-lay  shed ", HappeningKind.PreLayShed)]
    [InlineData("FolliclesMeasured", HappeningKind.FolliclesMeasured)]
    [InlineData("came into the room", HappeningKind.Acquired)]
    [InlineData("1", null)]
    [InlineData("", null)]
    public void KindText_Read_TakesOurWordsAndTheTrades(string text, HappeningKind? kind) => Assert.Equal(kind, KindText.Read(text));

    [Fact]
    public void KindText_Read_GivesEachKindByItsOwnWords() =>
        Assert.All(Enum.GetValues<HappeningKind>(), kind => Assert.Equal((kind, kind), (KindText.Read(kind.ToString()), KindText.Read(HappeningRules.Words(kind)))));

    private static async Task<TestBook> NewAsync()
    {
        var book = await TestBook.NewAsync();
        await book.AddAsync("Dora", Sex.Female, hatched: "2018");
        await book.AddAsync("Eve", Sex.Female);
        await book.AddAsync("Sam", Sex.Male);
        return book;
    }

    private static Task<Outcome<ImportResult>> RunAsync(TestBook book, string text) =>
        new ImportLog(book.Book).RunAsync(LogFile.Read(text), "l.csv", TestBook.Who, TestBook.Cancellation);

    private static async Task<IEnumerable<string>> LinesAsync(TestBook book) =>
        (await new ListHappenings(book.Book).RunAsync(null, [], 100, TestBook.Cancellation)).Expect()
            .Select(l => FormattableString.Invariant($"{l.Tag} {l.When.Words} {l.Kind} {l.Amount} {l.Text}{(l.Mate is null ? "" : $" with {l.Mate}")}"))
            .Order(StringComparer.Ordinal);

    private static async Task<string> ExportAsync(TestBook book)
    {
        await using var writer = new StringWriter();
        (await new ExportLog(book.Book).RunAsync(writer, TestBook.Cancellation)).Expect();
        return writer.ToString();
    }
}
