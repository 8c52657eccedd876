using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Import;

public sealed class ImportTests
{
    [Fact]
    public async Task ReadAnimalFile_GoodFile_ShowsMappingAndRowsAndWritesNothing()
    {
        using var book = await TestBook.NewAsync();

        var preview = (await book.PreviewAsync("id,rack,sire\nH,3,S\nS,4,\n")).Expect();

        Assert.True(preview.CanImport);
        Assert.Equal(
            [new ColumnMapping<AnimalField>(0, "id", AnimalField.Tag, false), new(1, "rack", AnimalField.KeptAsNote, false), new(2, "sire", AnimalField.Sire, false)],
            preview.File.Columns);
        Assert.Equal([("H", RowFate.New), ("S", RowFate.New)], preview.Rows.Select(r => (r.Row.Tag, r.Fate)));
        Assert.Empty(await book.AllAsync());
        Assert.Empty(await book.DeedsAsync());
    }

    [Fact]
    public async Task ReadAnimalFile_RowForSeveralYoung_IsRefusedByTheStock()
    {
        using var book = await TestBook.NewAsync();

        var several = (await book.PreviewAsync("id,count\nH,4\n")).Expect();
        var one = (await book.PreviewAsync("id,count\nH,1\n")).Expect();

        Assert.Equal(new ImportProblem.CountInStock(4), Assert.Single(several.Problems).Problem);
        Assert.True(one.CanImport);
    }

    [Fact]
    public async Task ReadAsync_Utf16FileWithBlankLinesAndEmptyCells_SamplesTheFirstFilledCellOfEachColumn()
    {
        var bytes = Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes("\nid;rack;shed\nH;;\n\nS; 4 ;\n")).ToArray();

        var file = await AnimalFile.ReadAsync(new MemoryStream(bytes), null, CancellationToken.None);

