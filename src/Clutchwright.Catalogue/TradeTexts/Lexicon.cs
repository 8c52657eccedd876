using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>The names that trade texts of a species can use.</summary>
internal sealed class Lexicon
{
    private readonly Dictionary<string, Term> _terms = new(StringComparer.Ordinal);
    private readonly List<LexiconName> _names = [];

    public Lexicon(Species species) => Species = species;

    public Species Species { get; }

    /// <summary>All names offered to a person, in the catalogue's order.</summary>
    public IReadOnlyList<LexiconName> Names => _names;

    /// <summary>The most words any name has.</summary>
    public int LongestName { get; private set; } = 1;

    /// <summary>The names of a species by its alleles' and forms' own names alone.</summary>
    /// <exception cref="ArgumentException">Two names are one when case, spaces and hyphens do not count.</exception>
    public static Lexicon Of(Species species)
    {
        var lexicon = new Lexicon(species);
        lexicon.MustAdd("Normal", new Term.OfNormal());
        foreach (var locus in species.Loci)
        {
            lexicon.AddLocus(locus, _ => [], _ => [], lexicon.MustAdd);
        }

        return lexicon;
    }

    /// <summary>Adds the names of a locus' alleles and forms.</summary>
    /// <param name="locus">The locus.</param>
    /// <param name="alsoAllele">An allele's other names.</param>
    /// <param name="alsoForm">A form's other names.</param>
    /// <param name="add">Adds a name; told when it cannot be.</param>
    public void AddLocus(
        Locus locus, Func<Allele, IEnumerable<string>> alsoAllele, Func<Expression, IEnumerable<string>> alsoForm, Action<string, Term> add)
    {
        foreach (var allele in locus.Alleles.Skip(1))
        {
            add(allele.Name, new Term.OfAllele(allele));
            foreach (var name in alsoAllele(allele))
            {
                add(name, new Term.OfAllele(allele));
            }
        }

        foreach (var form in locus.Expressions.Where(e => e.IsVisible && e.IsNamed))
        {
            var pairs = PairsOf(form);
            Term term = pairs is [var only] ? new Term.OfPair(locus, only.First, only.Second) : new Term.OfForm(form);
            foreach (var name in alsoForm(form).Prepend(form.Name))
            {
                // A form may bear its allele's name: the bare name then means the allele.
                if (Find(name) is not Term.OfAllele { Value: var allele } || allele.Locus != locus)
                {
                    add(name, term);
                }
            }
        }
    }

    /// <summary>Adds a name; says whether it was free.</summary>
    public bool TryAdd(string name, Term term)
    {
        var added = _terms.TryAdd(Spelling.Key(name), term);
        if (added)
        {
            _names.Add(new(name, Spelling.Key(name), term));
            LongestName = Math.Max(LongestName, TextToken.Split(name).Count);
        }

        return added;
    }

    public Term? Find(string name) => FindKey(Spelling.Key(name));

    /// <summary>What a key stands for; a known allele's key with <c>super</c> before it is two copies.</summary>
    public Term? FindKey(string key)
    {
        if (_terms.TryGetValue(key, out var term))
        {
            return term;
        }

        return key.StartsWith("super", StringComparison.Ordinal)
            && _terms.GetValueOrDefault(key["super".Length..]) is Term.OfAllele { Value: { Mode: not InheritanceMode.Recessive } allele }
                ? new Term.OfPair(allele.Locus, allele.Index, allele.Index)
                : null;
    }

    /// <summary>The pairs of alleles that show a form, the smaller index first.</summary>
    public static IReadOnlyList<(int First, int Second)> PairsOf(Expression expression)
    {
        var count = expression.Locus.Alleles.Count;
        var pairs = new List<(int, int)>();
        for (var first = 0; first < count; first++)
        {
            for (var second = first; second < count; second++)
            {
                if (expression.Locus.ExpressionOf(first, second) == expression)
                {
                    pairs.Add((first, second));
                }
            }
        }

        return pairs;
    }

    private void MustAdd(string name, Term term)
    {
        if (!TryAdd(name, term))
        {
            throw new ArgumentException($"The name '{name}' is used twice in {Species.Id}.", nameof(name));
        }
    }
}

/// <summary>A name and what it stands for.</summary>
internal sealed record LexiconName(string Name, string Key, Term Term);
