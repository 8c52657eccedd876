using Clutchwright.Catalogue.Looks;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.Tests.Looks;

/// <summary>The search for a look by looking at every making: all stated looks, and every set of visible forms of other loci whose look is
/// composed of two parts or more. Written from docs/model/looks.md.</summary>
internal static class SlowLooks
{
    /// <summary>The makings found with their sum of steps.</summary>
    public static Dictionary<string, double> Find(SpeciesCatalogue catalogue, LookWish wish)
    {
        var sets = catalogue.Looks.Select(l => l.Expressions.ToArray()).ToList();
        var forms = catalogue.Forms.Select(f => f.Expression).ToArray();
        Grow([], 0);
        var found = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var set in sets)
        {
            if (Sum(catalogue, wish, set) is { } sum)
            {
                found[Key(set)] = sum;
            }
        }

        return found;

        void Grow(Expression[] begun, int from)
        {
            if (begun.Length > 1)
            {
                sets.Add(begun);
            }

            for (var next = from; begun.Length < wish.MostGenes && next < forms.Length; next++)
            {
                if (begun.All(b => b.Locus != forms[next].Locus))
                {
                    Grow([.. begun, forms[next]], next + 1);
                }
            }
        }
    }

    public static string Key(LookMatch match) => Key(match.Forms);

    private static string Key(IEnumerable<Expression> forms) => string.Join(' ', forms.Select(f => f.Id).Order(StringComparer.Ordinal));

    private static double? Sum(SpeciesCatalogue catalogue, LookWish wish, Expression[] forms)
    {
        var isStated = catalogue.Looks.Any(l => Key(l.Expressions) == Key(forms));
        var look = catalogue.LookOf(forms, wish.MainStage)!;
        if (look.Unknown.Count > 0
            || (!isStated && (look.ComposedFrom.Count < 2 || catalogue.Species.SeenOf(forms).Count < forms.Length))
            || (wish.White is var (least, most) && !(look.White >= least && look.White <= most)))
        {
            return null;
        }

        var stages = Enum.GetValues<AgeStage>().Select(s => catalogue.LookOf(forms, s)!.Tones).ToArray();
        double?[] at = [.. stages.Select(s => Distance(wish, s))];
        var distance = wish.Course switch
        {
            LookCourse.AtOneAge => at[(int)wish.Stage],
            LookCourse.Comes => at[0] is null ? at[3] : null,
            LookCourse.Fades => at[3] is null ? at[0] : null,
            _ when wish.Tones.Count > 0 => at.Contains(null) ? null : at.Max(),
            _ => stages.Max(s => Math.Max(
                    stages[0].Ground.Lab.DifferenceFrom(s.Ground.Lab), stages[0].Pattern.Lab.DifferenceFrom(s.Pattern.Lab))) is var change
                && change <= wish.MostChange ? change : null,
        };
        if (distance is not { } known)
        {
            return null;
        }

        // Grades 0, 1, 3, 5; varying 0, 1, 3; not recorded 3; composed 4 and 2 for each part above two.
        LookEntry[] parts = isStated ? [catalogue.Looks.First(l => Key(l.Expressions) == Key(forms))] : [.. look.ComposedFrom];
        var doubt = parts.Max(p => p.Evidence.Grade switch
            {
                EvidenceGrade.Published => 0.0,
                EvidenceGrade.CommonPractice => 1.0,
                EvidenceGrade.Reported => 3.0,
                _ => 5.0,
            })
            + parts.Max(p => p.Varies switch { Variation.Little => 0.0, Variation.Much => 3.0, _ => 1.0 })
            + (parts.All(p => p.IsRecorded) ? 0.0 : 3.0)
            + (isStated ? 0.0 : 4.0 + (2.0 * (parts.Length - 2)));

        // Every form by the first of its pairs with the fewest copies, and of those with the least harm by itself.
        var pairs = forms
            .Select(f => catalogue.EntryOf(f).Pairs.OrderBy(Copies).ThenBy(p => Harm(catalogue, [f], [p])).First())
            .ToArray();
        var harm = Harm(catalogue, forms, pairs);
        return known + doubt + pairs.Sum(Copies) + harm;
    }

    private static double Harm(SpeciesCatalogue catalogue, Expression[] forms, (int First, int Second)[] pairs) => Enum.GetValues<Sex>()
        .SelectMany(sex =>
        {
            var genotype = Genotype.Wild(catalogue.Species, sex);
            for (var i = 0; i < forms.Length; i++)
            {
                genotype = genotype.With(forms[i].Locus, pairs[i].First, pairs[i].Second);
            }

            return catalogue.Species.Dangers.Where(d => d.ChanceIn(GenotypeBelief.Certain(genotype)).IsCertain);
        })
        .Select(d => d.Severity switch { Severity.Watch => 1.0, Severity.Suffering => 6.0, _ => 20.0 })
        .DefaultIfEmpty(0.0)
        .Max();

    private static int Copies((int First, int Second) pair) => (pair.First == 0 ? 0 : 1) + (pair.Second == 0 ? 0 : 1);

    private static double? Distance(LookWish wish, ToneSet tones)
    {
        var worst = 0.0;
        foreach (var tone in wish.Tones)
        {
            var nearest = tone.Places.Min(p => tone.Colours.Min(c => SlowCiede2000.Between(
                c, (p switch { TonePlace.Ground => tones.Ground, TonePlace.Pattern => tones.Pattern, _ => tones.Eye }).Lab)));
            if (nearest > tone.Most)
            {
                return null;
            }

            worst = Math.Max(worst, nearest);
        }

        return worst;
    }
}
