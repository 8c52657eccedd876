using System.CommandLine;
using Clutchwright.Desk;
using Clutchwright.Desk.Backups;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli;

/// <summary>The options that every command takes, and the questions of the desk that stand behind them.</summary>
internal sealed class CommonOptions
{
    /// <summary>Holds the connection string of a PostgreSQL database with the book. No option: arguments are seen by all users of a machine.</summary>
    private const string DatabaseVariable = "CLUTCHWRIGHT_POSTGRESQL";

    private static readonly string[] CatalogueParts = ["catalogue", "python-regius"];

    private readonly Option<bool> _json = new("--json")
    {
        Description = "Answer in JSON, for programs.",
        Recursive = true,
    };

    private readonly Option<string?> _catalogue = new("--catalogue")
    {
        Description = "The folder that describes the species. Default: the python-regius folder that comes with the program.",
        HelpName = "DIR",
        Recursive = true,
    };

    private readonly Option<string?> _data = new("--data")
    {
        Description = $"The folder that holds your stock. Default: the database of {DatabaseVariable} if that is set, else {DefaultDataFolder}",
        HelpName = "DIR",
        Recursive = true,
    };

    /// <summary>Gets the folder of the keeper's own that is used where none is named.</summary>
    public static string DefaultDataFolder => Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify),
        "clutchwright");

    public void AddTo(Command command)
    {
        command.Add(_json);
        command.Add(_catalogue);
        command.Add(_data);
    }

    public bool IsJson(ParseResult asked) => asked.GetValue(_json);

    public string DataFolder(ParseResult asked) => Path.GetFullPath(asked.GetValue(_data) ?? DefaultDataFolder);

    /// <summary>The database that holds the stock; <c>null</c>: the data folder does. A folder that was named goes first.</summary>
    public string? Database(ParseResult asked) =>
        asked.GetValue(_data) is null && Environment.GetEnvironmentVariable(DatabaseVariable) is { } set && !string.IsNullOrWhiteSpace(set) ? set : null;

    /// <summary>Finds the catalogue's folder: the one named, or else the shipped one, beside the program or above it.</summary>
    /// <exception cref="DirectoryNotFoundException">There is none.</exception>
    public string CatalogueFolder(ParseResult asked)
    {
        if (asked.GetValue(_catalogue) is { } named)
        {
            return Directory.Exists(named)
                ? Path.GetFullPath(named)
                : throw new DirectoryNotFoundException($"There is no folder '{named}' (--catalogue).");
        }

        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var candidate = Path.Combine([folder.FullName, .. CatalogueParts]);
            if (File.Exists(Path.Combine(candidate, "species.yaml")))
            {
                return candidate;
            }
        }

        throw new DirectoryNotFoundException("The catalogue that comes with the program is missing; name one with --catalogue.");
    }

    /// <summary>Opens the questions of the desk over the asked catalogue and data folder.</summary>
    public ServiceProvider Open(ParseResult asked, BackupSettings? backups = null) =>
        new ServiceCollection().AddDesk(CatalogueFolder(asked), DataFolder(asked), Database(asked), backups).BuildServiceProvider();
}
