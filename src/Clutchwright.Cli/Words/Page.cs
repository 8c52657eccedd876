using System.Text;
using Clutchwright.Desk.Words;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Clutchwright.Cli.Words;

/// <summary>A readable answer in the making: headings, lines and tables, written at once when it is whole.</summary>
/// <remarks>What is seen is bold and upright, what is carried italic, as genetics sets its symbols.</remarks>
internal sealed class Page
{
    private readonly Terminal _terminal;
    private readonly StringBuilder _text = new();
    private readonly IAnsiConsole _console;

    public Page(Terminal terminal)
    {
        _terminal = terminal;
        _console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = terminal.IsStyled ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(new StringWriter(_text)),
        });
        _console.Profile.Width = terminal.Width;
        _console.Profile.Capabilities.Unicode = true;
    }

    /// <summary>Marks what is seen.</summary>
    public static string Seen(string text) => $"[bold]{Markup.Escape(text)}[/]";

    /// <summary>Marks what is carried.</summary>
    public static string Carried(string text) => $"[italic]{Markup.Escape(text)}[/]";

    /// <summary>Marks nothing.</summary>
    public static string Plain(string? text) => Markup.Escape(text ?? string.Empty);

    /// <summary>Marks the parts of an animal's text.</summary>
    public static string Marked(AnimalWords words) =>
        string.Join(' ', words.Parts.Select(p => p.IsSeen ? Seen(p.Text) : Carried(p.Text)));

    /// <summary>Begins a part of the page.</summary>
    public void Heading(string text)
    {
        if (_text.Length > 0)
        {
            _console.WriteLine();
        }

        _console.MarkupLine($"[underline]{Plain(text)}[/]");
    }

    /// <summary>Adds one line of marked text.</summary>
    public void Line(string marked) => _console.MarkupLine(marked);

    /// <summary>Adds plain sentences, one a line, each behind a dash.</summary>
    public void Points(IEnumerable<string> sentences)
    {
        foreach (var sentence in sentences)
        {
            Write(new Grid().AddColumn(new GridColumn().NoWrap().PadRight(1)).AddColumn(new GridColumn().PadRight(0))
                .AddRow(new Text("-"), new Text(sentence)));
        }
    }

    /// <summary>Adds a table of marked cells.</summary>
    /// <param name="headers">The columns; one that begins with <c>&gt;</c> is set to the right.</param>
    /// <param name="rows">The rows; a row that is empty throughout is left out, and so is such a column.</param>
    public void Table(IReadOnlyList<string> headers, IReadOnlyList<string[]> rows)
    {
        rows = [.. rows.Where(r => Array.Exists(r, c => c.Length > 0))];
        var shown = Enumerable.Range(0, headers.Count).Where(c => rows.Any(r => r[c].Length > 0)).ToArray();
        var table = new Table { Border = TableBorder.None, ShowHeaders = shown.Any(c => headers[c].Length > 0) };
        foreach (var column in shown)
        {
            var right = headers[column].StartsWith('>');
            table.AddColumn(new TableColumn(new Markup($"[dim]{Plain(headers[column].TrimStart('>'))}[/]"))
            {
                Alignment = right ? Justify.Right : Justify.Left,
                Padding = new Padding(0, 0, 2, 0),
                NoWrap = right,
            });
        }

        foreach (var row in rows)
        {
            table.AddRow(shown.Select(c => (IRenderable)new Markup(row[c])));
        }

        Write(table);
    }

    /// <summary>Writes the page out, without blanks at the ends of lines.</summary>
    public void Send()
    {
        foreach (var line in _text.ToString().TrimEnd().Split('\n'))
        {
            _terminal.Output.Write(line.TrimEnd() + "\n");
        }
    }

    private void Write(IRenderable what) => _console.Write(what);
}
