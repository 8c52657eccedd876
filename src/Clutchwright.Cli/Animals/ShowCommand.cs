using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Genes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Animals;

/// <summary><c>stock show</c>: one animal, whole.</summary>
internal static class ShowCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var tag = new Argument<string>("TAG") { Description = "The animal's tag." };
        var command = new Command("show", "One animal: what is recorded of it, what it may carry, and why.") { tag };
        command.SetAction(async (asked, cancel) =>
        {
            var name = asked.GetRequiredValue(tag);
            await using var questions = common.Open(asked);
            if (await questions.GetRequiredService<ShowAnimal>().RunAsync(name, cancel) is not { } animal)
            {
                var all = await questions.GetRequiredService<ListAnimals>().RunAsync(new() { PageSize = int.MaxValue }, cancel);
                return terminal.AskedWrongly($"TAG: the stock has no '{name}'{Spelling.Hint(name, all.Animals.Select(a => a.Tag))}");
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(animal));
            }
            else
            {
                Show(terminal, animal);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static JsonObject Json(AnimalAnswer animal) => ListCommand.Json(animal.Line)
        .With("sire", animal.Sire?.Tag)
        .With("dam", animal.Dam?.Tag)
        .With("possibleSires", JsonShapes.Array(animal.PossibleSires))
        .With("offspring", JsonShapes.Array(animal.Offspring.Select(o => o.Tag)))
        .With("possibleOffspring", JsonShapes.Array(animal.PossibleOffspring.Select(o => o.Tag)))
        .With("massGrams", animal.MassGrams)
        .With("notes", animal.Notes)
        .With("statements", JsonShapes.Array(animal.Statements, s => new JsonObject
        {
            ["id"] = s.Id.ToString(),
            ["kind"] = s.Kind,
            ["text"] = s.Text,
            ["who"] = s.Who,
            ["when"] = s.When,
            ["confidence"] = s.Confidence,
        }))
        .With("loci", JsonShapes.Array(animal.Beliefs, b => new JsonObject
        {
            ["locus"] = b.Locus,
            ["genotypes"] = JsonShapes.Array(b.Possibilities, p =>
                new JsonObject { ["genotype"] = p.Text, ["notation"] = p.Notation }.With("probability", p.Chance)),
            ["why"] = JsonShapes.Array(b.Why, w =>
            {
                var step = new JsonObject { ["text"] = w.Text };
                return w.Value is { } value ? step.With("value", value) : step;
            }),
        }))
        .With("look", GeneJson.Of(animal.Look))
        .With("warnings", JsonShapes.Array(animal.Dangers, JsonShapes.Of))
        .With("problems", JsonShapes.Array(animal.Problems))
        .With("history", JsonShapes.Array(animal.History, HistoryCommand.Json))
        .With("isInBin", animal.IsInBin);

    private static void Show(Terminal terminal, AnimalAnswer animal)
    {
        var page = new Page(terminal);
        page.Line(Page.Plain($"{animal.Line.Tag}{(animal.Line.Name is { } name ? $" {name}" : string.Empty)}, {ListCommand.Sexed(animal.Line)} ")
            + Page.Marked(animal.Line.Words));
        page.Line(Page.Plain(animal.Line.Words.Notation));
        var facts = new (string Name, string? Value)[]
        {
            ("hatched", animal.Line.Hatched),
            ("status", animal.IsInBin ? "in the bin" : RecordWords.Status(animal.Line.Status)),
            ("sire", animal.Sire?.Tag ?? (animal.PossibleSires.Count > 0 ? $"one of {Spelling.OneOf(animal.PossibleSires)}" : null)),
            ("dam", animal.Dam?.Tag),
            ("young", string.Join(", ", animal.Offspring.Select(o => o.Tag))),
            ("perhaps its young", string.Join(", ", animal.PossibleOffspring.Select(o => o.Tag))),
            ("mass", animal.MassGrams is { } grams ? $"{grams:N0} g" : null),
            ("notes", animal.Notes),
        };
        page.Table(["", ""], [.. facts.Where(f => !string.IsNullOrEmpty(f.Value)).Select(f => new[] { f.Name, Page.Plain(f.Value) })]);
        if (animal.Problems.Count > 0)
        {
            page.Heading("Look at this");
            page.Points(animal.Problems);
        }

        if (animal.Statements.Count > 0)
        {
            page.Heading("What was said of it");
            page.Table(
                ["", "", "by", "when", ">how sure"],
                [.. animal.Statements.Select(s => new[]
                {
                    Page.Plain(RecordWords.Statement(s.Kind)), Page.Plain(s.Text), Page.Plain(s.Who), Page.Plain(s.When), $"{s.Confidence * 100:0.#}%",
                })]);
        }

        if (animal.Beliefs.Count > 0)
        {
            page.Heading("What it carries");
            foreach (var belief in animal.Beliefs)
            {
                page.Line(Page.Plain($"{belief.Locus}: ") + string.Join(", ", belief.Possibilities.Select(p =>
                    $"{Page.Plain(OddsText.RatioAndPercent(p.Chance))} {Page.Plain(p.Text)}")));
                page.Points(belief.Why.Select(w => w.Value is { } value ? $"{w.Text} {OddsText.RatioAndPercent(value)}" : w.Text));
            }
        }

        page.Heading("How it looks by age");
        page.Look(animal.Look);
        page.Warnings(animal.Dangers);
        page.Send();
    }
}
