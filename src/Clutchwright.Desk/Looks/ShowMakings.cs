using Clutchwright.Catalogue.Looks;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Looks;

/// <summary>How do these makings look, side by side?</summary>
public sealed class ShowMakings
{
    private readonly OpenCatalogue _open;
    private readonly MakingWording _wording;

    internal ShowMakings(OpenCatalogue open) => (_open, _wording) = (open, new(open));

    /// <summary>Shows makings given as trade text; what is carried unseen is left out.</summary>
    /// <param name="texts">The makings.</param>
    /// <param name="stage">The stage of life that colours are told of.</param>
    /// <returns>The makings that could be read, in order, and what is wrong with the others.</returns>
    public (IReadOnlyList<Making> Makings, IReadOnlyList<AskedWrongly> Problems) Run(IReadOnlyList<string> texts, AgeStage stage = AgeStage.Adult)
    {
        var (makings, problems) = (new List<Making>(), new List<AskedWrongly>());
        foreach (var text in texts)
        {
            if (Read(text, problems) is { } belief)
            {
                makings.Add(Show(belief, stage));
            }
        }

        return (makings, problems);
    }

    private GenotypeBelief? Read(string text, List<AskedWrongly> problems)
    {
        var read = _open.Read(text);
        if (!read.IsRead)
        {
            problems.Add(ParentReader.Problem(text, read.Problem));
            return null;
        }

        var belief = read.Value.ToBelief(read.Value.Sex ?? _open.Species.SexSystem.Heterogametic().Opposite());
        if (!belief.IsRead)
        {
            problems.Add(ParentReader.Problem(text, belief.Problem));
            return null;
        }

        return belief.Value;
    }

    private Making Show(GenotypeBelief belief, AgeStage stage)
    {
        var genotype = belief.MostLikely();
        var made = _open.Species.Loci
            .Select(l => (Locus: l, Pair: genotype.AllelesAt(l)))
            .Select(p => new MadeForm(p.Locus.ExpressionOf(p.Pair.First, p.Pair.Second), p.Pair.First, p.Pair.Second, []))
            .Where(m => m.Form.IsVisible)
            .ToArray();
        var seen = _open.Species.SeenOf([.. made.Select(m => m.Form)]);
        return _wording.Making(
            [.. made.Where(m => seen.Contains(m.Form))],
            [.. _open.Species.Dangers.Where(d => !d.ChanceIn(belief).IsImpossible).OrderByDescending(d => d.Severity)],
            stage);
    }
}
