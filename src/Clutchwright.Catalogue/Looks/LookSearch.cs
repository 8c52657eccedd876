using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.Looks;

/// <summary>Finds the makings that show a look, best first, without composing every one of them.</summary>
/// <remarks>
/// A makings' sum of steps is never below that of some of its parts, and its colours stay in the box that its strongest parts and all weaker
/// ones span; so what is begun is put in a queue by the least its finished makings can come to, next to finished ones, and whatever is
/// taken from the queue finished is next best. Parts are added strongest first. docs/model/looks.md has the rule.
/// </remarks>
internal sealed class LookSearch
{
    private readonly SpeciesCatalogue _catalogue;
    private readonly PartTable _table;
    private readonly LookWish _wish;
    private readonly LookSight _sight;
    private readonly MadeForm[]?[] _made;
    private readonly int[] _strongest;
    private readonly CielabBox[,] _boxes;
    private readonly PriorityQueue<Found, (double Sum, int Order)> _queue = new();
    private int _order;

    public LookSearch(SpeciesCatalogue catalogue, PartTable table, LookWish wish)
    {
        (_catalogue, _table, _wish) = (catalogue, table, wish);
        _sight = new(wish, table);
        var maker = new FormMaker(catalogue, wish);
        _made = [.. table.Parts.Select(p => maker.Make(p.Expressions))];
        var rank = table.Weakest[(int)wish.MainStage];
        _strongest = rank is null ? [] : [.. Enumerable.Range(0, table.Parts.Count).Where(p => _made[p] is not null).OrderByDescending(p => rank[p])];
        _boxes = WeakerBoxes();
    }

    /// <summary>Lists the makings, the least sum of steps first.</summary>
    public IEnumerable<LookMatch> Run(CancellationToken cancel)
    {
        Begin();
        while (_queue.TryDequeue(out var found, out _))
        {
            cancel.ThrowIfCancellationRequested();
            if (found.IsBegun)
            {
                Expand(found);
            }
            else if (found.Whole is { } whole)
            {
                yield return whole;
            }
            else if (Check(found) is { } match)
            {
                _queue.Enqueue(found with { Whole = match }, (match.Steps.Sum, found.Order));
            }
        }
    }

    // Every stated look, and every one that can be the strongest part of a composed one.
    private void Begin()
    {
        if (_table.Normal is { } normal && _wish.With.Count == 0)
        {
            State(normal, -1, []);
        }

        for (var part = 0; part < _table.Parts.Count; part++)
        {
            if (_made[part] is { } made)
            {
                State(_table.Parts[part], part, made);
            }
        }

        if (_table.Normal is not null)
        {
            for (var place = 0; place < _strongest.Length; place++)
            {
                Start([place]);
            }
        }
    }

    private void State(LookEntry entry, int part, MadeForm[] made)
    {
        var index = _table.Index[part + (_table.Normal is null ? 0 : 1)];
        if (HasAll(made)
            && _sight.HasWhite(entry.White)
            && _sight.HasWords(entry.Ground, entry.Form, entry.Head)
            && _sight.Distance((stage, place) => index[(int)stage, place]) is { } distance)
        {
            Enqueue(new([], part < 0 ? [] : [part], false, null, distance, _order), distance + RankingSteps.Of(entry) + Costs(made));
        }
    }

    private void Expand(Found begun)
    {
        for (var next = begun.Places[^1] + 1; next < _strongest.Length; next++)
        {
            int[] places = [.. begun.Places, next];
            int[] parts = [.. places.Select(p => _strongest[p])];
            if (!AreApart(parts))
            {
                continue;
            }

            var made = parts.SelectMany(p => _made[p]!).ToArray();
            if (made.Length <= _wish.MostGenes && HasAll(made) && HasLook(parts)
                && _sight.Distance((stage, place) => _table.Mix(parts, stage, place)) is { } distance)
            {
                Enqueue(new([], parts, false, null, distance, _order), distance + Doubt(parts) + Costs(made));
            }

            if (made.Length < _wish.MostGenes)
            {
                Start(places);
            }
        }
    }

    // Puts a making that is only begun in the queue, by the least that any making it is the strongest part of can come to.
    private void Start(int[] places)
    {
        int[] parts = [.. places.Select(p => _strongest[p])];
        var genes = parts.Sum(p => _made[p]!.Length);
        if (genes >= _wish.MostGenes || places[^1] + 1 >= _strongest.Length || !CanHaveAll(parts, _wish.MostGenes - genes) || !CanHaveLook(parts))
        {
            return;
        }

        var least = _sight.Least(place => BoxOf(places, place));
        if (!double.IsPositiveInfinity(least))
        {
            var doubt = Math.Max(Doubt(parts), RankingSteps.Composed);
            Enqueue(new(places, parts, true, null, least, _order), least + doubt + Costs(parts.SelectMany(p => _made[p]!)) + RankingSteps.Copy);
        }
    }

    private void Enqueue(Found found, double sum) => _queue.Enqueue(found, (sum, _order++));

