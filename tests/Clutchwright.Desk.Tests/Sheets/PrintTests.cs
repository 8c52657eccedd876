using Clutchwright.Desk.Happenings;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Sheets;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Papers;
using Clutchwright.Sheets.Texts;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Photos;

namespace Clutchwright.Desk.Tests.Sheets;

public sealed class PrintTests
{
    [Theory]
    [InlineData("62x36", 62, 36, 3, 7)]
    [InlineData("2.5x1.5in", 63.5, 38.1, 2, 7)]
    [InlineData("50,5 x 30 mm", 50.5, 30, 3, 8)]
    [InlineData("194x281", 194, 281, 1, 1)]
    public async Task Labels_SizeAsWritten_FillThePage(string size, double width, double height, int columns, int rows)
    {
        using var desk = await TestDesk.WithDemoAsync();

        var grid = (await desk.Get<PrintLabels>().RunAsync(new(["T-308"]) { Layout = new() { Size = size } }, TestDesk.Cancel)).Value!.Grid;

        Assert.Equal((PaperSize.A4, width, height, columns, rows), (grid.Paper, Math.Round(grid.WidthMm, 6), Math.Round(grid.HeightMm, 6), grid.Columns, grid.Rows));
        Assert.True(grid.Fits);
    }

    [Theory]
    [InlineData("page", "a5", null, null, null, null, "\"a5\" is no page. One of: a4, letter, roll.")]
    [InlineData("size", "a4", "9x20", null, null, null, "\"9x20\" cannot be taken. Write it as 62x36 (millimetres) or 2.5x1.5in; each from 10 to 400 mm.")]
    [InlineData("size", "a4", "wide", null, null, null, "\"wide\" cannot be taken.")]
    [InlineData("size", "a4", "62x36", "4x7", null, null, "4 x 7 labels of 62 x 36 mm")]
    [InlineData("start", "a4", "62x36", null, "22", null, "\"22\" is no place on this sheet. Write a whole number from 1 to 21.")]
    [InlineData("page", "roll", "62x36", "1x1", null, null, "On a roll each label is a page of its own")]
    [InlineData("link", "a4", null, null, null, "my server", "\"my server\" is no address of a server.")]
    public async Task Labels_AskedWrongly_SayWhatAndWhere(string where, string page, string? size, string? grid, string? start, string? link, string says)
    {
        using var desk = await TestDesk.WithDemoAsync();

        var answer = await desk.Get<PrintLabels>().RunAsync(new(["T-308"]) { Layout = new() { Page = page, Size = size, Grid = grid, Start = start }, Link = link }, TestDesk.Cancel);

        var problem = Assert.Single(answer.Problems);
        Assert.Equal(where, problem.Where);
        Assert.StartsWith(says, problem.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(SheetKind.Record)]
    [InlineData(SheetKind.Sale)]
    public async Task Sheet_AnimalWithPhotos_ShowsTheOneTakenLast(SheetKind kind)
    {
        using var desk = await TestDesk.WithDemoAsync();
        var id = (await desk.StateAsync()).Find("T-201")!.Animal.AnimalId;
        foreach (var (year, pixel) in new[] { (2023, (byte)1), (2025, (byte)2), (2024, (byte)3) })
        {
            var entry = new PhotoEntry(Jpeg(pixel), Jpeg(pixel), 8, 6, DateRange.On(new DateOnly(year, 3, 1)), "On the scale");
            Assert.True((await new AddPhoto(desk.Get<OpenBook>().Book).RunAsync(id, entry, TestDesk.Who, TestDesk.Cancel)).IsDone);
        }

        var sheet = (await desk.Get<PrintSheets>().RunAsync(new(kind, ["T-201", "T-202"]), TestDesk.Cancel)).Value!;

        var photo = Assert.Single(sheet.Documents[0].Blocks.OfType<SheetBlock.Photo>()).Picture;
        Assert.Equal("Photo of T-201 Teasel, taken 2025-03-01: On the scale", photo.Words);
        Assert.True(photo.Jpeg.Span.SequenceEqual(Jpeg(2)));
        Assert.Empty(sheet.Documents[1].Blocks.OfType<SheetBlock.Photo>());
    }

    // Such a file can come with a whole book, whose photos are kept to the byte.
    [Fact]
    public async Task Sheet_PhotoWithACommentBeforeItsFirstSegment_IsPackedAnewAndPrinted()
    {
        using var desk = await TestDesk.WithDemoAsync();
        var id = (await desk.StateAsync()).Find("T-201")!.Animal.AnimalId;
        var jpeg = Jpeg(1);
        byte[] odd = [.. jpeg[..2], .. jpeg[20..25], .. jpeg[2..20], .. jpeg[25..]];
        Assert.True((await new AddPhoto(desk.Get<OpenBook>().Book).RunAsync(id, new(odd, odd, 8, 6, null, string.Empty), TestDesk.Who, TestDesk.Cancel)).IsDone);

        var sheet = (await desk.Get<PrintSheets>().RunAsync(new(SheetKind.Record, ["T-201"]), TestDesk.Cancel)).Value!;

        Assert.True(sheet.Pdf.AsSpan().StartsWith("%PDF"u8));
        var printed = Assert.Single(sheet.Documents[0].Blocks.OfType<SheetBlock.Photo>()).Picture.Jpeg;
        Assert.True(printed.Span[..4].SequenceEqual(jpeg.AsSpan(0, 4)));
        Assert.Equal(-1, printed.Span.IndexOf(jpeg.AsSpan(20, 5)));
    }

    // 8 x 6 grey pixels; a comment behind the first segment makes files differ.
    private static byte[] Jpeg(byte comment)
    {
        var file = Convert.FromBase64String("/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNywtQFdBRkxOUlNSMj5aYVpQYEpRUk//wAALCAAGAAgBAREA/8QAFAABAAAAAAAAAAAAAAAAAAAABf/EABkQAAEFAAAAAAAAAAAAAAAAAAADBBdRkf/aAAgBAQAAPwAuSX9Kaf/Z");
        return [.. file.AsSpan(0, 20), 0xFF, 0xFE, 0x00, 0x03, comment, .. file.AsSpan(20)];
    }

    [Fact]
    public async Task Labels_TagMisspelt_SaysTheNearest()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var problem = Assert.Single((await desk.Get<PrintLabels>().RunAsync(new(["T-3O8"]), TestDesk.Cancel)).Problems);

        Assert.Contains("T-308", problem.DidYouMean!);
    }

