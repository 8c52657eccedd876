using Clutchwright.Catalogue.Looks;
using Clutchwright.Genetics.Loci;
using Xunit;

namespace Clutchwright.Catalogue.Tests.Looks;

/// <summary>Which distance the composing rule should use, judged by the recorded combinations: each is composed as if it were not recorded,
/// and compared with what is recorded.</summary>
public sealed class ComposingRuleTests(ITestOutputHelper output)
{
    private delegate double Distance(CielabColour one, CielabColour other);

    [Fact]
    public void Compose_RecordedCombinations_StraightDistanceIsNoWorseThanCiede2000()
    {
        var catalogue = CatalogueFolder.Read(Path.Combine(AppContext.BaseDirectory, "catalogue", "python-regius")).Catalogue!;
        var results = new List<(string Rule, double Mean, double Median)>();
        foreach (var half in new[] { 0.01, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 15.0 })
        {
            results.Add(Judge($"straight, half at {half}, nearest straight", catalogue, Straight, half, Straight));
            results.Add(Judge($"CIEDE2000, half at {half}, nearest by CIEDE2000", catalogue, Ciede, half, Ciede));
        }

        foreach (var (rule, mean, median) in results.OrderBy(r => r.Mean))
        {
            output.WriteLine($"{mean:0.000} {median:0.000}  {rule}");
        }
    }

    private static double Straight(CielabColour one, CielabColour other) => one.StraightDistanceTo(other);

    private static double Ciede(CielabColour one, CielabColour other) => one.DifferenceFrom(other);

    private static (string Rule, double Mean, double Median) Judge(
        string rule, SpeciesCatalogue catalogue, Distance step, double half, Distance nearest)
    {
        var errors = new List<double>();
        var normal = catalogue.Looks.First(l => l.Expressions.Count == 0);
        foreach (var entry in catalogue.Looks.Where(l => l.IsRecorded && l.Expressions.Count > 1))
        {
            var parts = PartsOf(catalogue, entry);
            if (parts is null)
            {
                continue;
            }

            foreach (var stage in Enum.GetValues<AgeStage>())
            {
                var ordered = parts.OrderBy(p => step(p.TonesAt(stage).Ground.Lab, normal.TonesAt(stage).Ground.Lab)
                    + step(p.TonesAt(stage).Pattern.Lab, normal.TonesAt(stage).Pattern.Lab)).ToArray();
                foreach (var of in new Func<ToneSet, Tone>[] { t => t.Ground, t => t.Pattern, t => t.Eye })
                {
                    var start = of(normal.TonesAt(stage)).Lab;
                    var colour = start;
                    foreach (var part in ordered)
                    {
                        var tone = of(part.TonesAt(stage)).Lab;
                        var d = step(start, tone);
                        colour = colour.Towards(tone, d / (d + half));
                    }

                    var named = catalogue.Tones.MinBy(t => nearest(t.Lab, colour))!;
                    errors.Add(named.Lab.DifferenceFrom(of(entry.TonesAt(stage)).Lab));
                }
            }
        }

        var (even, odd) = (errors.Where((_, i) => i / 12 % 2 == 0).Average(), errors.Where((_, i) => i / 12 % 2 == 1).Average());
        rule += $" even {even:0.000} odd {odd:0.000}";
        errors.Sort();
        return (rule + $" ({errors.Count})", errors.Average(), errors[errors.Count / 2]);
    }

    // As the rule does, with the entry itself left out; null where a form has no look of its own.
    private static List<LookEntry>? PartsOf(SpeciesCatalogue catalogue, LookEntry entry)
    {
        var left = entry.Expressions.ToHashSet();
        var parts = new List<LookEntry>();
        foreach (var other in catalogue.Looks
            .Where(l => l.Expressions.Count > 0 && l.Expressions.Count < entry.Expressions.Count && l.Expressions.All(left.Contains))
            .OrderByDescending(l => l.Expressions.Count))
        {
            if (other.Expressions.All(left.Contains))
            {
                parts.Add(other);
                left.ExceptWith(other.Expressions);
            }
        }

        return left.Count == 0 && parts.Count > 1 ? parts : null;
    }
}
