using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Tests.Twin;

/// <summary>What pairs of alleles show, what hides what, and what harms, read straight from the description of a species.</summary>
internal sealed class TwinForms(SpeciesDefinition species)
{
    // Kept once worked out, else nearly all the time would go into comparing ids.
    private readonly Dictionary<(int Locus, int A, int B), string?> _forms = [];
    private readonly Dictionary<(string Hider, string Form), bool> _hides = [];

    /// <summary>The id of the form a pair takes when it shows; <c>null</c>: looks normal.</summary>
    public string? Form(int locus, int a, int b)
    {
        if (!_forms.TryGetValue((locus, a, b), out var form))
        {
            _forms.Add((locus, a, b), form = WorkOutForm(locus, a, b));
        }

        return form;
    }

    /// <summary>The share of animals with a pair that show its form. An allele has a part in showing unless the form is that of one copy of the other.</summary>
    public Probability Penetrance(int locus, int a, int b)
    {
        var shares = new List<Probability>();
        foreach (var (own, other) in new[] { (a, b), (b, a) }.Take(a == b ? 1 : 2))
        {
            if (own > 0 && (a == b || Form(locus, other, 0) is null || Form(locus, other, 0) != Form(locus, a, b) || Form(locus, own, 0) == Form(locus, a, b)))
            {
                shares.Add(species.Loci[locus].Alleles[own - 1].Penetrance);
            }
        }

        return shares.Count == 1
            ? shares[0]
            : shares.Aggregate(Probability.Certain, (miss, p) => miss * p.Complement).Complement;
    }

    /// <summary>The first stage at which a form can be told.</summary>
    public AgeStage TellableFrom(int locus, string form)
    {
        var definition = species.Loci[locus];
        return definition.Forms.FirstOrDefault(f => f.Id == form)?.TellableFrom
            ?? definition.Alleles.FirstOrDefault(a => a.Id == form || $"super-{a.Id}" == form)?.TellableFrom
            ?? form.Split('/').Max(id => definition.Alleles.First(a => a.Id == id).TellableFrom);
    }

    /// <summary>Finds what of the forms of one animal is in sight, and what shows faintly.</summary>
    /// <param name="shown">By locus, the form shown if nothing hides it.</param>
    public (string?[] Seen, List<string> Faint) Look(IReadOnlyList<string?> shown)
    {
        // A hider that nothing left hides acts; what an acting one hides is out. Where only rings of mutual hiding are left, the first
        // listed acts of those that are hidden, over however many steps, by none but what they hide in turn.
        var undecided = species.Masks.SelectMany(m => m.By).Where(shown.Contains).ToList();
        var acting = new List<string>();
        while (undecided.Count > 0)
        {
            var over = Closure(undecided);
            var next = undecided.First(f => undecided.TrueForAll(o => !over.Contains((o, f)) || over.Contains((f, o))));
            undecided.Remove(next);
            undecided.RemoveAll(f => Hides(next, f));
            acting.Add(next);
        }

        var faint = new List<string>();
        var seen = shown.ToArray();
        for (var locus = 0; locus < seen.Length; locus++)
        {
            var form = seen[locus];
            if (form is null || acting.Contains(form))
            {
                continue;
            }

            var hiders = acting.Where(h => Hides(h, form)).ToArray();
            if (hiders.Length > 0)
            {
                seen[locus] = null;
                if (hiders.All(h => IsMadeOf(form, h, Mask(h).Faintly)))
                {
                    faint.Add(form);
                }
            }
        }

        return (seen, faint);
    }

    /// <summary>The share of an animal's genotype that becomes a live hatchling.</summary>
    public Probability Survival(Sex sex, Func<int, (int First, int Second)> pair) => species.Dangers
        .Where(d => IsMet(d, sex, pair))
        .Aggregate(Probability.Certain, (share, d) => share * d.Viability.Egg * d.Viability.Hatch);

    public bool IsMet(DangerDefinition danger, Sex sex, Func<int, (int First, int Second)> pair) =>
        (danger.Sex is null || danger.Sex == sex) && danger.When.All(condition =>
        {
            string[] named = condition switch
            {
                GenotypeCondition.Carries carries => [carries.AlleleId],
                GenotypeCondition.IsPair both => [both.FirstId, both.SecondId],
                _ => throw new InvalidOperationException(),
            };
            var locus = Enumerable.Range(0, species.Loci.Count)
                .First(l => species.Loci[l].Alleles.Any(a => named.Contains(a.Id)));
            var (a, b) = pair(locus);
            string[] own = [Id(locus, a), Id(locus, b)];
            return condition is GenotypeCondition.Carries
                ? own.Contains(named[0])
                : own.Order(StringComparer.Ordinal).SequenceEqual(named.Order(StringComparer.Ordinal));
        });

