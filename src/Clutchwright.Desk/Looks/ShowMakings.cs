using Clutchwright.Catalogue.Looks;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Desk.Looks;

/// <summary>How do these makings look, side by side?</summary>
public sealed class ShowMakings
{
    private readonly OpenCatalogue _open;
    private readonly MakingWording _wording;

    internal ShowMakings(OpenCatalogue open) => (_open, _wording) = (open, new(open));

    /// <summary>Shows makings given as wants; what is carried unseen is left out.</summary>
    /// <param name="texts">The makings.</param>
    /// <returns>The makings that could be read, in order, and what is wrong with the others, the text as the place.</returns>
    public (IReadOnlyList<Making> Makings, IReadOnlyList<AskedWrongly> Problems) Run(IReadOnlyList<string> texts)
    {
        var (makings, problems) = (new List<Making>(), new List<AskedWrongly>());
        foreach (var text in texts)
        {
            var read = _open.Catalogue.Trade.ReadWant(text);
            if (!read.IsRead)
            {
                problems.Add(ParentReader.Problem(text, read.Problem));
            }
            else if (read.Value.Alternatives is not [var one])
            {
                problems.Add(new(text, "Several makings stand here; put each on the board by itself."));
            }
            else
            {
                makings.Add(Show(one));
            }
        }

        return (makings, problems);
    }

    private Making Show(WantedGenotype wanted)
    {
        var made = wanted.Loci.Select(Made).Where(m => m.Form.IsVisible).ToArray();
        var forms = made.Select(m => m.Form).ToArray();

        // A stated look is shown as stated, though one of its forms hides most of another.
        var seen = _open.Catalogue.LookOf(forms, AgeStage.Adult) is { ComposedFrom.Count: 0 } ? forms : _open.Species.SeenOf(forms);
        return _wording.Making([.. made.Where(m => seen.Contains(m.Form)).OrderBy(m => m.Form.Locus.Index)], _open.Catalogue.DangersOf(made), AgeStage.Adult);
    }

    // Of the pairs that will do, the first with the fewest mutant alleles, and of those the kindest.
    private MadeForm Made(WantedPairs wanted)
    {
        var (locus, count) = (wanted.Locus, wanted.Locus.Alleles.Count);
        return (from first in Enumerable.Range(0, count)
                from second in Enumerable.Range(first, count - first)
                where wanted.Allows(first, second, ordered: true) || wanted.Allows(second, first, ordered: true)
                select new MadeForm(locus.ExpressionOf(first, second), first, second, []))
            .MinBy(m => (m.Copies, _open.Catalogue.DangersOf([m]).Select(d => (int)d.Severity).DefaultIfEmpty(0).Max()))!;
    }
}
