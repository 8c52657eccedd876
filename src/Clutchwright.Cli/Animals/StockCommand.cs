using System.CommandLine;
using Clutchwright.Cli.Condition;
using Clutchwright.Cli.Happenings;
using Clutchwright.Cli.Importing;
using Clutchwright.Cli.Words;

namespace Clutchwright.Cli.Animals;

/// <summary><c>stock</c>: which animals are kept, and what is recorded of each.</summary>
internal static class StockCommand
{
    public static Command Create(CommonOptions common, Terminal terminal) =>
        new("stock", "Which animals are kept, and what is recorded of each.")
        {
            ImportCommand.Animals(common, terminal),
            ImportCommand.Log(common, terminal),
            ImportPhotosCommand.Create(common, terminal),
            ExportCommand.Animals(common, terminal),
            ExportCommand.Log(common, terminal),
            ListCommand.Create(common, terminal),
            ShowCommand.Create(common, terminal),
            LogCommands.Log(common, terminal),
            LogCommands.Note(common, terminal),
            WatchCommand.Create(common, terminal),
            HistoryCommand.Create(common, terminal),
            UndoCommand.Create(common, terminal),
        };

    /// <summary>The option that says who does what is written down.</summary>
    public static Option<string> Who() => new("--who")
    {
        Description = "Who does it, for the history. Default: the name you are logged in with.",
        HelpName = "NAME",
        DefaultValueFactory = _ => string.IsNullOrWhiteSpace(Environment.UserName) ? "keeper" : Environment.UserName,
    };
}
