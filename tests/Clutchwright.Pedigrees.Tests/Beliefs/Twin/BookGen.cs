using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Meiosis;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Twin;

/// <summary>Draws records of small pedigrees: animals with true genotypes, and what people wrote of them, most of it true.</summary>
internal sealed class BookGen
{
    private static readonly double[] Rates = [1.0, 0.99, 0.9, 0.6];
    private static readonly double[] Doubts = [0.95, 0.9, 0.75, 0.6, 0.5, 0.3];
    private readonly Draw _draw;
    private readonly SampleSpecies _sample;
    private readonly List<RecordedAnimal> _animals = [];
    private readonly Dictionary<string, (Genotype Genotype, Sex Sex)> _truth = [];
    private readonly Dictionary<string, Sex> _roles = [];
    private readonly int _lies;
    private readonly int _wild;
    private int _doubts = 2;

    private BookGen(Draw draw, int lies, int haplotypes = 8, SampleSpecies? sample = null)
    {
        _draw = draw;
        _lies = lies;
        _wild = draw.Of(1, 3, 8);
        do
        {
            _sample = sample ?? SpeciesGen.Species(draw, draw.Chance(1, 2), 1, draw.Of(1, 2, 3));
        }
        while (_sample.Species.Groups.Any(g => g.HaplotypeCount > haplotypes));
    }

    /// <summary>Gets records with every kind of entry.</summary>
    public static Gen<SampleBook> Any { get; } = Draw.Gen(d => new BookGen(d, lies: 12).Make(7, 3e4));

    /// <summary>Gets records in which false entries are common.</summary>
    public static Gen<SampleBook> Clashing { get; } = Draw.Gen(d => new BookGen(d, lies: 3).Make(5, 5e3));

    /// <summary>Gets records without the twin's limit of size.</summary>
    public static Gen<SampleBook> Larger { get; } = Draw.Gen(d => new BookGen(d, lies: 30, haplotypes: 4).Make(14, double.PositiveInfinity));

    /// <summary>Gets two records of one species in which the same alleles are in play.</summary>
    public static Gen<(SampleBook First, SampleBook Second)> Pairs { get; } = Draw.Gen(d =>
    {
        var first = new BookGen(d, lies: 8, haplotypes: 4).Make(5, double.PositiveInfinity);
        var second = new BookGen(d, lies: 8, haplotypes: 4, first.Sample).Make(5, double.PositiveInfinity) with { Settings = first.Settings };
        var named = new RecordedAnimal("named", null, [.. first.Species.Loci
            .SelectMany(l => l.Alleles.Skip(1))
            .Select(a => new Observation.DnaTest(a, 0, Probability.Certain, Probability.Certain))]);
        return (first with { Animals = [.. first.Animals, named] }, second with { Animals = [.. second.Animals, named] });
    });

    private Species Species => _sample.Species;

    private SampleBook Make(int most, double cost)
    {
        var count = 1 + _draw.Below(most);
        for (var i = 0; i < count; i++)
        {
            Add(((char)('a' + i)).ToString());
        }

        var book = new SampleBook(_sample, _animals, Settings());
        while (BeliefTwin.Cost(book.Species, book.Animals, book.Settings) > cost)
        {
            // The last has no young; without it the records before stand.
            book = book with { Animals = [.. book.Animals.SkipLast(1)] };
        }

        _draw.Count(20 * book.Animals.Count);
        return book;
    }

    private BeliefSettings Settings() => new()
    {
        Misreading = _draw.Chance(2, 3) ? 0.0 : _draw.Of(0.01, 0.1),
        Frequencies = _draw.Chance(1, 2) ? new Dictionary<Allele, double>() : Species.Loci
            .SelectMany(l => l.Alleles.Skip(1))
            .Where(_ => _draw.Chance(1, 2))
            .ToDictionary(a => a, _ => _draw.Of(0.02, 0.1, 0.25)),
    };

