using System.CommandLine;
using Clutchwright.Cli.Words;

namespace Clutchwright.Cli.Sheets;

/// <summary><c>sheet</c>: pages to print.</summary>
internal static class SheetCommand
{
    public static Command Create(CommonOptions common, Terminal terminal) =>
        new("sheet", "Pages to print: labels, records, lineage charts, sale sheets, clutch cards, a season.")
        {
            LabelCommand.Create(common, terminal),
            AnimalSheetCommands.Record(common, terminal),
            AnimalSheetCommands.Lineage(common, terminal),
            AnimalSheetCommands.Sale(common, terminal),
            OtherSheetCommands.Clutch(common, terminal),
            OtherSheetCommands.Season(common, terminal),
        };

    internal static Argument<string[]> Tags() => new("TAG") { Description = "The animals' tags, in the order of the pages.", Arity = ArgumentArity.OneOrMore };

    internal static Option<string?> To() => new("--to")
    {
        Description = "Write the PDF there; an existing file is not overwritten. Default: only say what it would hold.",
        HelpName = "FILE.pdf",
    };

    internal static Option<string> Page(string pages) => new("--page")
    {
        Description = $"The page: {pages}. Default: a4.",
        HelpName = "PAGE",
        DefaultValueFactory = _ => "a4",
    };

    internal static Option<string?> Link() => new("--link")
    {
        Description = "The address of your own server, as http://192.168.1.20:5417: the QR code opens the animal's page there.",
        HelpName = "URL",
    };

    /// <summary>Writes a file where one is asked for.</summary>
    internal static async Task WriteAsync(string? path, byte[] pdf, CancellationToken cancel)
    {
        if (path is not null)
        {
            await using var stream = new FileStream(path, FileMode.CreateNew);
            await stream.WriteAsync(pdf, cancel);
        }
    }
}
