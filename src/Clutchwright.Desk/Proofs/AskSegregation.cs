using Clutchwright.Desk.Words;
using Clutchwright.Proofs.Segregations;

namespace Clutchwright.Desk.Proofs;

/// <summary>Does this clutch fit what the genes should give?</summary>
public static class AskSegregation
{
    private const double Unlikely = 0.05;
    private const double VeryUnlikely = 0.001;

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public static Answer<SegregationAnswer> Run(SegregationQuestion question)
    {
        var problems = new List<AskedWrongly>();
        var ratio = ChanceReader.ReadRatio("expected", question.Expected, problems);
        var clutches = question.Observed.Select(o => ChanceReader.ReadCounts("observed", o, problems)).ToArray();
        if (clutches.Length == 0)
        {
            problems.Add(new("observed", "No counts are given. Write them, for example round=315,wrinkled=101."));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var names = clutches[0]!.Select((c, i) => c.Name ?? $"class {i + 1}").ToArray();
        var rows = new List<int[]>();
        foreach (var clutch in clutches)
        {
            if (clutch!.Count != ratio!.Count)
            {
                problems.Add(new("observed", $"{clutch.Count} counts stand against a ratio of {ratio.Count} numbers. Give one count for each."));
                return problems.ToArray();
            }

            if (Row(names, clutch) is { } row)
            {
                rows.Add(row);
            }
            else
            {
                problems.Add(new("observed", $"The clutches name different classes. Every one has {string.Join(", ", names)}."));
                return problems.ToArray();
            }
        }

        if (rows.Sum(r => r.Sum(n => (long)n)) is var number && number is 0 or > SegregationTest.MostEggs)
        {
            return new AskedWrongly("observed", number == 0 ? "All counts are 0. Count at least one." : $"More than {SegregationTest.MostEggs:N0} young are too many.");
        }

        var settings = new ExactSettings { Seed = question.Seed };
        var together = rows.Count > 1 ? HeterogeneityTest.Of(rows, ratio!, settings) : null;
        var test = together?.Pooled ?? SegregationTest.Of(rows[0], ratio!, settings);
        return new SegregationAnswer(names, test, together, Verdict(test, together), [.. Notes(test, together, settings)]);
    }

    private static int[]? Row(string[] names, IReadOnlyList<(string? Name, int Count)> clutch)
    {
        if (clutch[0].Name is null)
        {
            return [.. clutch.Select(c => c.Count)];
        }

        var row = new int[names.Length];
        foreach (var (name, count) in clutch)
        {
            var at = Array.FindIndex(names, n => string.Equals(n, name, StringComparison.OrdinalIgnoreCase));
            if (at < 0)
            {
                return null;
            }

            row[at] = count;
        }

        return row;
    }

    private static string Verdict(SegregationTest test, HeterogeneityTest? together)
    {
        if (together is { Exact.Value: < Unlikely })
        {
            return "The clutches do not agree with each other, so their sum says little: look at them one by one. Perhaps not all have the same parents.";
        }

        return test.Exact.Value switch
        {
            < VeryUnlikely => "These counts hardly ever come of this ratio: something else is going on.",
            < Unlikely => "These counts come of this ratio in fewer than 5 of 100 cases: doubtful, and worth another clutch.",
            _ => "These counts fit this ratio. Others may fit as well: a fit is no proof.",
        };
    }

    private static IEnumerable<string> Notes(SegregationTest test, HeterogeneityTest? together, ExactSettings settings)
    {
        if (test.IsSparse)
        {
            yield return "Some class is expected fewer than 5 times, so chi-square is only rough: read the exact p value.";
        }

        if (!test.Exact.IsExact || together is { Exact.IsExact: false })
        {
            yield return $"There are too many outcomes to add up, so {settings.Draws:N0} were drawn (seed {settings.Seed}); the standard error is given beside.";
        }

        yield return "A p value holds for counts taken once, at a number of eggs settled before. One that looked after every clutch, and stopped when it pleased, proves nothing.";
    }
}
