using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Meiosis;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Testing.Stocks;

/// <summary>A kennel bred from counted seeds: seasons of clutches, alleles dropped down from the founders, everything looked at.</summary>
/// <remarks>Seasons as in the kennel generator of the pedigree tests: females and males of the last purchases and hold-backs, one clutch per female and season.</remarks>
public sealed class BredStock
{
    private readonly Random _random;
    private readonly List<RecordedAnimal> _animals = [];
    private readonly Dictionary<string, Genotype> _truth = new(StringComparer.Ordinal);

    private BredStock(Species species, int seed)
    {
        Species = species;
        _random = new Random(seed);
    }

    /// <summary>Gets a made-up species of twelve loci: five recessive, five incomplete dominant with one series among them, one dominant, one on the sex chromosomes.</summary>
    public static Species Snake { get; } = Describe.Species(
        SexSystem.XY,
        Describe.Free("clown", Describe.Recessive("clown")),
        Describe.Free("piebald", Describe.Recessive("piebald")),
        Describe.Free("albino", Describe.Recessive("albino")),
        Describe.Free("axanthic", Describe.Recessive("axanthic")),
        Describe.Free("ghost", Describe.Recessive("ghost")),
        Describe.Free("pastel", Describe.Incomplete("pastel")),
        Describe.Free("yellow", Describe.Incomplete("yellow")),
        Describe.Free("cinnamon", Describe.Incomplete("cinnamon")),
        Describe.Free("blue", Describe.Incomplete("mojave"), Describe.Incomplete("lesser")),
        Describe.Free("pinstripe", Describe.Dominant("pinstripe")),
        Describe.Free("spotnose", Describe.Incomplete("spotnose")),
        Describe.SexLinked("banana", 0.0, Describe.Incomplete("banana")));

    /// <summary>Gets the species.</summary>
    public Species Species { get; }

    /// <summary>Gets the records, all of them right.</summary>
    public IReadOnlyList<RecordedAnimal> Animals => _animals;

    /// <summary>What an animal truly is.</summary>
    public Genotype TruthOf(string key) => _truth[key];

    /// <summary>Breeds a kennel.</summary>
    /// <param name="species">The species.</param>
    /// <param name="seed">The seed; the same one gives the same kennel.</param>
    /// <param name="females">How many females are bred each season.</param>
    /// <param name="males">How many males.</param>
    /// <param name="least">How many animals there are at least; the season in which they are reached is finished.</param>
    public static BredStock Of(Species species, int seed, int females, int males, int least)
    {
        var drop = new BredStock(species, seed);
        var (dams, sires) = (new List<string>(), new List<string>());
        for (var i = 0; i < females + males; i++)
        {
            (i < females ? dams : sires).Add(drop.Founder(i < females ? Sex.Female : Sex.Male, 2018));
        }

        for (var season = 2020; drop._animals.Count < least; season++)
        {
            dams.Add(drop.Founder(Sex.Female, season - 2));
            if (season % 2 == 0)
            {
                sires.Add(drop.Founder(Sex.Male, season - 2));
            }

            var (bred, used) = (dams.TakeLast(females).ToArray(), sires.TakeLast(males).ToArray());
            for (var c = 0; c < bred.Length && drop._animals.Count < least; c++)
            {
                var sire = drop._random.Next(2) == 0 ? used[0] : used[drop._random.Next(used.Length)];
                drop.Clutch(sire, bred[c], season, c, dams, sires);
            }
        }

        return drop;
    }

    /// <summary>What a genotype shows to the eye.</summary>
    public static Observation.Seen Look(Genotype genotype)
    {
        var species = genotype.Species;
        var forms = new List<Expression>();
        var reading = Genotype.Wild(species, genotype.Sex);
        foreach (var locus in species.Loci)
        {
            var (a, b) = locus.PairOf(genotype[locus.Group]);
            var form = locus.ExpressionOf(a, b);
            if (form.IsVisible)
            {
                forms.Add(form);
                reading = reading.With(locus, a, b);
            }
        }

        return new(forms, GenotypeBelief.Certain(reading));
    }

    private string Founder(Sex sex, int year)
    {
        var genotype = Genotype.Wild(Species, sex);
        var told = Genotype.Wild(Species, sex);
        var isTold = false;
        foreach (var locus in Species.Loci)
        {
            var (a, b) = (Drawn(locus), Drawn(locus));
            if (a == 0 && b == 0)
            {
                continue;
            }

            genotype = genotype.With(locus, a, b);
            if (!locus.ExpressionOf(a, b).IsVisible && _random.Next(2) == 0)
            {
                told = told.With(locus, a, b);
                isTold = true;
            }
        }

        var key = $"f{_animals.Count}";
        var observations = new List<Observation> { Look(genotype) };
        if (isTold)
        {
            observations.Add(new Observation.Said(GenotypeBelief.Certain(told), StatementBasis.Told));
        }

        _truth.Add(key, genotype);
        _animals.Add(new(key, sex, observations) { Hatched = new DateOnly(year, 7, 1) });
        return key;
    }

    private int Drawn(Locus locus) => _random.Next(100) < 14 ? 1 + _random.Next(locus.Alleles.Count - 1) : 0;

    private void Clutch(string sire, string dam, int season, int number, List<string> dams, List<string> sires)
    {
        for (var n = 4 + _random.Next(5); n > 0; n--)
        {
            var young = Egg(_truth[sire], _truth[dam]);
            var key = $"a{_animals.Count}";
            _truth.Add(key, young);
            _animals.Add(new(key, young.Sex, [Look(young)])
            {
                Sire = sire,
                Dam = dam,
                Clutch = $"{season}-{number}",
                Hatched = new DateOnly(season, 7, 1).AddDays(number),
            });
            if (_random.Next(10) == 0)
            {
                (young.Sex == Sex.Female ? dams : sires).Insert(0, key);
            }
        }
    }

    private Genotype Egg(Genotype sire, Genotype dam)
    {
        var isSon = _random.Next(2) == 0;
        var young = Genotype.Wild(Species, isSon ? Sex.Male : Sex.Female);
        foreach (var group in Species.Groups)
        {
            var fromSire = Passed(sire, group, isSon);
            var fromDam = Passed(dam, group, null);
            young = young.With(group, Fertilization.Of(Species, group, fromSire, fromDam).Diplotype);
        }

        return young;
    }

    private Gamete Passed(Genotype parent, LinkageGroup group, bool? toSon)
    {
        Weighted<Gamete>[] formed = [.. GameteFormation.Of(group, parent[group], parent.IsHeterogametic)
            .Where(g => !group.IsSex || toSon is null || g.Value.CarriesUnshared == toSon)];
        var at = _random.NextDouble() * formed.Sum(g => g.Weight.Value);
        foreach (var (gamete, chance) in formed)
        {
            at -= chance.Value;
            if (at < 0.0)
            {
                return gamete;
            }
        }

        return formed[^1].Value;
    }
}
