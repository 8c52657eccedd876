using Clutchwright.Desk.Charts;
using Clutchwright.Desk.Words;
using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Papers;

namespace Clutchwright.Desk.Sheets;

/// <summary>How do the records, lineage charts or sale sheets of these animals look?</summary>
public sealed class PrintSheets
{
    /// <summary>The most animals of which sheets are printed at once.</summary>
    public const int Most = 200;

    // More pictures of full size would make a file that is slow to send and to print.
    private const int MostFullPhotos = 10;

    /// <summary>The most generations of a lineage chart.</summary>
    public const int MostGenerations = 8;

    private readonly SheetStock _stock;
    private readonly DrawChart _charts;

    internal PrintSheets(SheetStock stock, DrawChart charts) => (_stock, _charts) = (stock, charts);

    /// <summary>Writes the file, a new page for each animal, or says everything that was asked wrongly.</summary>
    public async Task<Answer<PrintedSheet>> RunAsync(SheetQuestion question, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var paper = LabelLayoutReader.Paper(question.Page, problems, withRoll: false) ?? PaperSize.A4;
        var state = await _stock.ReadAsync(cancel);
        var animals = SheetStock.Find(state, question.Tags, problems);
        if (animals.Count > Most)
        {
            problems.Add(new("animal", $"{animals.Count:N0} sheets are more than the {Most:N0} that can be printed at once."));
        }

        if (question.Generations is < 1 or > MostGenerations)
        {
            problems.Add(new("generations", $"{question.Generations} is out of range. Give a whole number from 1 to {MostGenerations}."));
        }

        SheetStock.Address(question.Link, "x", problems);
        var sale = question.Kind == SheetKind.Sale ? SaleSheet.Read(question.Sale, problems) : null;
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var (documents, pages) = (new List<SheetDocument>(), new List<PlacedPage>());
        var hasSmallPhotos = animals.Count > MostFullPhotos;
        foreach (var animal in animals)
        {
            var document = question.Kind switch
            {
                SheetKind.Record => await new RecordSheet(_stock, state, hasSmallPhotos).OfAsync(animal, cancel),
                SheetKind.Lineage => await LineageAsync(animal.Animal.Tag, question.Generations, cancel),
                _ => await new SaleSheet(_stock, state, sale!, hasSmallPhotos).OfAsync(animal, cancel),
            };
            documents.Add(document with { Code = SheetStock.Address(question.Link, animal.Animal.Tag, problems) });
            pages.AddRange(PageSetter.Set(documents[^1], Turned(documents[^1], paper)));
        }

        var title = documents.Count == 1 ? documents[0].Title : $"{documents.Count} sheets";
        return new PrintedSheet(PdfWriter.Write(title, "en", _stock.Now, pages), documents, pages) { Title = title };
    }

    // A drawing that is broader than high stands on a turned page.
    private static PaperSize Turned(SheetDocument document, PaperSize paper) =>
        document.Blocks.OfType<SheetBlock.Drawing>().Any(d => d.Picture.Width > d.Picture.Height * 1.1) ? paper.Turned() : paper;

    private async Task<SheetDocument> LineageAsync(string tag, int generations, CancellationToken cancel)
    {
        var answer = await _charts.RunAsync(new(tag) { Up = generations, Down = 0, Most = ChartQuestion.MostAnimals }, cancel);
        return LineageSheet.Of(answer.Value ?? throw new InvalidOperationException("An animal of the stock has a chart."), _stock.Today);
    }
}