    private void Add(string key)
    {
        var animal = new RecordedAnimal(key, null, []);
        var males = Breeders(Sex.Male);
        animal = _draw.Weighted(2, 6, 2, 2, 2) switch
        {
            1 when males.Length > 0 => animal with { Sire = _draw.Of(males), Dam = Dam() },
            2 => animal with { Dam = Dam() },
            3 when males.Length > 0 => animal with { Sire = _draw.Of(males) },
            4 when males.Length > 1 => animal with { PossibleSires = [.. males.OrderBy(_ => _draw.Below(100)).Take(2 + _draw.Below(2))], Dam = _draw.Chance(3, 4) ? Dam() : null },
            _ => animal,
        };
        if (animal.PossibleSires.Count > 0 && _draw.Chance(1, 2))
        {
            int[] shares = [.. animal.PossibleSires.Select(_ => 1 + _draw.Below(9))];
            animal = animal with { SireWeights = [.. shares.Select(s => Probability.Ratio(s, shares.Sum()))] };
        }

        if (animal.Dam is not null && (animal.Sire == animal.Dam || animal.PossibleSires.Contains(animal.Dam)))
        {
            animal = animal with { Dam = null };
        }

        // A clutchmate of the one before.
        if (_animals.Count > 0 && _animals[^1] is var last && ((last.Dam ?? last.Sire) is not null || last.PossibleSires.Count > 0) && _draw.Chance(1, 3))
        {
            var clutch = last.Clutch ?? $"clutch of {last.Key}";
            _animals[^1] = last with { Clutch = clutch };
            animal = animal with { Sire = last.Sire, Dam = last.Dam, PossibleSires = [.. last.PossibleSires.Reverse()], SireWeights = [.. last.SireWeights.Reverse()], Clutch = clutch };
        }

        _ = animal.Sire is { } sire && Play(sire, Sex.Male);
        _ = animal.Dam is { } dam && Play(dam, Sex.Female);
        foreach (var male in animal.PossibleSires)
        {
            Play(male, Sex.Male);
        }

        var truth = Truth(animal);
        _truth.Add(key, truth);
        var isSeveral = animal.Sire is not null && _draw.Chance(1, 12);
        _animals.Add(animal with
        {
            Sex = _draw.Chance(1, 3) ? null : truth.Sex,
            Count = isSeveral ? 2 : 1,
            Observations = [.. Enumerable.Range(0, _draw.Weighted(2, 5, 4, 2)).Select(_ => Doubted(Record(truth.Genotype)))],
        });
    }

    private string? Dam() => Breeders(Sex.Female) is { Length: > 0 } females ? _draw.Of(females) : null;

    private bool Play(string key, Sex sex)
    {
        _roles[key] = sex;
        return true;
    }

    private string[] Breeders(Sex sex) => [.. _animals
        .Where(a => a.Count == 1 && (a.Sex ?? _roles.GetValueOrDefault(a.Key, sex)) == sex)
        .Select(a => a.Key)];

    private (Genotype Genotype, Sex Sex) Truth(RecordedAnimal animal)
    {
        var sex = _draw.Of(Sex.Female, Sex.Male);
        var genotype = Genotype.Wild(Species, sex);
        var males = animal.Sire is null ? animal.PossibleSires : [animal.Sire];
        if (_draw.Chance(1, 30) || (males.Count == 0 && animal.Dam is null))
        {
            return (Stranger(sex), sex);
        }

        var sire = Gametes(males.Count > 0 ? _truth[males[0]].Genotype : Stranger(Sex.Male), Sex.Male);
        var dam = Gametes(animal.Dam is not null ? _truth[animal.Dam].Genotype : Stranger(Sex.Female), Sex.Female);
        foreach (var group in Species.Groups)
        {
            var eggs = sire[group.Index]
                .SelectMany(_ => dam[group.Index], (s, d) => Fertilization.Of(Species, group, s, d))
                .Where(e => e.Sex is null || e.Sex == sex)
                .ToArray();
            genotype = genotype.With(group, eggs[_draw.Below(eggs.Length)].Diplotype);
        }

        return (genotype, sex);
    }

    // A parent played by an unsexed animal may be of the other sex in truth; then it is read as the one it plays.
    private IReadOnlyList<Gamete>[] Gametes(Genotype genotype, Sex sex) => [.. Species.Groups.Select(g =>
        (IReadOnlyList<Gamete>)[.. GameteFormation.Of(g, genotype[g], sex == Species.SexSystem.Heterogametic()).Select(w => w.Value)])];

    private Genotype Stranger(Sex sex) => Species.Groups.Aggregate(Genotype.Wild(Species, sex), (genotype, group) => genotype.With(group, Diplotype(group, _wild)));

