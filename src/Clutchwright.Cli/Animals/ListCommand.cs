using System.CommandLine;
using System.CommandLine.Parsing;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Animals;

/// <summary><c>stock list</c>: the animals, one a line.</summary>
internal static class ListCommand
{
    // So many at a time are asked of the book; all of them are shown.
    private const int PageSize = 500;

    private static readonly string[] Statuses = [.. RecordWords.Statuses.Select(s => s.Value), AnimalsQuestion.Bin];

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var find = new Option<string?>("--find") { Description = "Only animals in whose record this text stands.", HelpName = "TEXT" };
        var sex = new Option<string?>("--sex") { Description = "Only males (m) or females (f).", HelpName = "m|f" };
        sex.AcceptOnlyFromAmong("m", "f");
        var status = new Option<string?>("--status")
        {
            Description = $"Only animals of this status: {Spelling.OneOf(Statuses)}.",
            HelpName = "STATUS",
            CustomParser = given => ReadStatus(given),
        };
        var order = new Option<string>("--order")
        {
            Description = "By tag, by name, the youngest first or the lately added first: tag, name, hatched or added. Default: tag.",
            HelpName = "ORDER",
            DefaultValueFactory = _ => "tag",
        };
        order.AcceptOnlyFromAmong("tag", "name", "hatched", "added");
        var command = new Command("list", "The animals of your stock.") { find, sex, status, order };
        command.SetAction(async (asked, cancel) =>
        {
            var question = new AnimalsQuestion
            {
                Find = asked.GetValue(find),
                Sex = asked.GetValue(sex) switch { "m" => Sex.Male, "f" => Sex.Female, _ => null },
                Status = asked.GetValue(status),
                Order = asked.GetRequiredValue(order),
                PageSize = PageSize,
            };
            await using var questions = common.Open(asked);
            var list = questions.GetRequiredService<ListAnimals>();
            var animals = new List<AnimalLine>();
            AnimalsAnswer answer;
            do
            {
                answer = await list.RunAsync(question, cancel);
                animals.AddRange(answer.Animals);
                question = question with { Page = question.Page + 1 };
            }
            while (answer.Animals.Count > 0 && animals.Count < answer.Total);

            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["animals"] = JsonShapes.Array(animals, Json), ["total"] = animals.Count });
            }
            else
            {
                Show(terminal, animals);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    /// <summary>One animal in JSON.</summary>
    public static JsonObject Json(AnimalLine animal) => new JsonObject
    {
        ["id"] = animal.Tag,
        ["name"] = animal.Name,
        ["sex"] = animal.Sex switch { Sex.Male => "m", Sex.Female => "f", _ => "u" },
        ["hatched"] = animal.Hatched,
        ["status"] = animal.Status,
    }
        .WithWords(animal.Words)
        .With("hasProblem", animal.HasProblem);

    /// <summary>The sex as the trade writes it.</summary>
    public static string Sexed(AnimalLine animal) => animal.Sex switch { Sex.Male => "1.0", Sex.Female => "0.1", _ => "0.0.1" };

    private static string? ReadStatus(ArgumentResult given)
    {
        var text = given.Tokens[0].Value;
        if (Statuses.FirstOrDefault(s => string.Equals(s, text, StringComparison.OrdinalIgnoreCase)) is { } known)
        {
            return known;
        }

        given.AddError($"--status: '{text}' is no status; one of {Spelling.OneOf(Statuses)}{Spelling.Hint(text, Statuses)}");
        return null;
    }

    private static void Show(Terminal terminal, List<AnimalLine> animals)
    {
        var page = new Page(terminal);
        if (animals.Count == 0)
        {
            page.Line("No animal. Read some from a file with: stock import FILE.csv");
        }
        else
        {
            page.Table(
                ["tag", "name", "sex", "what it is", "hatched", "status", ""],
                [.. animals.Select(a => new[]
                {
                    Page.Plain(a.Tag),
                    Page.Plain(a.Name),
                    Sexed(a),
                    Page.Marked(a.Words),
                    Page.Plain(a.Hatched),
                    Page.Plain(RecordWords.Status(a.Status)),
                    a.HasProblem ? "look at its record" : string.Empty,
                })]);
            var (males, females) = (animals.Count(a => a.Sex == Sex.Male), animals.Count(a => a.Sex == Sex.Female));
            page.Line(Page.Plain($"{males}.{females}.{animals.Count - males - females}"));
        }

        page.Send();
    }
}
