using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Genetics.Loci;

/// <summary>A species ready for reckoning: its sex system, loci, linkage groups, what hides what, and its dangers.</summary>
/// <remarks>Immutable, and safe to use from many threads. Two species are the same only if they are the same object.</remarks>
public sealed class Species
{
    private readonly SpeciesDefinition _definition;
    private readonly Dictionary<string, Locus> _lociById;
    private readonly Dictionary<string, Allele> _allelesById = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Expression> _expressionsById = new(StringComparer.Ordinal);

    private Species(SpeciesDefinition definition)
    {
        _definition = definition;
        Id = definition.Id;
        SexSystem = definition.SexSystem;
        Loci = definition.Loci.Select((l, i) => new Locus(i, l)).ToArray();
        _lociById = Unique(Loci, l => l.Id, "locus");
        foreach (var locus in Loci)
        {
            if (locus.Alleles.Count == 1)
            {
                throw new SpeciesException($"Locus {locus.Id} has no mutant allele.");
            }

            foreach (var allele in locus.Alleles.Skip(1))
            {
                if (string.Equals(allele.Id, Allele.WildId, StringComparison.Ordinal))
                {
                    throw new SpeciesException($"Locus {locus.Id}: '{Allele.WildId}' is the wild allele, which is understood.");
                }

                Add(_allelesById, allele.Id, allele, "allele");
            }

            foreach (var expression in locus.Expressions)
            {
                Add(_expressionsById, expression.Id, expression, "form");
            }
        }

        Groups = LinkageMap.GroupsOf(Loci, SexSystem);
        SexGroup = Groups[^1];
        Masks = MaskTable.Of(this, definition.Masks);
        Dangers = definition.Dangers.Select(d => new Danger(this, d)).ToArray();
    }

    /// <summary>Gets the short name.</summary>
    public string Id { get; }

    /// <summary>Gets which sex has two different sex chromosomes.</summary>
    public SexSystem SexSystem { get; }

    /// <summary>Gets the loci in the order of the description.</summary>
    public IReadOnlyList<Locus> Loci { get; }

    /// <summary>Gets the linkage groups; every locus is in exactly one, and the sex chromosomes come last, always there.</summary>
    public IReadOnlyList<LinkageGroup> Groups { get; }

    /// <summary>Gets the sex chromosomes.</summary>
    public LinkageGroup SexGroup { get; }

    /// <summary>Gets the dangers in the order of the description.</summary>
    public IReadOnlyList<Danger> Dangers { get; }

    /// <summary>Gets what hides what.</summary>
    internal MaskTable Masks { get; }

    /// <summary>Checks a description and makes it ready.</summary>
    /// <exception cref="SpeciesException">The description contradicts itself; the message says where.</exception>
    public static Species From(SpeciesDefinition definition) => new(definition);

    /// <summary>The same species with another recombination fraction between a sex-linked locus and the sex-determining region.</summary>
    /// <param name="locusId">The locus.</param>
    /// <param name="recombination">The fraction, in the sex with two different sex chromosomes.</param>
    /// <exception cref="ArgumentException">There is no such locus, or it does not lie on the sex chromosomes.</exception>
    public Species WithRecombination(string locusId, RecombinationFraction recombination)
    {
        if (FindLocus(locusId)?.Placement is not Placement.SexLinked placement)
        {
            throw new ArgumentException($"'{locusId}' is not a sex-linked locus.", nameof(locusId));
        }

        return From(_definition with
        {
            Loci = _definition.Loci
                .Select(l => string.Equals(l.Id, locusId, StringComparison.Ordinal)
                    ? l with { Placement = placement with { Recombination = recombination } }
                    : l)
                .ToArray(),
        });
    }

    /// <summary>The locus of an id, or <c>null</c>.</summary>
    public Locus? FindLocus(string id) => _lociById.GetValueOrDefault(id);

    /// <summary>The mutant allele of an id, or <c>null</c>.</summary>
    public Allele? FindAllele(string id) => _allelesById.GetValueOrDefault(id);

    /// <summary>The expression of an id, or <c>null</c>.</summary>
    public Expression? FindExpression(string id) => _expressionsById.GetValueOrDefault(id);

    /// <summary>Says whether a form of one locus cannot be seen beside the forms that other loci show.</summary>
    /// <param name="expression">The form asked for.</param>
    /// <param name="shown">The visible forms of other loci, hidden ones among them or not.</param>
    public bool IsHidden(Expression expression, IEnumerable<Expression> shown) =>
        Masks.Acting(shown.Append(expression).Where(e => e.IsVisible).Distinct()).Any(m => m.Hides(expression));

    /// <summary>Leaves of several visible forms, one a locus at most, those that can be seen.</summary>
    public IReadOnlyList<Expression> SeenOf(IReadOnlyCollection<Expression> shown)
    {
        var acting = Masks.Acting(shown.Where(e => e.IsVisible));
        return shown.Where(e => e.IsVisible && !acting.Any(m => m.Hides(e))).ToArray();
    }

    /// <inheritdoc/>
    public override string ToString() => Id;

    private static Dictionary<string, T> Unique<T>(IEnumerable<T> items, Func<T, string> id, string what)
    {
        var result = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var item in items)
        {
            Add(result, id(item), item, what);
        }

        return result;
    }

    private static void Add<T>(Dictionary<string, T> index, string id, T item, string what)
    {
        if (!index.TryAdd(id, item))
        {
            throw new SpeciesException($"The {what} id '{id}' is used twice.");
        }
    }
}