    private Diplotype Diplotype(LinkageGroup group, int wild)
    {
        return new(Haplotype(), Haplotype());

        int Haplotype()
        {
            var code = 0;
            foreach (var locus in group.Loci)
            {
                if (_draw.Chance(2, 2 + wild))
                {
                    code = group.With(code, locus.IndexInGroup, 1 + _draw.Below(locus.Alleles.Count - 1));
                }
            }

            return code;
        }
    }

    private Observation Doubted(Observation observation) => _doubts > 0 && _draw.Chance(1, 8) && _doubts-- > 0
        ? observation with { Confidence = Probability.From(_draw.Of(Doubts)) }
        : observation;

    private Observation Record(Genotype truth)
    {
        if (_draw.Chance(1, _lies))
        {
            truth = Stranger(truth.Sex);
        }

        switch (_draw.Weighted(6, 2, 4, 1, 2, 3))
        {
            case 0:
                return Look(truth);
            case 1:
                return new Observation.Said(Words(truth), StatementBasis.Told);
            case 2:
                return new Observation.Said(Chance(truth), StatementBasis.Told);
            case 3:
                return new Observation.Said(Words(truth), StatementBasis.ProvenByBreeding);
            case 4:
                var absent = Species.Loci.SelectMany(l => l.Alleles.Skip(1).Where(a => truth.AllelesAt(l) is var (x, y) && x != a.Index && y != a.Index)).ToArray();
                return absent.Length == 0 ? Look(truth) : new Observation.RuledOut([.. absent.Where(_ => _draw.Chance(1, 2)).DefaultIfEmpty(absent[0])]);
            default:
                var allele = _draw.Of(Species.Loci.SelectMany(l => l.Alleles.Skip(1)).ToArray());
                var (first, second) = truth.AllelesAt(allele.Locus);
                return new Observation.DnaTest(
                    allele, (first == allele.Index ? 1 : 0) + (second == allele.Index ? 1 : 0), Probability.From(_draw.Of(Rates)), Probability.From(_draw.Of(Rates)));
        }
    }

    private Observation.Seen Look(Genotype truth)
    {
        var shown = Species.Loci.Select(l => truth.AllelesAt(l) is var (a, b) ? l.ExpressionOf(a, b) : null!).Where(e => e.IsVisible && _draw.Chance(9, 10)).ToArray();
        var seen = Species.SeenOf(shown);
        var reading = GenotypeBelief.Wild(Species, _draw.Chance(3, 4) ? truth.Sex : truth.Sex.Opposite());
        foreach (var group in seen.Select(e => e.Locus.Group).Distinct())
        {
            var (first, second) = (0, 0);
            foreach (var locus in seen.Select(e => e.Locus).Where(l => l.Group == group))
            {
                first = group.With(first, locus.IndexInGroup, group.AlleleAt(truth[group].First, locus.IndexInGroup));
                second = group.With(second, locus.IndexInGroup, group.AlleleAt(truth[group].Second, locus.IndexInGroup));
            }

            reading = reading.With(group, [new(new(first, second), Probability.Half), new(new(second, first), Probability.Half)]);
        }

        return new(seen, reading);
    }

    private GenotypeBelief Words(Genotype truth)
    {
        var reading = GenotypeBelief.Wild(Species, truth.Sex);
        foreach (var group in Species.Groups.Where(_ => _draw.Chance(2, 3)))
        {
            reading = reading.With(group, [new(truth[group], Probability.Certain)]);
        }

        return reading;
    }

    private GenotypeBelief Chance(Genotype truth)
    {
        var reading = GenotypeBelief.Wild(Species, truth.Sex);
        for (var i = 1 + _draw.Below(2); i > 0; i--)
        {
            var locus = _draw.Of(Species.Loci);
            var group = locus.Group;
            var code = group.With(0, locus.IndexInGroup, 1 + _draw.Below(locus.Alleles.Count - 1));
            var told = truth[group] != default && _draw.Chance(1, 2) ? truth[group] : new Diplotype(0, code);
            var chance = _draw.Of(Probability.Ratio(2, 3), Probability.Half, Probability.Ratio(1, 3));
            reading = reading.With(group, [new(told, chance), new(default, chance.Complement)]);
        }

        return reading;
    }
}
