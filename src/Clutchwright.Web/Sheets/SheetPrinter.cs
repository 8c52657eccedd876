using Clutchwright.Desk.Sheets;
using Clutchwright.Desk.Words;
using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Pages;

namespace Clutchwright.Web.Sheets;

/// <summary>What a form asks for, printed.</summary>
/// <param name="Pdf">The file.</param>
/// <param name="Name">A name for the file, without its ending.</param>
/// <param name="Pages">The pages.</param>
/// <param name="Documents">The sheets of text; empty: labels.</param>
/// <param name="Notes">What to look at, in sentences.</param>
public sealed record SheetPrint(
    byte[] Pdf, string Name, IReadOnlyList<PlacedPage> Pages, IReadOnlyList<SheetDocument> Documents, IReadOnlyList<string> Notes);

/// <summary>Asks the desk for what a form says.</summary>
public sealed class SheetPrinter(PrintLabels labels, PrintSheets sheets, PrintClutchCard clutches, PrintSeason seasons)
{
    public async Task<Answer<SheetPrint>> RunAsync(SheetsForm form, CancellationToken cancel)
    {
        if (form.Kind == "label")
        {
            var answer = await labels.RunAsync(form.Labels(), cancel);
            return answer.Value is { } printed
                ? new SheetPrint(printed.Pdf, form.Tags.Count == 1 ? $"label-{form.Tags[0]}" : "labels", printed.Pages, [], printed.Notes)
                : answer.Problems.ToArray();
        }

        var problems = new List<AskedWrongly>();
        var (question, clutch, year) = (form.Sheets(problems), form.Clutch(problems), form.Year(problems));
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var sheet = form.Kind switch
        {
            "clutch" => await clutches.RunAsync(clutch, cancel),
            "season" => await seasons.RunAsync(year, form.Page, cancel),
            _ => await sheets.RunAsync(question, cancel),
        };
        return sheet.Value is { } made ? new SheetPrint(made.Pdf, $"{form.Kind}-{made.Title}", made.Pages, made.Documents, made.Notes) : sheet.Problems.ToArray();
    }
}
