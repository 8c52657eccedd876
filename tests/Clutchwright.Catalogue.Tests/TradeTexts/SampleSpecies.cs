using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.Tests.TradeTexts;

/// <summary>A few loci of Python regius as the trade knows them (common practice, no source), enough for tables of tub labels.</summary>
internal static class SampleSpecies
{
    public static Species Species { get; } = Species.From(new SpeciesDefinition(
        "sample",
        SexSystem.XY,
        [
            Locus("bel", new Placement.Autosomal(), Inc("Lesser"), Inc("Mojave"), Inc("Mystic")) with
            {
                Forms =
                [
                    new("blue-eyed-white", "Blue-eyed White", [("lesser", "lesser"), ("lesser", "mojave")]),
                    new("mystic-potion", "Mystic Potion", [("mojave", "mystic")]),
                ],
            },
            Locus("mc1r", new Placement.Autosomal(), Rec("Clown"), Inc("Cryptic")),
            Locus("tyr", new Placement.Autosomal(), Rec("Albino"), Rec("Candy")),
            Locus("pied", new Placement.Autosomal(), Rec("Pied")),
            Locus("pastel", new Placement.Autosomal(), Inc("Pastel")),
            Locus("bp", new Placement.Autosomal(), Inc("Black Pastel")),
            Locus("spider", new Placement.Autosomal(), new AlleleDefinition("spider", "Spider", InheritanceMode.Dominant)),
            Locus("cg", new Placement.SexLinked(RecombinationFraction.From(0.08)), Inc("Banana")),
            Locus("left", new Placement.Linked("one", 0), Rec("Left")),
            Locus("right", new Placement.Linked("one", 12), Inc("Right")),
        ]));

    public static TradeText Trade { get; } = MakeTrade();

    public static Allele Allele(string id) => Species.FindAllele(id)!;

    /// <summary>The chances of the pairs at a locus, as <c>allele/allele chance</c>, in the order of the ids.</summary>
    public static string Pairs(ReadAnimal animal, string locusId)
    {
        var claim = animal.Claims.FirstOrDefault(c => c.Locus.Id == locusId);
        return claim is null
            ? "not named"
            : string.Join(", ", claim.Pairs
                .Select(p => $"{claim.Locus.Alleles[p.Value.First].Id}/{claim.Locus.Alleles[p.Value.Second].Id} {p.Weight}")
                .Order(StringComparer.Ordinal));
    }

    private static TradeText MakeTrade()
    {
        var lexicon = Lexicon.Of(Species);
        lexicon.TryAdd("BEL", lexicon.Find("Blue-eyed White")!);
        Add("Bumblebee", "Pastel Spider");
        Add("Killer Bee", "Super Pastel Spider");
        Add("Albino Clown Pied Dream", "Albino Pied");
        return new(lexicon);

        void Add(string name, string of) =>
            lexicon.TryAdd(name, new Term.OfCombination(name, of, TradeParser.Parse(lexicon, of, TextToken.Split(of)).Value!.Claims));
    }

    private static LocusDefinition Locus(string id, Placement placement, params AlleleDefinition[] alleles) =>
        new(id, id.ToUpperInvariant(), placement, alleles);

    private static AlleleDefinition Rec(string name) => new(Id(name), name, InheritanceMode.Recessive);

    private static AlleleDefinition Inc(string name) => new(Id(name), name, InheritanceMode.IncompleteDominant);

    private static string Id(string name) => name.ToLowerInvariant().Replace(' ', '-');
}