    [Fact]
    public async Task Labels_WithAndWithoutServer_CodeOpensTheAnimalOrHoldsTheWords()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var open = Assert.Single((await desk.Get<PrintLabels>().RunAsync(new(["T-301"]) { Link = "http://192.168.1.20:5417/" }, TestDesk.Cancel)).Value!.Labels);
        var words = Assert.Single((await desk.Get<PrintLabels>().RunAsync(new(["T-301"]) { Layout = new() { Size = "100x60" } }, TestDesk.Cancel)).Value!.Labels);

        Assert.Equal((CodeUse.Link, "http://192.168.1.20:5417/stock/animal/T-301"), (open.Code, open.CodeText));
        Assert.Equal(CodeUse.Text, words.Code);
        Assert.Equal("T-301 Marram; male, hatched 2023-07-08; Pastel Enchi, 50% het Clown (1 in 2, computed), 100% het Desert Ghost (by descent); T-205 Mullein × T-202 Campion; as of 2026-05-01", words.CodeText);
    }

    [Fact]
    public async Task Label_RecordsThatCannotAllBeTrue_AreToldBeforeItIsPrinted()
    {
        using var desk = await TestDesk.WithAsync("id,sex,sire,dam,seen\nS,m,,,Clown\nD,f,,,Clown\nA,f,S,D,normal\n");

        var notes = (await desk.Get<PrintLabels>().RunAsync(new(["A"]), TestDesk.Cancel)).Value!.Notes;

        Assert.StartsWith("Before you label A: ", notes[0], StringComparison.Ordinal);
        Assert.Contains("Records in doubt.", Text(await PrintAsync(desk, new(SheetKind.Sale, ["A"]))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Label_WeighedLately_TellsIt()
    {
        using var desk = await TestDesk.WithDemoAsync();
        await WriteAsync(desk, "T-301", "Weighed", "2026-02-01", "900");
        Assert.DoesNotContain("900 g", await LabelAsync(desk), StringComparison.Ordinal);

        await WriteAsync(desk, "T-301", "Weighed", "2026-04-30", "950");

        Assert.Contains("950 g, 2026-04-30", await LabelAsync(desk), StringComparison.Ordinal);

        static async Task<string> LabelAsync(TestDesk desk) => string.Join(' ', (await desk.Get<PrintLabels>().RunAsync(new(["T-301"]) { Layout = new() { Size = "100x60" } }, TestDesk.Cancel))
            .Value!.Pages[0].Parts.SelectMany(p => p.Marks).OfType<Clutchwright.Sheets.Drawings.Mark.Text>().Select(t => t.Words));
    }

    [Fact]
    public async Task Sale_OfASpider_HasTheRegisterFieldsItsWelfareAndItsMeals()
    {
        using var desk = await TestDesk.WithDemoAsync();
        await WriteAsync(desk, "T-112", "Fed", "2026-04-01", "60");
        await WriteAsync(desk, "T-112", "Health", "2026-03-01", null, "seen by a veterinarian");

        var sheet = await PrintAsync(desk, new(SheetKind.Sale, ["T-112"]) { Sale = new() { Supplier = "A. Keeper", Source = "c", Sold = "2026-05-01" } });

        var text = Text(sheet);
        Assert.All(
            [
                "Supplier's full name: A. Keeper", "Buyer's full name: ____", "Sex: male", "Date of birth or acquisition: hatched 2016", "Veterinary treatment: 2026-03-01: seen by a veterinarian",
                "CITES: Appendix II (in the European Union: Annex B)", "Source code: C: bred in captivity", "Date of sale: 2026-05-01", "Date of death: ____", "fed 60 g", "Welfare: any Spider.",
                "seen on the animal", "no legal document", "Ask a reptile veterinarian", "Supplier: signature, date",
            ],
            part => Assert.Contains(part, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Sale_SourceCodeUnknown_SaysWhichThereAre()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var answer = await desk.Get<PrintSheets>().RunAsync(new(SheetKind.Sale, ["T-112"]) { Sale = new() { Source = "Q" } }, TestDesk.Cancel);

        Assert.Equal("source", Assert.Single(answer.Problems).Where);
    }

    [Fact]
    public async Task Record_OfAnAnimal_HasAllThatIsRecordedWithReasons()
    {
        using var desk = await TestDesk.WithDemoAsync();
        await WriteAsync(desk, "T-213", "Weighed", "2026-04-20", "950");
        await WriteAsync(desk, "T-213", "Shed", "2023-01-02", null);

        var text = Text(await PrintAsync(desk, new(SheetKind.Record, ["T-213"])));

        Assert.All(
            ["Parents: T-106 Alder × T-102 Sorrel", "Seen by eye", "So the chance that it carries Clown is 1 in 2 (50%)", "2026-04-20: 950 g", "Log of the last year"],
            part => Assert.Contains(part, text, StringComparison.Ordinal));
        Assert.DoesNotContain("2023-01-02", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lineage_OfAnAnimal_IsDrawnAsLinesAndToldInWords()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var sheet = await PrintAsync(desk, new(SheetKind.Lineage, ["T-308"]) { Generations = 4 });

        var drawing = Assert.Single(sheet.Documents[0].Blocks.OfType<SheetBlock.Drawing>());
        Assert.Contains(drawing.Picture.Marks, m => m is Clutchwright.Sheets.Drawings.Mark.Text { Words: "T-101" });
        Assert.True(drawing.Picture.Marks.OfType<Clutchwright.Sheets.Drawings.Mark.Path>().Count() > 20);
        Assert.Contains("T-201 × T-210, who are kin", Text(sheet), StringComparison.Ordinal);
    }

    // 58 days of incubation on the average, 2.5 either way, 52 to 70 at most (the catalogue, common practice): 53 to 63 days.
    [Fact]
    public async Task Clutch_OfAPair_SaysWhenItShouldHatchAndWhatCan()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var answer = await desk.Get<PrintClutchCard>().RunAsync(new("T-201", "T-202") { Laid = "2026-04-01", Eggs = 6 }, TestDesk.Cancel);

        var text = Text(answer.Value!);
        Assert.Contains("Expected to hatch: 2026-05-24 to 2026-06-03 (53 to 63 days", text, StringComparison.Ordinal);
        Assert.Equal((1, 4), answer.Value!.Documents[0].Blocks.OfType<SheetBlock.Eggs>().Select(e => (e.Filled, e.Count)).First());
    }

    [Fact]
    public async Task Season_OfTheDemo_CountsClutchesPairingsAndWhatBecameOfTheYoung()
    {
        using var desk = await TestDesk.WithDemoAsync();
        Assert.Empty((await desk.Get<WriteHappening>().RunAsync(new("T-201", "Locked", "2024-12-03", null, "T-210", null), TestDesk.Who, TestDesk.Cancel)).Problems);
        await LaidAsync(desk, "C-9", "T-105", ["T-201"], "2025-05-05", 7);

        var text = Text((await desk.Get<PrintSeason>().RunAsync(2025, "letter", TestDesk.Cancel)).Value!);

        Assert.All(
            ["Pairings: 1", "Clutches: 5", "Good eggs counted: 17", "Hatched: 8", "C-9: T-201 Teasel × T-105 Tansy, laid 2025-05-05, 7 good eggs, 0 hatched", "T-201 Teasel | T-210 Betony | 0 | 1 | 2024-12-03 | 2024-12-03", "T-308 | 2025-07-03 | Enchi Clown | held back"],
            part => Assert.Contains(part, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Clutch_OfTheBookWithTwoPossibleSires_GivesTheOddsOfEach()
    {
        using var desk = await TestDesk.WithDemoAsync();
        await LaidAsync(desk, "C-9", "T-105", ["T-201", "T-204"], "2026-04-05", 5);

        var answer = await desk.Get<PrintClutchCard>().RunAsync(new(string.Empty, string.Empty) { Clutch = "c-9" }, TestDesk.Cancel);

        var text = Text(answer.Value!);
        Assert.Equal("Clutch C-9", answer.Value!.Title);
        Assert.All(
            ["Possible sire: T-201 Teasel", "Possible sire: T-204 Dock", "Dam: T-105 Tansy", "Laid: 2026-04-05", "Good eggs: 5", "What can hatch if T-201 Teasel is the sire", "What can hatch if T-204 Dock is the sire"],
            part => Assert.Contains(part, text, StringComparison.Ordinal));
        Assert.Equal("clutch", Assert.Single((await desk.Get<PrintClutchCard>().RunAsync(new(string.Empty, string.Empty) { Clutch = "C-8" }, TestDesk.Cancel)).Problems).Where);
    }

    [Fact]
    public async Task Clutchmates_OfAHatchling_AreListed()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var mates = (await desk.Get<PickAnimals>().RunAsync(new(null, null, "T-308"), TestDesk.Cancel)).Value!;

        Assert.Equal(["T-308", "T-309", "T-310"], mates.Animals.Select(a => a.Tag));
    }

    private static async Task WriteAsync(TestDesk desk, string tag, string kind, string when, string? amount, string? text = null) =>
        Assert.Empty((await desk.Get<WriteHappening>().RunAsync(new(tag, kind, when, amount, null, text), TestDesk.Who, TestDesk.Cancel)).Problems);

    private static async Task LaidAsync(TestDesk desk, string clutch, string dam, string[] sires, string when, int eggs)
    {
        var state = await desk.StateAsync();
        var done = await new RecordLaying(desk.Get<OpenBook>().Book, (_, _) => null).RunAsync(
            new() { Tag = clutch, DamId = state.Find(dam)!.Animal.AnimalId, Sires = [.. sires.Select(s => state.Find(s)!.Animal.AnimalId)], Laid = DateRange.Read(when).Value!, GoodEggs = eggs },
            TestDesk.Who,
            TestDesk.Cancel);
        Assert.True(done.IsDone);
    }

    private static async Task<PrintedSheet> PrintAsync(TestDesk desk, SheetQuestion question)
    {
        var answer = await desk.Get<PrintSheets>().RunAsync(question, TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }

    private static string Text(PrintedSheet sheet) => string.Join('\n', sheet.Documents.SelectMany(d => d.Blocks).SelectMany(Lines));

    private static IEnumerable<string> Lines(SheetBlock block) => block switch
    {
        SheetBlock.Heading heading => [heading.Text],
        SheetBlock.Paragraph paragraph => [Text(paragraph.Runs)],
        SheetBlock.Facts facts => facts.Lines.Select(f => $"{f.Name}: {(f.Runs is null ? "____" : Text(f.Runs))}"),
        SheetBlock.Table table => table.Rows.Select(r => string.Join(" | ", r.Select(Text))),
        SheetBlock.Points points => points.Items.Select(Text),
        SheetBlock.Note note => [$"{note.Title} {Text(note.Runs)}"],
        SheetBlock.Signatures signatures => signatures.Names,
        _ => [],
    };

    private static string Text(IReadOnlyList<TextRun> runs) => string.Concat(runs.Select(r => r.Text));
}
