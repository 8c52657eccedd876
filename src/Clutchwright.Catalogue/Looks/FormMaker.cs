using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.Looks;

/// <summary>Chooses for each form the pair of alleles that a wish allows and that takes the fewest and nearest; of several, the kindest.</summary>
internal sealed class FormMaker(SpeciesCatalogue catalogue, LookWish wish)
{
    private readonly Dictionary<Expression, MadeForm?> _known = [];

    /// <summary>The pairs for several forms; <c>null</c>: some form cannot be made as wished.</summary>
    public MadeForm[]? Make(IReadOnlyList<Expression> forms)
    {
        var made = new MadeForm[forms.Count];
        for (var i = 0; i < forms.Count; i++)
        {
            if (!_known.TryGetValue(forms[i], out var known))
            {
                _known.Add(forms[i], known = Make(forms[i]));
            }

            if (known is null)
            {
                return null;
            }

            made[i] = known;
        }

        return made;
    }

    private MadeForm? Make(Expression form)
    {
        var alleles = form.Locus.Alleles;
        var pairs = Lexicon.PairsOf(form);
        return pairs
            .Where(p => wish.With.Where(a => a.Locus == form.Locus).All(a => a.Index == p.First || a.Index == p.Second))
            .Where(p => !wish.Without.Contains(alleles[p.First]) && !wish.Without.Contains(alleles[p.Second]))
            .Select(p => new MadeForm(form, p.First, p.Second, Missing(alleles[p.First], alleles[p.Second])))
            .Where(m => !wish.IsOfThoseAtHand || m.Missing.Count == 0)
            .MinBy(m => (
                (m.Copies * RankingSteps.Copy) + (m.Missing.Count * RankingSteps.MissingAllele),
                pairs.Count == 1 ? 0.0 : RankingSteps.Of(catalogue.DangersOf([m]))));
    }

    private Allele[] Missing(Allele first, Allele second) => wish.AtHand is not { } atHand
        ? []
        : [.. new[] { first, second }.Distinct().Where(a => !a.IsWild && !atHand.Contains(a))];
}