    // Every pair of forms of which the first hides the second over one or more steps.
    private HashSet<(string Hider, string Hidden)> Closure(List<string> forms)
    {
        var over = forms.SelectMany(_ => forms, (a, b) => (a, b)).Where(p => Hides(p.a, p.b)).ToHashSet();
        foreach (var middle in forms)
        {
            foreach (var from in forms)
            {
                foreach (var to in forms)
                {
                    if (over.Contains((from, middle)) && over.Contains((middle, to)))
                    {
                        over.Add((from, to));
                    }
                }
            }
        }

        return over;
    }

    private string? WorkOutForm(int locus, int a, int b)
    {
        var definition = species.Loci[locus];
        if (Stated(definition, a, b) is { } stated)
        {
            return stated.Id;
        }

        if (a == 0 || b == 0)
        {
            return a == b ? null : OneCopy(definition, Math.Max(a, b));
        }

        var (first, second) = (definition.Alleles[Math.Min(a, b) - 1], definition.Alleles[Math.Max(a, b) - 1]);
        if (a == b)
        {
            return first.Mode switch
            {
                InheritanceMode.Recessive => first.Id,
                InheritanceMode.Dominant => OneCopy(definition, a),
                _ => $"super-{first.Id}",
            };
        }

        return (first.Mode == InheritanceMode.Recessive) == (second.Mode == InheritanceMode.Recessive)
            ? $"{first.Id}/{second.Id}"
            : OneCopy(definition, first.Mode == InheritanceMode.Recessive ? Math.Max(a, b) : Math.Min(a, b));
    }

    private static FormDefinition? Stated(LocusDefinition locus, int a, int b)
    {
        var (first, second) = (Id(locus, a), Id(locus, b));
        return locus.Forms.FirstOrDefault(f => f.Pairs.Contains((first, second)) || f.Pairs.Contains((second, first)));
    }

    private static string Id(LocusDefinition locus, int allele) => allele == 0 ? "+" : locus.Alleles[allele - 1].Id;

    private static string? OneCopy(LocusDefinition locus, int allele) =>
        Stated(locus, 0, allele)?.Id
        ?? (locus.Alleles[allele - 1].Mode == InheritanceMode.Recessive ? null : locus.Alleles[allele - 1].Id);

    private string Id(int locus, int allele) => Id(species.Loci[locus], allele);

    private MaskDefinition Mask(string by) => species.Masks.First(m => m.By.Contains(by));

    // A hider hides a form of another locus if every mutant allele of every pair that takes the form is hidden and does not show through.
    private bool Hides(string hider, string form)
    {
        if (!_hides.TryGetValue((hider, form), out var hides))
        {
            _hides.Add((hider, form), hides = WorkOutHides(hider, form));
        }

        return hides;
    }

    private bool WorkOutHides(string hider, string form)
    {
        var mask = Mask(hider);
        return IsMadeOf(form, hider, mask.Hides) && !LocusPairs(form).Any(p => p.Alleles.Any(a => mask.Through.Contains(a.Allele) || mask.Through.Contains(a.Locus)));
    }

    private bool IsMadeOf(string form, string hider, IReadOnlyList<string>? names)
    {
        var pairs = LocusPairs(form).ToArray();
        return pairs[0].Locus != LocusPairs(hider).First().Locus
            && pairs.All(p => p.Alleles.All(a => names is null || names.Contains(a.Allele) || names.Contains(a.Locus)));
    }

    // Every pair that takes a form, with its mutant alleles and their locus.
    private IEnumerable<(int Locus, (string Allele, string Locus)[] Alleles)> LocusPairs(string form)
    {
        for (var locus = 0; locus < species.Loci.Count; locus++)
        {
            for (var a = 0; a <= species.Loci[locus].Alleles.Count; a++)
            {
                for (var b = a; b <= species.Loci[locus].Alleles.Count; b++)
                {
                    if (Form(locus, a, b) == form)
                    {
                        yield return (locus, new[] { a, b }.Where(i => i > 0).Select(i => (Id(locus, i), species.Loci[locus].Id)).ToArray());
                    }
                }
            }
        }
    }
}
