using Clutchwright.Genetics.Loci;

namespace Clutchwright.Genetics.Looks;

/// <summary>What hides what, between visible expressions of different loci.</summary>
internal sealed class MaskTable
{
    private readonly Dictionary<Expression, Mask> _masks = [];

    private MaskTable()
    {
    }

    public static MaskTable Of(Species species, IReadOnlyList<MaskDefinition> definitions)
    {
        var table = new MaskTable();
        var allAlleles = species.Loci.SelectMany(l => l.Alleles.Skip(1)).ToArray();
        var rank = 0;
        foreach (var definition in definitions)
        {
            var through = Alleles(species, definition.Through);
            var faintly = Alleles(species, definition.Faintly);
            var hidden = definition.Hides is { } names ? Alleles(species, names) : [.. allAlleles];
            hidden.ExceptWith(through);
            foreach (var id in definition.By)
            {
                var by = species.FindExpression(id) ?? throw new SpeciesException($"A mask is by an unknown form '{id}'.");
                var mask = new Mask(by, rank++, FormsOf(species, by.Locus, hidden), FormsOf(species, by.Locus, faintly));
                if (!table._masks.TryAdd(by, mask))
                {
                    throw new SpeciesException($"The form '{id}' stands under two masks.");
                }
            }
        }

        return table;
    }

    public Mask? MaskOf(Expression expression) => _masks.GetValueOrDefault(expression);

    /// <summary>Finds which of the given maskers act: one that is itself hidden hides nothing. Of two that hide each other the one
    /// listed first acts.</summary>
    /// <remarks>Of a longer ring the first listed acts, then what is left is judged anew. What acts stays in sight, even if a later
    /// one of the ring would hide it; so the maskers in sight tell which ones act.</remarks>
    public IReadOnlyList<Mask> Acting(IEnumerable<Expression> expressions)
    {
        var maskers = expressions.Select(MaskOf).OfType<Mask>().OrderBy(m => m.Rank).ToList();
        var acting = new List<Mask>();
        while (maskers.Count > 0)
        {
            // One that no remaining masker hides; else of a ring of mutual hiding that nothing outside it hides, the first listed.
            var next = maskers.Find(m => !maskers.Exists(o => o.Hides(m.By)))
                ?? maskers.Find(m => maskers.TrueForAll(o => !Reaches(o, m, maskers) || Reaches(m, o, maskers)))!;
            acting.Add(next);
            maskers.RemoveAll(m => m == next || next.Hides(m.By));
        }

        return acting;
    }

    // Whether one masker hides another, or hides one that does, and so on.
    private static bool Reaches(Mask from, Mask to, List<Mask> among)
    {
        var reached = new List<Mask> { from };
        for (var i = 0; i < reached.Count; i++)
        {
            reached.AddRange(among.Where(m => reached[i].Hides(m.By) && !reached.Contains(m)));
        }

        return reached.Contains(to);
    }

    // A form counts as made by these alleles when no other mutant allele has a part in it: one that shows through keeps it in sight.
    private static HashSet<Expression> FormsOf(Species species, Locus own, HashSet<Allele> alleles)
    {
        var result = new HashSet<Expression>();
        foreach (var locus in species.Loci.Where(l => l != own && l.Alleles.Any(alleles.Contains)))
        {
            var (made, spared) = (new HashSet<Expression>(), new HashSet<Expression>());
            for (var a = 0; a < locus.Alleles.Count; a++)
            {
                for (var b = Math.Max(a, 1); b < locus.Alleles.Count; b++)
                {
                    var all = (a == 0 || alleles.Contains(locus.Alleles[a])) && alleles.Contains(locus.Alleles[b]);
                    (all ? made : spared).Add(locus.ExpressionOf(a, b));
                }
            }

            made.ExceptWith(spared);
            result.UnionWith(made.Where(e => e.IsVisible));
        }

        return result;
    }

    private static HashSet<Allele> Alleles(Species species, IEnumerable<string> ids)
    {
        var result = new HashSet<Allele>();
        foreach (var id in ids)
        {
            if (species.FindAllele(id) is { } allele)
            {
                result.Add(allele);
            }
            else if (species.FindLocus(id) is { } locus)
            {
                result.UnionWith(locus.Alleles.Skip(1));
            }
            else
            {
                throw new SpeciesException($"A mask names '{id}', which is neither an allele nor a locus.");
            }
        }

        return result;
    }
}

/// <summary>What one visible form hides.</summary>
/// <param name="By">The form that hides.</param>
/// <param name="Rank">The place of the form among all that hide, in the order of the description, from 0: who hides first where two hide each other.</param>
/// <param name="Hidden">The forms hidden.</param>
/// <param name="Faint">Of those, the forms that still show weakly.</param>
internal sealed record Mask(Expression By, int Rank, IReadOnlySet<Expression> Hidden, IReadOnlySet<Expression> Faint)
{
    public bool Hides(Expression expression) => Hidden.Contains(expression);
}
