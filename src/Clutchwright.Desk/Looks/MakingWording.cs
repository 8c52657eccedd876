using Clutchwright.Catalogue.Looks;
using Clutchwright.Desk.Genes;
using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Desk.Looks;

/// <summary>Puts makings into words.</summary>
internal sealed class MakingWording(OpenCatalogue open)
{
    public Making Making(LookMatch match, AgeStage stage) => Making(match.Made, match.Dangers, stage) with { Distance = match.Distance };

    public Making Making(IReadOnlyList<MadeForm> made, IReadOnlyList<Danger> dangers, AgeStage stage)
    {
        var forms = made.Select(m => m.Form).ToArray();
        var look = open.Wording.LookByAge(forms);
        var name = stage.ToString().ToLowerInvariant();
        var genotype = made.Aggregate(
            Genotype.Wild(open.Species, open.Species.SexSystem.Heterogametic().Opposite()),
            (all, m) => all.With(m.Form.Locus, m.First, m.Second));
        return new(
            open.Wording.Look(forms),
            GeneticNotation.Write(genotype),
            open.Wording.Label(forms),
            [.. made.Select(Locus)],
            look,
            look.Stages.FirstOrDefault(s => s.Stage == name),
            made.Sum(m => m.Copies),
            [.. dangers.Select(d => open.Wording.Danger(d))]);
    }

    /// <summary>A making as a want: every pair that shows the same.</summary>
    public static Want Want(LookMatch match) => new([new WantedGenotype(null, [.. match.Forms.Select(WantedPairs.Showing)])]);

    private MadeLocus Locus(MadeForm made)
    {
        var locus = made.Form.Locus;
        var pairs = open.Catalogue.EntryOf(made.Form).Pairs;
        return new(
            locus.Id,
            made.Form.Name,
            GeneOf(made),
            [.. pairs.OrderByDescending(p => p == (made.First, made.Second)).Select(p => GeneWording.PairNames(locus, p.First, p.Second))]);
    }

    // A form's own entry; else that of its allele.
    private string GeneOf(MadeForm made) => GeneWording.IsItsOwn(open.Catalogue.EntryOf(made.Form))
        ? made.Form.Id
        : made.Form.Locus.Alleles[made.Second].Id;
}
