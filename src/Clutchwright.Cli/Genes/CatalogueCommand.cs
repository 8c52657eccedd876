using System.CommandLine;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Genes;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Genes;

/// <summary><c>catalogue</c>: what is known of each gene, allele and combination.</summary>
internal static class CatalogueCommand
{
    public static Command Create(CommonOptions common, Terminal terminal) =>
        new("catalogue", "What is known of each gene, allele and combination, and on what evidence.")
        {
            Check(common, terminal),
            Show(common, terminal),
            List(common, terminal),
        };

    private static Command Check(CommonOptions common, Terminal terminal)
    {
        var folder = new Argument<string?>("DIR")
        {
            Description = "The species folder to check. Default: that of --catalogue.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command("check", "Read a species folder and list every problem, with file and line.") { folder };
        command.SetAction(asked =>
        {
            var path = asked.GetValue(folder) ?? common.CatalogueFolder(asked);
            if (!Directory.Exists(path))
            {
                return terminal.CouldNot($"There is no folder '{path}'.");
            }

            var check = CheckCatalogue.Run(path);
            if (common.IsJson(asked))
            {
                terminal.Send(GeneJson.Of(check, path));
            }
            else
            {
                GenePage.Send(terminal, check, path);
            }

            return check.Problems.Count == 0
                ? ExitCode.Answered
                : terminal.AskedWrongly($"catalogue check: {check.Problems.Count} {(check.Problems.Count == 1 ? "problem" : "problems")}; the first: {GenePage.Place(check.Problems[0])}");
        });
        return command;
    }

    private static Command Show(CommonOptions common, Terminal terminal)
    {
        var gene = new Argument<string>("GENE") { Description = "The name or id of a gene, a form or a combination." };
        var command = new Command("show", "One entry with its looks, dangers and sources.") { gene };
        command.SetAction(async (asked, _) =>
        {
            var name = asked.GetRequiredValue(gene);
            await using var questions = common.Open(asked);
            if (Find(questions, name) is not { } entry)
            {
                var nearest = questions.GetRequiredService<ShowGene>().Nearest(name);
                return terminal.AskedWrongly($"GENE: the catalogue has no '{name}'{Spelling.DidYouMean(nearest)}");
            }

            if (common.IsJson(asked))
            {
                terminal.Send(GeneJson.Of(entry));
            }
            else
            {
                GenePage.Send(terminal, entry);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static Command List(CommonOptions common, Terminal terminal)
    {
        var find = new Option<string?>("--find") { Description = "Only entries in which this text stands.", HelpName = "TEXT" };
        var kind = new Option<string?>("--kind") { Description = "Only entries of this kind: allele, form or combination.", HelpName = "KIND" };
        kind.AcceptOnlyFromAmong("allele", "form", "combination");
        var command = new Command("list", "All entries.") { find, kind };
        command.SetAction(async (asked, _) =>
        {
            await using var questions = common.Open(asked);
            var entries = questions.GetRequiredService<ListGenes>().Run(asked.GetValue(find), asked.GetValue(kind));
            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["genes"] = JsonShapes.Array(entries, GeneJson.Of) });
            }
            else
            {
                GenePage.Send(terminal, entries);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    // The id first; else the one entry that bears the name.
    private static GeneAnswer? Find(ServiceProvider questions, string name)
    {
        var show = questions.GetRequiredService<ShowGene>();
        return show.Run(name) ?? questions.GetRequiredService<ListGenes>().Run(null, null)
            .Where(g => string.Equals(g.Name, name, StringComparison.OrdinalIgnoreCase))
            .Select(g => show.Run(g.Id))
            .FirstOrDefault(g => g is not null);
    }
}
