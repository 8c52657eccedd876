using Clutchwright.Catalogue.Entries;
using Clutchwright.Catalogue.Looks;
using Clutchwright.Catalogue.Reading;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue;

/// <summary>All that is known of a species, ready for use. Immutable, and safe to use from many threads.</summary>
public sealed class SpeciesCatalogue
{
    private readonly Lexicon _lexicon;
    private readonly Dictionary<Locus, LocusEntry> _loci;
    private readonly Dictionary<Allele, AlleleEntry> _alleles;
    private readonly Dictionary<Expression, FormEntry> _forms;
    private readonly Lazy<PartTable> _parts;

    internal SpeciesCatalogue(
        Species species,
        Lexicon lexicon,
        SpeciesReader about,
        IReadOnlyDictionary<string, Source> sources,
        IReadOnlyList<LocusDraft> loci,
        IReadOnlyList<MaskEntry> masks)
    {
        Species = species;
        _lexicon = lexicon;
        Trade = new(lexicon);
        (Name, TradeName, NormalName, SexSystemEvidence) = (about.Name, about.TradeName, about.NormalNames[0], about.SexEvidence);
        (Stages, Biology) = (about.Stages, about.Biology);
        Sources = sources;
        Masks = masks;
        (_loci, _alleles, _forms) = EntriesOf(species, loci);
        _parts = new(() => new(LookBook));
    }

    /// <summary>Gets the species as genetics reckons with it, with its dangers and masks.</summary>
    public Species Species { get; }

    /// <summary>Gets the scientific name.</summary>
    public string Name { get; }

    /// <summary>Gets the trade's name for the species.</summary>
    public string TradeName { get; }

    /// <summary>Gets the trade's name for an animal that shows nothing.</summary>
    public string NormalName { get; }

    /// <summary>Gets on what grounds the sex system stands.</summary>
    public Evidence SexSystemEvidence { get; }

    /// <summary>Gets the ages at which the stages of life begin.</summary>
    public StageAges Stages { get; }

    /// <summary>Gets the figures of breeding.</summary>
    public Biology Biology { get; }

    /// <summary>Gets the sources by id.</summary>
    public IReadOnlyDictionary<string, Source> Sources { get; }

    /// <summary>Gets what hides what.</summary>
    public IReadOnlyList<MaskEntry> Masks { get; }

    /// <summary>Gets the tones by number.</summary>
    public IReadOnlyList<Tone> Tones { get; internal init; } = [];

    /// <summary>Gets the named combinations.</summary>
    public IReadOnlyList<Combination> Combinations { get; internal init; } = [];

    /// <summary>Gets the stated looks.</summary>
    public IReadOnlyList<LookEntry> Looks => LookBook.Entries;

    /// <summary>Gets the loci in the catalogue's order.</summary>
    public IEnumerable<LocusEntry> Loci => Species.Loci.Select(l => _loci[l]);

    /// <summary>Gets the mutant alleles in the catalogue's order.</summary>
    public IEnumerable<AlleleEntry> Alleles => Species.Loci.SelectMany(l => l.Alleles.Skip(1)).Select(a => _alleles[a]);

    /// <summary>Gets the visible forms in the catalogue's order, those that follow from the alleles among them.</summary>
    public IEnumerable<FormEntry> Forms => Species.Loci.SelectMany(l => l.Expressions.Skip(1)).Select(e => _forms[e]);

    /// <summary>Gets the reader and writer of trade text.</summary>
    public TradeText Trade { get; }

    internal LookBook LookBook { get; init; } = new([], []);

    /// <summary>What is said of a locus.</summary>
    public LocusEntry EntryOf(Locus locus) => _loci[locus];

    /// <summary>What is said of a mutant allele.</summary>
    public AlleleEntry EntryOf(Allele allele) => _alleles[allele];

    /// <summary>What is said of a visible form.</summary>
    public FormEntry EntryOf(Expression form) => _forms[form];

    /// <summary>On what grounds the alleles of a locus are taken to share it, and its placement stands.</summary>
    public Evidence EvidenceOf(Locus locus) => _loci[locus].Evidence;

    /// <summary>On what grounds an allele's mode of inheritance stands.</summary>
    public Evidence EvidenceOf(Allele allele) => _alleles[allele].Evidence;

    /// <summary>On what grounds a visible form stands.</summary>
    public Evidence EvidenceOf(Expression form) => _forms[form].Evidence;

    /// <summary>The sources of a claim, in its order.</summary>
    public IReadOnlyList<Source> SourcesOf(Evidence evidence) => evidence.Sources.Select(s => Sources[s]).ToArray();

    /// <summary>The allele of a name, other name or id, spelled in any way; or <c>null</c>.</summary>
    public AlleleEntry? FindAllele(string name) =>
        (_lexicon.Find(name) is Term.OfAllele { Value: var allele } ? allele : Species.FindAllele(name.Trim())) is { } found
            ? _alleles[found]
            : null;

    /// <summary>The visible form of a name, other name or id, spelled in any way; or <c>null</c>.</summary>
    public FormEntry? FindForm(string name) =>
        (_lexicon.Find(name) switch
        {
            Term.OfPair pair => pair.Locus.ExpressionOf(pair.First, pair.Second),
            Term.OfForm form => form.Value,
            _ => Species.FindExpression(name.Trim()),
        }) is { IsVisible: true } found
            ? _forms[found]
            : null;

    /// <summary>The combination of a name or other name, spelled in any way; or <c>null</c>.</summary>
    public Combination? FindCombination(string name) =>
        _lexicon.Find(name) is Term.OfCombination found
            ? Combinations.First(c => string.Equals(c.Name, found.Name, StringComparison.Ordinal))
            : null;

