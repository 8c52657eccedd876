using Clutchwright.Catalogue.Entries;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Desk.Genes;

/// <summary>What is known of this gene, form or combination, and on what grounds?</summary>
public sealed class ShowGene
{
    private readonly OpenCatalogue _open;
    private readonly GeneWording _wording;

    internal ShowGene(OpenCatalogue open)
    {
        _open = open;
        _wording = new(open);
    }

    /// <summary>Shows an entry by its id or by any of its names; <c>null</c> if there is none.</summary>
    public GeneAnswer? Run(string id)
    {
        var catalogue = _open.Catalogue;
        if (catalogue.FindAllele(id) is { } allele)
        {
            return Of(allele);
        }

        if (catalogue.FindForm(id) is { } form)
        {
            return GeneWording.IsItsOwn(form) || Alleles(form) is not [var only] ? Of(form) : Of(catalogue.EntryOf(only));
        }

        var combination = catalogue.FindCombination(id)
            ?? catalogue.Combinations.FirstOrDefault(c => string.Equals(GeneWording.IdOf(c), id, StringComparison.OrdinalIgnoreCase));
        return combination is null ? null : Of(combination);
    }

    /// <summary>The nearest names to one that is not known.</summary>
    public IReadOnlyList<string> Nearest(string name) => _open.Catalogue.NearestNames(name);

    private GeneAnswer Of(AlleleEntry entry)
    {
        var (allele, locus) = (entry.Allele, entry.Allele.Locus);
        var claims = new List<Claim>
        {
            Claim("Inheritance", InheritanceText(allele), entry.Evidence),
            Claim("One copy", entry.OneCopy, null),
        };
        Add(claims, "Two copies", entry.TwoCopies ?? "Not known.", null);
        Add(claims, "With age", entry.WithAge, null);
        if (entry.IsSubtle)
        {
            Add(claims, "Hard to tell", "One copy is hard to tell by eye, on hatch day above all.", null);
        }

        if (entry.TellableFrom > AgeStage.Hatchling)
        {
            Add(claims, "When it can be told", $"Not on hatch day; from the {entry.TellableFrom.ToString().ToLowerInvariant()} stage on.", null);
        }

        Add(claims, "Locus", LocusText(locus), _open.Catalogue.EvidenceOf(locus));
        var single = GeneWording.Shown(allele);
        var super = locus.ExpressionOf(allele.Index, allele.Index);
        var looks = new List<LookWords> { _open.Wording.LookByAge([single]) };
        if (super != single && super.IsVisible)
        {
            looks.Add(_open.Wording.LookByAge([super]));
        }

        return new(
            _wording.Line(entry),
            entry.Also,
            claims,
            Neighbours(allele),
            looks.Where(l => l.Stages.Count > 0).ToArray(),
            _open.Catalogue.Combinations.Where(c => c.Expressions.Any(e => e == single || e == super)).Select(_wording.Line).ToArray(),
            Hiding([single, super]),
            _wording.DangersOf(allele).Select(d => _open.Wording.Danger(d, $"({Wording.Sentence(_open.Wording.Condition(d))})")).ToArray());
    }

    private GeneAnswer Of(FormEntry entry)
    {
        var claims = new List<Claim>();
        Add(claims, "What shows it", string.Join(", ", entry.Pairs.Select(p =>
            GeneWording.PairNames(entry.Expression.Locus, p.First, p.Second)))
            + (entry.Pairs.Count > 1 ? ". These cannot be told apart by eye." : string.Empty), entry.Evidence);
        Add(claims, "Look", entry.Shows, null);
        Add(claims, "With age", entry.WithAge, null);
        if (!entry.IsRecorded)
        {
            Add(claims, "Not recorded", "This look is put together from its parts; no such animal is recorded here.", null);
        }

        Add(claims, "Locus", LocusText(entry.Expression.Locus), _open.Catalogue.EvidenceOf(entry.Expression.Locus));
        if (Alleles(entry) is [_, _, ..] && entry.Pairs.All(p => p.First != p.Second))
        {
            Add(claims, "Does not breed true", "It is made of two different alleles of one locus, so each of its young gets one or the other and none can breed true to it.", null);
        }

        return new(
            _wording.Line(entry),
            entry.Also,
            claims,
            [],
            new[] { _open.Wording.LookByAge([entry.Expression]) }.Where(l => l.Stages.Count > 0).ToArray(),
            Alleles(entry).Select(a => _wording.Line(_open.Catalogue.EntryOf(a))).ToArray(),
            Hiding([entry.Expression]),
            _wording.DangersOf(entry).Select(d => _open.Wording.Danger(d, $"({Wording.Sentence(_open.Wording.Condition(d))})")).ToArray());
    }