    // Only what is next in the queue is looked at closely: whether these are the parts the rule takes, whether each can be seen, and what harms.
    private LookMatch? Check(Found found)
    {
        var entries = found.Parts.Select(p => _table.Parts[p]).ToArray();
        var forms = entries.SelectMany(e => e.Expressions).OrderBy(e => e.Locus.Index).ToArray();
        if (entries.Length > 1 && (_catalogue.LookBook.Find(forms) is not null
            || !_catalogue.LookBook.PartsOf(forms).Parts.ToHashSet().SetEquals(entries)
            || _catalogue.Species.SeenOf(forms).Count < forms.Length))
        {
            return null;
        }

        var made = found.Parts.SelectMany(p => _made[p]!).OrderBy(m => m.Form.Locus.Index).ToArray();
        var dangers = _catalogue.DangersOf(made);
        if (_wish.IsWithoutHarm && dangers.Any(d => d.Severity >= Severity.Suffering))
        {
            return null;
        }

        var doubt = entries.Length > 1 ? Doubt(found.Parts) : RankingSteps.Of(entries.Length == 1 ? entries[0] : _table.Normal!);
        var isMeasured = _wish.Tones.Count > 0 || _wish.Course == LookCourse.Holds;
        return new(
            made,
            isMeasured ? found.Distance : null,
            new(found.Distance, doubt, made.Sum(m => m.Copies) * RankingSteps.Copy, Missing(made), RankingSteps.Of(dangers)),
            dangers);
    }

    private double Doubt(int[] parts)
    {
        var entries = parts.Select(p => _table.Parts[p]).ToArray();
        return RankingSteps.Composed
            + (RankingSteps.FurtherPart * Math.Max(0, entries.Length - 2))
            + entries.Max(e => RankingSteps.Of(e.Evidence.Grade))
            + entries.Max(e => RankingSteps.Of(e.Varies))
            + entries.Max(e => e.IsRecorded ? 0.0 : RankingSteps.NotRecorded);
    }

    private static double Costs(IEnumerable<MadeForm> made)
    {
        var sum = 0.0;
        foreach (var m in made)
        {
            sum += (m.Copies * RankingSteps.Copy) + (m.Missing.Count * RankingSteps.MissingAllele);
        }

        return sum;
    }

    private static double Missing(IEnumerable<MadeForm> made) => made.Sum(m => m.Missing.Count * RankingSteps.MissingAllele);

    private bool AreApart(int[] parts)
    {
        var last = _table.Parts[parts[^1]].Expressions;
        for (var i = 0; i < parts.Length - 1; i++)
        {
            foreach (var form in _table.Parts[parts[i]].Expressions)
            {
                foreach (var other in last)
                {
                    if (form.Locus == other.Locus)
                    {
                        return false;
                    }
                }
            }
        }

        return true;
    }

    private bool HasAll(IReadOnlyList<MadeForm> made) => _wish.With.All(a => made.Any(m => Has(m, a)));

    private static bool Has(MadeForm made, Allele allele) =>
        made.Form.Locus == allele.Locus && (made.First == allele.Index || made.Second == allele.Index);

    private bool CanHaveAll(int[] parts, int more) =>
        _wish.With.Count == 0 || _wish.With.Select(a => a.Locus).Distinct().Count(l => !parts.Any(p => _table.Parts[p].Expressions.Any(e => e.Locus == l))) <= more;

    private bool CanHaveLook(int[] strongestFirst)
    {
        var (white, ground, form, head) = LookOf(strongestFirst);
        return (_wish.White is not { } wished || !(white > wished.Most)) && _sight.CanHaveWords(ground, form, head);
    }

    private bool HasLook(int[] strongestFirst)
    {
        var (white, ground, form, head) = LookOf(strongestFirst);
        return _sight.HasWhite(white)
            && _sight.HasWords(ground ?? _table.Normal!.Ground, form ?? _table.Normal!.Form, head ?? _table.Normal!.Head);
    }

    // Words come from the strongest part that has any, white from the whitest.
    private (WhiteExtent? White, string? Ground, string? Form, string? Head) LookOf(int[] strongestFirst)
    {
        string? ground = null, form = null, head = null;
        var white = _table.Normal!.White;
        foreach (var part in strongestFirst)
        {
            var entry = _table.Parts[part];
            (ground, form, head) = (ground ?? entry.Ground, form ?? entry.Form, head ?? entry.Head);
            white = white is null || entry.White > white ? entry.White ?? white : white;
        }

        return (white, ground, form, head);
    }

    // Where the colours of Normal and of all parts weaker than the one at a place lie, by place of the tone.
    private CielabBox[,] WeakerBoxes()
    {
        var boxes = new CielabBox[_strongest.Length, PartTable.Places];
        for (var tone = 0; tone < PartTable.Places && _strongest.Length > 0; tone++)
        {
            var box = CielabBox.Of(_table.NormalAt(_wish.MainStage, tone));
            for (var place = _strongest.Length - 1; place >= 0; place--)
            {
                boxes[place, tone] = box;
                box = box.With(_table.ToneAt(_strongest[place], _wish.MainStage, tone).Lab);
            }
        }

        return boxes;
    }

    private CielabBox BoxOf(int[] places, int tone)
    {
        var box = _boxes[places[^1], tone];
        for (var i = places.Length - 1; i >= 0; i--)
        {
            var (lab, share) = _table.ToneAt(_strongest[places[i]], _wish.MainStage, tone);
            box = box.Towards(lab, share);
        }

        return box;
    }

    /// <summary>What stands in the queue.</summary>
    /// <param name="Places">Of a making only begun, the places of its parts among the strongest.</param>
    /// <param name="Parts">Its parts, strongest first; none: the normal animal.</param>
    /// <param name="IsBegun">Whether weaker parts are still to be added.</param>
    /// <param name="Whole">The making, looked at closely; <c>null</c>: not yet.</param>
    /// <param name="Distance">From the tones wished.</param>
    /// <param name="Order">When it was found.</param>
    private sealed record Found(int[] Places, int[] Parts, bool IsBegun, LookMatch? Whole, double Distance, int Order);
}
