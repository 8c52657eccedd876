using Clutchwright.Catalogue;
using Clutchwright.Catalogue.Entries;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Desk.Genes;

/// <summary>Puts entries of the catalogue into lines.</summary>
internal sealed class GeneWording(OpenCatalogue open)
{
    private readonly SpeciesCatalogue _catalogue = open.Catalogue;

    public const string Combination = "combination";
    public const string Form = "form";
    public const string Allele = "allele";

    public IEnumerable<GeneLine> All() => _catalogue.Alleles.Select(Line)
        .Concat(_catalogue.Forms.Where(IsItsOwn).Select(Line))
        .Concat(_catalogue.Combinations.Select(Line))
        .OrderBy(l => l.Name, StringComparer.OrdinalIgnoreCase);

    /// <summary>A form that no allele's entry already speaks of: it has a name of its own.</summary>
    public static bool IsItsOwn(FormEntry form) =>
        form.Expression.IsNamed
        && form.Expression.Locus.Alleles.Skip(1).All(a =>
            !string.Equals(form.Expression.Id, a.Id, StringComparison.Ordinal)
            && !string.Equals(form.Expression.Id, $"super-{a.Id}", StringComparison.Ordinal));

    public GeneLine Line(AlleleEntry entry)
    {
        var form = Shown(entry.Allele);
        return new(
            entry.Allele.Id,
            entry.Allele.Name,
            Allele,
            Wording.Inheritance(entry.Allele),
            entry.Allele.Locus.Name,
            Wording.Sentence(entry.Allele.Mode == InheritanceMode.Recessive ? entry.TwoCopies ?? entry.OneCopy : entry.OneCopy),
            Gravest(DangersOf(entry.Allele)),
            open.Wording.LookByAge([form]).Stages);
    }

    public GeneLine Line(FormEntry entry) => new(
        entry.Expression.Id,
        entry.Expression.Name,
        Form,
        string.Join(", ", entry.Pairs.Select(p => PairNames(entry.Expression.Locus, p.First, p.Second)).Take(4)),
        entry.Expression.Locus.Name,
        Wording.Sentence(entry.Shows ?? string.Empty),
        Gravest(DangersOf(entry)),
        open.Wording.LookByAge([entry.Expression]).Stages);

    /// <summary>The two alleles by name: what a form is made of, where its own name would say nothing.</summary>
    public static string PairNames(Locus locus, int first, int second) => first == 0
        ? $"{locus.Alleles[second].Name}/+"
        : $"{locus.Alleles[first].Name}/{locus.Alleles[second].Name}";

    public GeneLine Line(Combination entry) => new(
        IdOf(entry),
        entry.Name,
        Combination,
        entry.Of,
        null,
        Wording.Sentence(entry.Text ?? string.Empty),
        null,
        open.Wording.LookByAge(entry.Expressions).Stages);

    public static string IdOf(Combination combination) =>
        string.Join('-', combination.Name.ToLowerInvariant().Split([' ', '/', '\''], StringSplitOptions.RemoveEmptyEntries));

    /// <summary>The form an allele is known by: of a recessive one two copies, of any other one copy.</summary>
    public static Expression Shown(Allele allele) => allele.Mode == InheritanceMode.Recessive
        ? allele.Locus.ExpressionOf(allele.Index, allele.Index)
        : allele.Locus.ExpressionOf(0, allele.Index);

    public IReadOnlyList<Danger> DangersOf(Allele allele) => _catalogue.Species.Dangers
        .Where(d => d.Definition.When.Any(w => w switch
        {
            GenotypeCondition.Carries carries => string.Equals(carries.AlleleId, allele.Id, StringComparison.Ordinal),
            GenotypeCondition.IsPair pair => string.Equals(pair.FirstId, allele.Id, StringComparison.Ordinal)
                || string.Equals(pair.SecondId, allele.Id, StringComparison.Ordinal),
            _ => false,
        }))
        .OrderByDescending(d => d.Severity)
        .ToArray();

    public IReadOnlyList<Danger> DangersOf(FormEntry form) => form.Pairs
        .SelectMany(p => new[] { p.First, p.Second })
        .Where(a => a > 0)
        .Distinct()
        .SelectMany(a => DangersOf(form.Expression.Locus.Alleles[a]))
        .Distinct()
        .Where(d => d.Definition.When.All(w => w is not GenotypeCondition.IsPair pair
            || form.Pairs.Any(p => IsPair(pair, form.Expression.Locus, p.First, p.Second))))
        .ToArray();

    private static bool IsPair(GenotypeCondition.IsPair pair, Locus locus, int first, int second)
    {
        var (a, b) = (locus.Alleles[first].Id, locus.Alleles[second].Id);
        return (string.Equals(pair.FirstId, a, StringComparison.Ordinal) && string.Equals(pair.SecondId, b, StringComparison.Ordinal))
            || (string.Equals(pair.FirstId, b, StringComparison.Ordinal) && string.Equals(pair.SecondId, a, StringComparison.Ordinal));
    }

    private static string? Gravest(IReadOnlyList<Danger> dangers) =>
        dangers.Count == 0 ? null : dangers.Max(d => d.Severity).ToString().ToLowerInvariant();
}