    private GeneAnswer Of(Combination entry)
    {
        var claims = new List<Claim> { Claim("Made of", entry.Of, entry.Evidence) };
        Add(claims, "Look", entry.Text, null);
        var parts = entry.Expressions
            .SelectMany(e => Alleles(_open.Catalogue.EntryOf(e)))
            .Distinct()
            .Select(a => _open.Catalogue.EntryOf(a))
            .ToArray();
        return new(
            _wording.Line(entry),
            entry.Also,
            claims,
            [],
            new[] { _open.Wording.LookByAge(entry.Expressions) }.Where(l => l.Stages.Count > 0).ToArray(),
            parts.Select(_wording.Line).ToArray(),
            Hiding(entry.Expressions),
            parts.SelectMany(p => _wording.DangersOf(p.Allele)).Distinct()
                .Select(d => _open.Wording.Danger(d, $"({Wording.Sentence(_open.Wording.Condition(d))})")).ToArray());
    }

    private Neighbour[] Neighbours(Allele allele) => allele.Locus.Alleles
        .Skip(1)
        .Where(other => other != allele)
        .Select(other =>
        {
            var form = allele.Locus.ExpressionOf(allele.Index, other.Index);
            return new Neighbour(
                other.Id,
                other.Name,
                form.IsVisible ? form.Name : _open.Catalogue.NormalName,
                form.IsVisible ? _open.Catalogue.EntryOf(form).Shows : null);
        })
        .ToArray();

    private string[] Hiding(IReadOnlyList<Expression> forms)
    {
        var lines = new List<string>();
        foreach (var mask in _open.Catalogue.Masks)
        {
            foreach (var by in mask.Definition.By.Select(_open.Species.FindExpression).OfType<Expression>().Where(forms.Contains))
            {
                var what = mask.Definition.Hides is { } hidden ? string.Join(", ", hidden.Select(Name)) : "nearly all else";
                var through = Shows(mask.Definition.Through, "through");
                var faint = Shows(mask.Definition.Faintly, "faintly");
                lines.Add($"{by.Name} hides {what}.{through}{faint} ({Wording.Grade(mask.Evidence)})");
            }
        }

        return [.. lines];

        string Shows(IReadOnlyList<string> ids, string how) => ids.Count == 0
            ? string.Empty
            : $" {string.Join(", ", ids.Select(Name))} {(ids.Count == 1 ? "shows" : "show")} {how}.";

        string Name(string id) => _open.Species.FindAllele(id)?.Name ?? _open.Species.FindLocus(id)?.Name ?? id;
    }

    private string InheritanceText(Allele allele)
    {
        var text = allele.Mode switch
        {
            InheritanceMode.Recessive => "Recessive: one copy looks normal, two copies show it.",
            InheritanceMode.IncompleteDominant => "Incomplete dominant: one copy shows it, two copies show something else.",
            _ => "Dominant: one copy shows it, and two copies are not known to look different.",
        };
        var isXY = _open.Species.SexSystem == SexSystem.XY;
        return allele.Locus.Placement is Placement.SexLinked
            ? $"{text} It lies on the sex chromosomes: a {(isXY ? "male" : "female")} with it on "
                + $"{_open.Species.SexSystem.Unshared()} gives it mostly to {(isXY ? "sons" : "daughters")}, with it on {_open.Species.SexSystem.Shared()} mostly to {(isXY ? "daughters" : "sons")}."
            : text;
    }

    private string LocusText(Locus locus)
    {
        var entry = _open.Catalogue.EntryOf(locus);
        var alleles = locus.Alleles.Count > 2 ? $" {locus.Alleles.Count - 1} alleles share it: {string.Join(", ", locus.Alleles.Skip(1).Select(a => a.Name))}." : string.Empty;
        var gene = entry.Gene is null ? string.Empty : $" Gene: {entry.Gene}.";
        var interval = entry.Recombination is { } range && locus.Placement is Placement.SexLinked linked
            ? $" Recombination with the sex-determining region: {linked.Recombination.Value:0.##} is reckoned with, {range.Least.Value:0.##} to {range.Most.Value:0.##} held possible."
            : string.Empty;
        return $"{locus.Name}.{gene}{alleles}{interval}{(entry.Note is null ? string.Empty : " " + Wording.Sentence(entry.Note))}";
    }

    private Claim Claim(string heading, string text, Evidence? evidence) => new(
        heading,
        Wording.Sentence(text) + (evidence?.Note is { } note ? " " + Wording.Sentence(note) : string.Empty),
        evidence is null ? null : Wording.Grade(evidence),
        evidence is null ? [] : _open.Wording.Sources(evidence));

    private void Add(List<Claim> claims, string heading, string? text, Evidence? evidence)
    {
        if (!string.IsNullOrWhiteSpace(text))
        {
            claims.Add(Claim(heading, text, evidence));
        }
    }

    private static Allele[] Alleles(FormEntry form) => form.Pairs
        .SelectMany(p => new[] { p.First, p.Second })
        .Where(a => a > 0)
        .Distinct()
        .Select(a => form.Expression.Locus.Alleles[a])
        .ToArray();
}
