using System.CommandLine;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Sheets;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Sheets;

/// <summary><c>sheet record</c>, <c>sheet lineage</c> and <c>sheet sale</c>.</summary>
internal static class AnimalSheetCommands
{
    public static Command Record(CommonOptions common, Terminal terminal) => Create(
        common, terminal, "record", SheetKind.Record, "All that is recorded of an animal, what is believed of it with the reasons, and its log of the last year.", (_, q) => q, []);

    public static Command Lineage(CommonOptions common, Terminal terminal)
    {
        var generations = Options.Count("--generations", "So many generations of ancestors. Default: 3.", "N", 1, PrintSheets.MostGenerations);
        return Create(
            common, terminal, "lineage", SheetKind.Lineage, "The ancestors of an animal as a drawing, and in words.",
            (asked, q) => q with { Generations = asked.GetValue(generations) ?? q.Generations }, [generations]);
    }

    public static Command Sale(CommonOptions common, Terminal terminal)
    {
        var supplier = Text("--supplier", "NAME", "The full name of who sells. Default: a line to write on.");
        var buyer = Text("--buyer", "NAME", "The full name of who buys. Default: a line to write on.");
        var sold = Text("--sold", "DATE", "The day of the sale. Default: a line to write on.");
        var source = Text("--source", "CODE", $"The CITES source code: {string.Join("; ", SaleForm.Sources.Select(s => $"{s.Code}, {s.Words}"))}. Default: a line to write on.");
        return Create(
            common, terminal, "sale", SheetKind.Sale, "What goes with an animal when it is sold: register fields, genotype with its grounds, last meals, welfare, lines to sign.",
            (asked, q) => q with { Sale = new() { Supplier = asked.GetValue(supplier), Buyer = asked.GetValue(buyer), Sold = asked.GetValue(sold), Source = asked.GetValue(source) } },
            [supplier, buyer, sold, source]);
    }

    private static Command Create(
        CommonOptions common, Terminal terminal, string name, SheetKind kind, string help, Func<ParseResult, SheetQuestion, SheetQuestion> with, IReadOnlyList<Option> own)
    {
        var (tags, to, page, link) = (SheetCommand.Tags(), SheetCommand.To(), SheetCommand.Page("a4 or letter"), SheetCommand.Link());
        var command = new Command(name, help) { tags, to, page, link };
        foreach (var option in own)
        {
            command.Add(option);
        }

        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var question = with(asked, new(kind, asked.GetRequiredValue(tags)) { Page = asked.GetRequiredValue(page), Link = asked.GetValue(link) });
            var answer = await questions.GetRequiredService<PrintSheets>().RunAsync(question, cancel);
            return await SheetAnswers.SendAsync(common, terminal, asked, answer, asked.GetValue(to), cancel);
        });
        return command;
    }

    private static Option<string?> Text(string name, string helpName, string help) => new(name) { Description = help, HelpName = helpName };
}
