using Clutchwright.Cli.Words;
using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Cli.Carry;

/// <summary>The readable answer of <c>carry</c>: an animal and a locus a line, what is certainly wild left out.</summary>
internal static class CarryPage
{
    public static void Send(Terminal terminal, CarryAnswer answer, bool notation)
    {
        var page = new Page(terminal);
        if (answer.Total == 0)
        {
            page.Line("No animal. Read some from a file with: stock import FILE.csv");
            page.Send();
            return;
        }

        var told = answer.Animals.Where(a => a.Loci.Any(l => l.HasMore)).ToArray();
        if (told.Length > 0)
        {
            page.Table(["animal", "sex", "locus", "what it may carry"], [.. told.SelectMany(a => Rows(a, notation))]);
        }

        if (answer.Animals.Count - told.Length is > 0 and var silent)
        {
            var who = answer.Animals.Count == 1 ? Page.Plain(answer.Animals[0].Id) : silent == 1 ? "1 animal" : $"{silent:N0} animals";
            page.Line($"{who}: nothing, by all that is recorded.");
        }

        if (told.Any(a => a.NotCounted.Count > 0))
        {
            page.Heading("Labels not counted again: the records of the kin already say what can be known");
            page.Points(told.SelectMany(a => a.NotCounted.Select(n => $"{a.Id}: {n}")));
        }

        if (answer.Contradictions.Count > 0)
        {
            page.Heading("Records that cannot all be true");
            foreach (var contradiction in answer.Contradictions)
            {
                page.Points([$"{string.Join(", ", contradiction.Loci)}: {string.Join("; ", contradiction.Records)}"]);
                page.Table(
                    [">", "what may have gone wrong", "to check"],
                    [.. contradiction.Causes.Select(c => new[] { OddsText.Percent(c.Chance), Page.Plain(c.Text), Page.Plain(c.Check) })]);
                if (contradiction.NotWeighedText is { } notWeighed)
                {
                    page.Line(Page.Plain(notWeighed));
                }
            }
        }

        if (answer.Unread.Count > 0)
        {
            page.Heading("Statements that cannot be read");
            page.Points(answer.Unread);
        }

        page.Line(Page.Plain(string.Empty));
        page.Line(Page.Plain(answer.IsExact
            ? $"Exact. Logarithm of the probability of all records: {answer.LogLikelihood:0.######}"
            : $"Too large to be solved, so sampled: a probability is out by about {OddsText.StandardError(answer.StandardError)} (one standard error) at most."));
        page.Send();
    }

    private static IEnumerable<string[]> Rows(CarryAnimal animal, bool notation)
    {
        var isFirst = true;
        foreach (var locus in animal.Loci.Where(l => l.HasMore))
        {
            var sex = animal.Sex switch { Sex.Male => "1.0", Sex.Female => "0.1", _ => "0.0.1" };
            yield return
            [
                isFirst ? Page.Plain(animal.Count > 1 ? $"{animal.Id} ({animal.Count} alike)" : animal.Id) : string.Empty,
                isFirst ? sex : string.Empty,
                Page.Plain(locus.Name),
                string.Join(", ", locus.Genotypes.Select(g => Say(g, notation)))
                    + (locus.StandardError is { } error ? Page.Plain($" ± {OddsText.StandardError(error)}") : string.Empty),
            ];
            isFirst = false;
        }
    }

    private static string Say(CarryGenotype genotype, bool notation)
    {
        var words = genotype.Words + (notation ? $" {genotype.Notation}" : string.Empty);
        return Page.Plain(genotype.Chance.IsCertain ? words : $"{words} {OddsText.RatioAndPercent(genotype.Chance)}");
    }
}
