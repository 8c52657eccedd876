using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Sheets;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Sheets;

/// <summary><c>sheet label</c>: tub labels.</summary>
internal static class LabelCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var tags = SheetCommand.Tags();
        var to = SheetCommand.To();
        var size = Text("--size", "WxH", "The size of a label in millimetres, or in inches as 2.5x1.5in. Default: 62x36.");
        var page = SheetCommand.Page("a4, letter, or roll for a printer with one label a page");
        var margins = Text("--margins", "LxT", "The room left of and above the first label. Default: the labels lie in the middle of the page.");
        var gaps = Text("--gaps", "AxD", "The gaps between labels, across and down. Default: 2x2.");
        var grid = Text("--grid", "CxR", "Columns and rows. Default: as many as the page has room for.");
        var start = Text("--start", "N", "The place of the first label on a part-used sheet, counted from 1 row by row.");
        var link = SheetCommand.Link();
        var noCode = new Option<bool>("--no-code") { Description = "Without a QR code. Without --link it holds the words of the label." };
        var outlines = new Option<bool>("--outlines") { Description = "Draw fine lines to cut along." };
        var command = new Command("label", "Tub labels: tag, sex, hatch date, look, what it carries and how that is known, parents, weight, QR code.")
        {
            tags, to, size, page, margins, gaps, grid, start, link, noCode, outlines,
        };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<PrintLabels>().RunAsync(
                new(asked.GetRequiredValue(tags))
                {
                    Layout = new()
                    {
                        Page = asked.GetRequiredValue(page),
                        Size = asked.GetValue(size),
                        Margins = asked.GetValue(margins),
                        Gaps = asked.GetValue(gaps),
                        Grid = asked.GetValue(grid),
                        Start = asked.GetValue(start),
                    },
                    Link = asked.GetValue(link),
                    WithCode = !asked.GetValue(noCode),
                    WithOutlines = asked.GetValue(outlines),
                },
                cancel);
            if (answer.Value is not { } labels)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            await SheetCommand.WriteAsync(asked.GetValue(to), labels.Pdf, cancel);
            if (common.IsJson(asked))
            {
                terminal.Send(Json(labels, asked.GetValue(to)));
            }
            else
            {
                Show(terminal, labels, asked.GetValue(to));
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static Option<string?> Text(string name, string helpName, string help) => new(name) { Description = help, HelpName = helpName };

    private static JsonObject Json(PrintedLabels labels, string? file) => new()
    {
        ["file"] = file,
        ["bytes"] = labels.Pdf.Length,
        ["pages"] = labels.Pages.Count,
        ["pageMm"] = new JsonArray(labels.Grid.Paper.WidthMm, labels.Grid.Paper.HeightMm),
        ["labelMm"] = new JsonArray(labels.Grid.WidthMm, labels.Grid.HeightMm),
        ["columns"] = labels.Grid.Columns,
        ["rows"] = labels.Grid.Rows,
        ["start"] = labels.Start,
        ["labels"] = JsonShapes.Array(labels.Labels, l => new JsonObject
        {
            ["id"] = l.Tag,
            ["text"] = l.Words.Text,
            ["parts"] = JsonShapes.Array(l.Words.Parts, p => new JsonObject
            {
                ["text"] = p.Text,
                ["seen"] = p.IsSeen,
                ["figure"] = p.Figure,
                ["basis"] = p.Basis.ToString().ToLowerInvariant(),
                ["note"] = p.Note,
            }.With("probability", p.Chance)),
            ["notTold"] = JsonShapes.Array(l.Words.NotTold),
            ["leftOut"] = JsonShapes.Array(l.LeftOut),
            ["code"] = l.Code.ToString().ToLowerInvariant(),
            ["codeText"] = l.CodeText,
        }),
        ["notes"] = JsonShapes.Array(labels.Notes),
    };

    private static void Show(Terminal terminal, PrintedLabels labels, string? file)
    {
        var page = new Page(terminal);
        var grid = labels.Grid;
        page.Line(Page.Plain($"{Count(labels.Labels.Count, "label")} of {grid.WidthMm:0.##} x {grid.HeightMm:0.##} mm on {Count(labels.Pages.Count, "page")}"
            + (grid.IsRoll ? ", one a page" : $" of {grid.Paper.WidthMm:0.##} x {grid.Paper.HeightMm:0.##} mm, {grid.Columns} x {grid.Rows} a page, from place {labels.Start}")
            + (file is null ? ". Not written: name a file with --to." : $": {file}, {labels.Pdf.Length:N0} bytes.")));
        foreach (var label in labels.Labels)
        {
            page.Heading(label.Tag);
            page.Line(string.Join(", ", new[] { string.Join(' ', label.Words.Seen.Select(Part)) }.Concat(label.Words.Carried.Select(Part)).Where(p => p.Length > 0)));
            if (label.Words.NotTold.Count > 0)
            {
                page.Line(Page.Plain($"Less likely than 1%, so on no label: {string.Join(", ", label.Words.NotTold)}."));
            }

            page.Line(Page.Plain(label.Code switch
            {
                CodeUse.None => "No QR code.",
                CodeUse.Link => $"The QR code opens {label.CodeText}",
                _ => "The QR code holds the words alone.",
            }));
        }

        if (labels.Notes.Count > 0)
        {
            page.Heading("Look at this");
            page.Points(labels.Notes);
        }

        page.Send();
    }

    private static string Part(LabelPart part) =>
        (part.IsSeen ? Page.Seen(part.Text) : Page.Carried(part.Text)) + (part.Note.Length == 0 ? string.Empty : Page.Plain($" ({part.Note})"));

    private static string Count(int number, string word) => number == 1 ? $"1 {word}" : $"{number:N0} {word}s";
}
