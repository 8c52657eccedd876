using System.CommandLine;
using System.CommandLine.Help;
using System.Data.Common;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Backups;
using Clutchwright.Cli.Carry;
using Clutchwright.Cli.Clutches;
using Clutchwright.Cli.Crosses;
using Clutchwright.Cli.Genes;
using Clutchwright.Cli.Incubators;
using Clutchwright.Cli.Kin;
using Clutchwright.Cli.Looks;
using Clutchwright.Cli.Photos;
using Clutchwright.Cli.Proofs;
using Clutchwright.Cli.Routes;
using Clutchwright.Cli.Season;
using Clutchwright.Cli.Serving;
using Clutchwright.Cli.Sheets;
using Clutchwright.Cli.Words;
using Clutchwright.Desk;

namespace Clutchwright.Cli;

/// <summary>The commands of the program, and what becomes of a command line.</summary>
internal static class CommandLine
{
    /// <summary>Builds the tree of commands.</summary>
    public static RootCommand Create(Terminal terminal)
    {
        var common = new CommonOptions();
        var root = new RootCommand(
            "Clutchwright: from the look wanted and the animals kept, to this season's pairings with honest odds.")
        {
            CrossCommand.Create(common, terminal),
            LookCommand.Create(common, terminal),
            CarryCommand.Create(common, terminal),
            KinCommand.Create(common, terminal),
            CatalogueCommand.Create(common, terminal),
            StockCommand.Create(common, terminal),
            BookCommand.Create(common, terminal),
            IncubatorCommand.Create(common, terminal),
            PhotoCommand.Create(common, terminal),
            ProofCommand.Create(common, terminal),
            RouteCommand.Create(common, terminal),
            SeasonCommand.Create(common, terminal),
            SheetCommand.Create(common, terminal),
            ClutchCommand.Create(common, terminal),
            ServeCommand.Create(common, terminal),
        };
        common.AddTo(root);
        root.SetAction(asked => new HelpAction().Invoke(asked));
        return root;
    }

    /// <summary>Runs a command line.</summary>
    /// <returns>A value of <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> args, Terminal terminal, CancellationToken cancel)
    {
        // No bundling and no response files: a tag may begin with any sign a keeper likes.
        var parser = new ParserConfiguration { EnablePosixBundling = false, ResponseFileTokenReplacer = null };
        var asked = Create(terminal).Parse(args, parser);
        if (asked.Action is not HelpAction && ParseProblem.Find(asked) is { } problem)
        {
            return terminal.AskedWrongly(problem);
        }

        var invocation = new InvocationConfiguration
        {
            Output = terminal.Output,
            Error = terminal.Error,
            EnableDefaultExceptionHandler = false,
        };
        try
        {
            return await asked.InvokeAsync(invocation, cancel);
        }
        catch (Exception failure) when (failure is DeskClosedException or IOException or UnauthorizedAccessException or DbException)
        {
            return terminal.CouldNot(failure.Message);
        }
        catch (SettingUnreadableException wrong)
        {
            return terminal.AskedWrongly(wrong.Message);
        }
        catch (OperationCanceledException)
        {
            return terminal.CouldNot("Stopped.");
        }
        catch (Exception fault)
        {
            // Ours, not the keeper's: told whole, so that it can be mended, and with an exit code that programs know.
            terminal.Error.WriteLine($"A fault in Clutchwright: {fault}");
            return ExitCode.CouldNotBeDone;
        }
    }
}