        Assert.Equal(["H", "4", null], file.Samples);
    }

    [Fact]
    public async Task ImportAnimals_ParentsInAnyOrderAndFromStock_AreJoined()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("Dam", Sex.Female);

        var result = (await book.TryImportAsync("id,sire,dam\nG,H,\nH,s1|S2,dam\nS1,,\nS2,,\n")).Expect();

        Assert.Equal(new ImportResult(new DeedId(2), 4, 0), result);
        var grandchild = await book.FindAsync("G");
        var child = await book.FindAsync("H");
        Assert.Equal("H", grandchild.Sire?.Tag);
        Assert.Equal(("Dam", null), (child.Dam?.Tag, child.Sire?.Tag));
        Assert.Equal(["S1", "S2"], child.PossibleSires.Select(p => p.Tag));
    }

    [Fact]
    public async Task ImportAnimals_Undone_LeavesTheBookAsItWas()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("Dam", Sex.Female);
        var before = await book.StateAsync();
        var text = new StringBuilder("id,sire,dam,seen,told\nS,,,normal,\nT,,,,\n");
        for (var i = 0; i < 700; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"H{i},{(i % 2 == 0 ? "S" : "S|T")},Dam,Pastel,66% het Clown\n");
        }

        var result = (await book.TryImportAsync(text.ToString())).Expect();
        var after = await book.StateAsync();
        Assert.Equal(702, result.Added);
        Assert.Equal(702 + 1401, (await book.DeedsAsync())[0].Changes);

        var undone = (await book.TryUndoAsync(result.Deed)).Expect();
        Assert.Equal(before, await book.StateAsync());

        (await book.TryUndoAsync(undone.DeedId)).Expect();
        Assert.Equal(after, await book.StateAsync());
    }

    [Fact]
    public async Task ImportAnimals_OneBadRow_WritesNothing()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("X");
        var before = await book.StateAsync();

        var outcome = await book.TryImportAsync("id,told\nA,het Clown\nB,?\nC,\n");

        var problem = Assert.Single(Assert.IsType<ImportProblem.Refused>(outcome.Problem).Problems);
        Assert.Equal((3, 3, "told", "?"), (problem.Row, problem.Line, problem.Column, problem.Found));
        Assert.Equal("row 3, column told: \"?\": no such gene in told Pastel", ProblemWords.Say(problem));
        Assert.Equal(before, await book.StateAsync());
        Assert.Single(await book.DeedsAsync());
    }

    /// <summary>Faults against the stock, where "Old" is a male hatched in 2020 and "Zoe" a female: the file, and each problem
    /// as row, column, kind.</summary>
    public static TheoryData<string, string> Faults => new()
    {
        { "id,sire\nA,Nobody\n", "2:sire:ParentUnknown" },
        { "id,dam\nA,Nobody\nB,nothing\n", "2:dam:ParentUnknown 3:dam:ParentUnknown" },
        { "id,sire\nA,Old|Nobody\n", "2:sire:ParentUnknown" },
        { "id,sire\nA,Zoe\n", "2:sire:ParentOfWrongSex" },
        { "id,dam\nA,Old\n", "2:dam:ParentOfWrongSex" },
        { "id,dam,sex\nA,B,\nB,,m\n", "2:dam:ParentOfWrongSex 3:sex:SexContradictsOffspring" },
        { "id,sire,dam\nA,U,\nB,,U\nU,,\n", "2:sire:BothSireAndDam 3:dam:BothSireAndDam" },
        { "id,sire,hatched\nA,Old,2019\n", "2:sire:ParentNotOlder" },
        { "id,sire,hatched\nA,B,2019\nB,,2021\n", "2:sire:ParentNotOlder 3:hatched:ParentNotOlder" },
        { "id,sire,dam\nA,B,\nB,,C\nC,A,\n", "2:sire:OwnAncestor 3:dam:OwnAncestor 4:sire:OwnAncestor" },
        { "id,sire\nA,A\n", "2:sire:OwnAncestor" },
        { "id,sex\nold,f\n", "2:id:AlreadyInStock" },
        { "id,seen,told,ruled_out\nA,?,?,?\n", "2:seen:TextUnreadable 2:told:TextUnreadable 2:ruled_out:TextUnreadable" },
        { "id,mass_g\nA,0\nB,1e9\n", "2:mass_g:MassOutOfRange 3:mass_g:MassOutOfRange" },
        { "id;statements\nA;\"[{\"\"kind\"\":\"\"told\"\",\"\"text\"\":\"\"x\"\",\"\"sure\"\":2}]\"\n", "2:statements:ConfidenceOutOfRange" },
        { "id;statements\nA;\"[{\"\"kind\"\":\"\"dna_test\"\",\"\"text\"\":\"\"x\"\"}]\"\n", "2:statements:TestNotFitting" },

        // The row of a parent has a fault of its own: its offspring are not blamed for it.
        { "id,sire,sex\nA,B,\nB,,x\n", "3:sex:SexUnknown" },
        { "id,name\nA," + "\u0001" + "\n", "2:name:TextInvalid" },
    };

    [Theory]
    [MemberData(nameof(Faults), DisableDiscoveryEnumeration = true)]
    public async Task ReadAnimalFile_Fault_IsNamedWithRowAndColumn(string text, string faults)
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("Old", Sex.Male, hatched: "2020");
        await book.AddAsync("Zoe", Sex.Female);

        var preview = (await book.PreviewAsync(text)).Expect();

        Assert.False(preview.CanImport);
        Assert.Equal(faults, string.Join(' ', preview.Problems.Select(p => $"{p.Row}:{p.Column}:{p.Problem.GetType().Name}")));
        Assert.All(preview.Rows, r => Assert.Equal(preview.Problems.Any(p => p.Row == r.Row.Row), r.Fate == RowFate.Refused));
        Assert.Equal(preview.Problems.Select(p => p.Problem.GetType()), Assert.IsType<ImportProblem.Refused>((await book.TryImportAsync(text)).Problem).Problems.Select(p => p.Problem.GetType()));
        Assert.Equal(2, (await book.AllAsync()).Count);
    }

    [Fact]
    public async Task ReadAnimalFile_ParentMisspelt_NamesTheNearest()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("Bella");

        var preview = (await book.PreviewAsync("id,dam\nA,Bela\n")).Expect();

        Assert.Equal(
            "row 2, column dam: Bela is neither in the file nor in the stock. Did you mean Bella? Else add a row for it, or leave the cell empty.",
            ProblemWords.Say(Assert.Single(preview.Problems)));
    }

    [Fact]
    public async Task ImportAnimals_RowsAlreadyThereTheSame_AreSkippedAndSaidSo()
    {
        using var book = await TestBook.NewAsync();
        const string File = "id,sex,sire,hatched,seen,told\nS,m,,2019,normal,\nH,f,S,2021,Pastel,66% het Clown\n";
        await book.TryImportAsync(File);

        var preview = (await book.PreviewAsync(File + "New,,s,,,\n")).Expect();
        var result = (await book.TryImportAsync(File + "New,,s,,,\n")).Expect();

        Assert.Equal([RowFate.AlreadyThere, RowFate.AlreadyThere, RowFate.New], preview.Rows.Select(r => r.Fate));
        Assert.Equal((1, 2), (result.Added, result.Skipped));
        Assert.Equal("S", (await book.FindAsync("New")).Sire?.Tag);
        Assert.Equal(new ImportProblem.NothingNew(2), (await book.TryImportAsync(File)).Problem);
    }

    [Fact]
    public async Task ReadAnimalFile_RowAlreadyThereButDifferent_NamesTheColumns()
    {
        using var book = await TestBook.NewAsync();
        await book.TryImportAsync("id,sex,told\nA,m,het Clown\n");

        var preview = (await book.PreviewAsync("id,sex,told\nA,f,het Pied\n")).Expect();

        var problem = Assert.IsType<ImportProblem.AlreadyInStock>(Assert.Single(preview.Problems).Problem);
        Assert.Equal(["sex", "told"], problem.Differences);
    }

    [Fact]
    public async Task ImportAnimals_StockChangedSincePreview_IsCheckedAgain()
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("S", Sex.Male);
        var preview = (await book.PreviewAsync("id,sire\nH,S\n")).Expect();
        Assert.True(preview.CanImport);
        await book.TryBinAsync(sire);

        var outcome = await new ImportAnimals(book.Book, TestBook.Check).RunAsync(preview.File, "f", TestBook.Who, TestBook.Cancellation);

        Assert.IsType<ImportProblem.ParentUnknown>(Assert.Single(Assert.IsType<ImportProblem.Refused>(outcome.Problem).Problems).Problem);
    }

    [Fact]
    public async Task ImportAnimals_HeaderOnly_IsNothingNew()
    {
        using var book = await TestBook.NewAsync();

        Assert.Equal(new ImportProblem.NothingNew(0), (await book.TryImportAsync("id,sex\n")).Problem);
    }
}
