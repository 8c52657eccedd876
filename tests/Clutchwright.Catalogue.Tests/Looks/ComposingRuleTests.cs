using Clutchwright.Catalogue.Looks;
using Clutchwright.Genetics.Loci;
using Xunit;

namespace Clutchwright.Catalogue.Tests.Looks;

/// <summary>Which distance the composing rule should use, judged by the recorded combinations: each is composed as if it were not recorded,
/// and compared with what is recorded.</summary>
public sealed class ComposingRuleTests(ITestOutputHelper output)
{
    private delegate double Distance(CielabColour one, CielabColour other);

    // Half of the way at 5 in straight distance, nearest tone by straight distance: the rule as it is.
    [Fact]
    public void Compose_RecordedCombinations_NoOtherDistanceOrShareComesClearlyNearer()
    {
        var catalogue = CatalogueFolder.Read(Path.Combine(AppContext.BaseDirectory, "catalogue", "python-regius")).Catalogue!;
        var chosen = Judge(catalogue, Straight, 5.0, Straight);

        double[] halves = [1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 15.0, 25.0];
        var others = halves
            .SelectMany(h => new (string Rule, double Half, double Error)[]
            {
                ("straight", h, Judge(catalogue, Straight, h, Straight)), ("CIEDE2000", h, Judge(catalogue, Ciede, h, Ciede)),
            })
            .OrderBy(r => r.Error)
            .ToArray();

        foreach (var (rule, half, error) in others)
        {
            output.WriteLine($"{error:0.00}  {rule}, half of the way at {half}");
        }

        // A quarter of a step of CIEDE2000 is not to be seen.
        Assert.InRange(chosen, 0.0, others[0].Error + 0.25);
        Assert.True(chosen < Judge(catalogue, Straight, 15.0, Straight) - 1.0);
    }

    private static double Straight(CielabColour one, CielabColour other) => one.StraightDistanceTo(other);

    private static double Ciede(CielabColour one, CielabColour other) => one.DifferenceFrom(other);

    // The mean CIEDE2000 difference between what is composed and what is recorded, over ground, pattern and eye at every stage.
    private static double Judge(SpeciesCatalogue catalogue, Distance step, double half, Distance nearest)
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

        return errors.Average();
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
