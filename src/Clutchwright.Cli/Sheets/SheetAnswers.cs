using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Sheets;
using Clutchwright.Desk.Words;
using Clutchwright.Sheets.Pages;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Cli.Sheets;

/// <summary>Says what a sheet holds, and writes it.</summary>
internal static class SheetAnswers
{
    public static async Task<int> SendAsync(CommonOptions common, Terminal terminal, ParseResult asked, Answer<PrintedSheet> answer, string? file, CancellationToken cancel)
    {
        if (answer.Value is not { } sheet)
        {
            return terminal.AskedWrongly(answer.Problems, _ => null);
        }

        await SheetCommand.WriteAsync(file, sheet.Pdf, cancel);
        if (common.IsJson(asked))
        {
            terminal.Send(new()
            {
                ["file"] = file,
                ["bytes"] = sheet.Pdf.Length,
                ["pages"] = sheet.Pages.Count,
                ["title"] = sheet.Title,
                ["sheets"] = JsonShapes.Array(sheet.Documents, d => new JsonObject
                {
                    ["title"] = d.Title,
                    ["subtitle"] = d.Subtitle,
                    ["lines"] = JsonShapes.Array(d.Blocks.SelectMany(Lines)),
                    ["code"] = d.Code,
                }),
                ["notes"] = JsonShapes.Array(sheet.Notes),
            });
            return ExitCode.Answered;
        }

        var page = new Page(terminal);
        page.Line(Page.Plain($"{(sheet.Pages.Count == 1 ? "1 page" : $"{sheet.Pages.Count:N0} pages")}"
            + (file is null ? ". Not written: name a file with --to." : $": {file}, {sheet.Pdf.Length:N0} bytes.")));
        foreach (var document in sheet.Documents)
        {
            page.Heading(document.Title);
            page.Line(Page.Plain(document.Subtitle));
            foreach (var block in document.Blocks)
            {
                Show(page, block);
            }
        }

        page.Points(sheet.Notes);
        page.Send();
        return ExitCode.Answered;
    }

    private static void Show(Page page, SheetBlock block)
    {
        switch (block)
        {
            case SheetBlock.Heading heading:
                page.Heading(heading.Text);
                break;
            case SheetBlock.Facts facts:
                page.Table(["", ""], [.. facts.Lines.Select(f => new[] { Page.Plain(f.Name), f.Runs is null ? "____" : Marked(f.Runs) })]);
                break;
            case SheetBlock.Table table:
                page.Table([.. table.Columns.Select(c => c.Head)], [.. table.Rows.Select(r => r.Select(Marked).ToArray())]);
                break;
            case SheetBlock.Paragraph paragraph:
                page.Line(Marked(paragraph.Runs));
                break;
            default:
                page.Points(Lines(block));
                break;
        }
    }

    private static string Marked(IReadOnlyList<TextRun> runs) => string.Concat(runs.Select(r => r.Style switch
    {
        TextStyle.Bold => Page.Seen(r.Text),
        TextStyle.Italic => Page.Carried(r.Text),
        _ => Page.Plain(r.Text),
    }));

    private static IEnumerable<string> Lines(SheetBlock block) => block switch
    {
        SheetBlock.Heading heading => [heading.Text],
        SheetBlock.Paragraph paragraph => [Text(paragraph.Runs)],
        SheetBlock.Facts facts => facts.Lines.Select(f => $"{f.Name}: {(f.Runs is null ? "____" : Text(f.Runs))}"),
        SheetBlock.Table table => table.Rows.Select(r => string.Join(" | ", r.Select(Text))),
        SheetBlock.Points points => points.Items.Select(Text),
        SheetBlock.Note note => [$"{note.Title} {Text(note.Runs)}"],
        SheetBlock.Signatures signatures => signatures.Names.Select(n => $"{n}: ____"),
        SheetBlock.Eggs eggs => [$"{eggs.Filled} of {eggs.Count} eggs filled: {Text(eggs.Words)}"],
        SheetBlock.Photo photo => [$"(Photo) {photo.Picture.Words}"],
        SheetBlock.Drawing drawing => [$"(Drawing) {drawing.Picture.Words}"],
        _ => [],
    };

    private static string Text(IReadOnlyList<TextRun> runs) => string.Concat(runs.Select(r => r.Text));
}