    /// <summary>Up to three known names nearest to one that is not known, nearest first.</summary>
    public IReadOnlyList<string> NearestNames(string name) => Spelling.Nearest(name, _lexicon.Names.Select(n => n.Name));

    /// <summary>How an animal that shows these forms looks at an age: as stated, or else composed from stated parts.</summary>
    /// <param name="forms">The visible forms, at most one a locus; none: the normal animal.</param>
    /// <param name="stage">The stage of life.</param>
    /// <returns>The look; <c>null</c> only where the catalogue does not state how the normal animal looks.</returns>
    /// <remarks>The rule of composing is in docs/how-to/catalogue.md.</remarks>
    public Appearance? LookOf(IEnumerable<Expression> forms, AgeStage stage) => LookBook.LookOf(Visible(forms), stage);

    /// <summary>The makings that show a look, best first: stated looks, and composed ones of so many genes.</summary>
    /// <returns>A list that goes on as it is read; no making stands in it twice.</returns>
    /// <remarks>A form of which no look is stated has no part in it: there is nothing to find it by. Safe from many threads.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The number of genes is not from 1 to <see cref="LookWish.GreatestGenes"/>.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set while the list was read.</exception>
    public IEnumerable<LookMatch> FindLooks(LookWish wish, CancellationToken cancel = default) =>
        wish.MostGenes is >= 1 and <= LookWish.GreatestGenes
            ? new LookSearch(this, _parts.Value, wish).Run(cancel)
            : throw new ArgumentOutOfRangeException(nameof(wish), wish.MostGenes, $"A composed making has 1 to {LookWish.GreatestGenes} genes.");

    /// <summary>The dangers of an animal of these pairs of alleles, of either sex, gravest first.</summary>
    public IReadOnlyList<Danger> DangersOf(IEnumerable<MadeForm> made) =>
    [
        .. Enum.GetValues<Sex>()
            .Select(sex => GenotypeBelief.Certain(made.Aggregate(
                Genotype.Wild(Species, sex), (genotype, m) => genotype.With(m.Form.Locus, m.First, m.Second))))
            .SelectMany(belief => Species.Dangers.Where(d => d.ChanceIn(belief).IsCertain))
            .Distinct()
            .OrderByDescending(d => d.Severity),
    ];

    /// <summary>The named combinations within the visible forms, largest first; one that is part of a larger one named is left out.</summary>
    public IReadOnlyList<Combination> CombinationsOf(IEnumerable<Expression> forms)
    {
        var shown = forms.ToHashSet();
        var found = new List<Combination>();
        foreach (var combination in Combinations
            .Where(c => c.Expressions.All(shown.Contains))
            .OrderByDescending(c => c.Expressions.Count))
        {
            if (!found.Exists(f => combination.Expressions.All(f.Expressions.Contains)))
            {
                found.Add(combination);
            }
        }

        return found;
    }

    private static Expression[] Visible(IEnumerable<Expression> forms) =>
        forms.Where(f => f.IsVisible).OrderBy(f => f.Locus.Index).ToArray();

    private static (Dictionary<Locus, LocusEntry>, Dictionary<Allele, AlleleEntry>, Dictionary<Expression, FormEntry>) EntriesOf(
        Species species, IReadOnlyList<LocusDraft> drafts)
    {
        var (loci, alleles, forms) = (
            new Dictionary<Locus, LocusEntry>(), new Dictionary<Allele, AlleleEntry>(), new Dictionary<Expression, FormEntry>());
        foreach (var draft in drafts)
        {
            var locus = species.FindLocus(draft.Id)!;
            loci.Add(locus, new(locus, draft.Item.Text("gene"), draft.Recombination, draft.Item.Text("note"), draft.Evidence));
            foreach (var allele in draft.Alleles)
            {
                var item = allele.Item;
                var known = species.FindAllele(allele.Definition.Id)!;
                alleles.Add(known, new(
                    known,
                    allele.Also,
                    item.Text("one-copy") ?? "",
                    item.Text("two-copies"),
                    item.Text("with-age"),
                    item.Truth("subtle") ?? false,
                    allele.Definition.TellableFrom,
                    allele.Frequency,
                    allele.Evidence));
            }

            foreach (var form in locus.Expressions.Skip(1))
            {
                forms.Add(form, FormOf(form, draft, alleles));
            }
        }

        return (loci, alleles, forms);
    }

    private static FormEntry FormOf(Expression form, LocusDraft draft, Dictionary<Allele, AlleleEntry> alleles)
    {
        var pairs = Lexicon.PairsOf(form);
        if (draft.Forms.Find(f => string.Equals(f.Definition.Id, form.Id, StringComparison.Ordinal)) is { } stated)
        {
            return new(
                form,
                stated.Also,
                pairs,
                stated.Item.Text("shows"),
                stated.Item.Text("with-age"),
                stated.Item.Truth("recorded") ?? true,
                stated.Evidence);
        }

        foreach (var allele in form.Locus.Alleles.Skip(1).Select(a => alleles[a]))
        {
            var isOne = string.Equals(form.Id, allele.Allele.Id, StringComparison.Ordinal);
            if (isOne || string.Equals(form.Id, "super-" + allele.Allele.Id, StringComparison.Ordinal))
            {
                var shows = isOne && allele.Allele.Mode != InheritanceMode.Recessive ? allele.OneCopy : allele.TwoCopies;
                return new(form, isOne ? allele.Also : [], pairs, shows, allele.WithAge, IsRecorded: true, allele.Evidence);
            }
        }

        // Two unlike alleles of which nothing is stated.
        return new(form, [], pairs, null, null, IsRecorded: false, draft.Evidence);
    }
}
