using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Pairs;

namespace Clutchwright.Desk.Pairs;

/// <summary>Which pairs of the stock can give this, best first?</summary>
public sealed class RankPairs
{
    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _stock;
    private readonly TimeProvider _clock;

    internal RankPairs(OpenCatalogue catalogue, StockBeliefs stock, TimeProvider clock)
    {
        _catalogue = catalogue;
        _stock = stock;
        _clock = clock;
    }

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public async Task<Answer<PairsAnswer>> RunAsync(PairsQuestion question, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var catalogue = _catalogue.With(question.Recombination, problems);
        var wants = WantReader.Read(catalogue, [question.Want], problems);
        var (eggs, clutchText) = catalogue.Clutches.Of(new(question.Eggs, null, null), withLaying: question.Eggs is null, problems);
        if (question.Most < 1)
        {
            problems.Add(new("most", $"{question.Most} is no number of pairs to list. Write 1 or more."));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var state = await _stock.ReadAsync(catalogue, cancel);
        var here = state.Animals.Where(a => a.IsHere).ToArray();
        var notes = new List<string>();
        var (sires, dams) = Breeders(here, notes);
        if (here.Count(a => a.Animal.Sex is null) is > 0 and var unsexed)
        {
            notes.Add(unsexed == 1 ? "1 animal is not sexed and was left out." : $"{unsexed} animals are not sexed and were left out.");
        }

        var (text, want) = wants[0];
        NoteMissing(catalogue, here, want, notes);
        var wanted = want.Alternatives.SelectMany(a => a.Loci).Select(c => c.Locus.Group).Distinct().ToArray();
        var (his, her) = (sires.Select(a => a.As(Sex.Male)).ToArray(), dams.Select(a => a.As(Sex.Female)).ToArray());
        var ranking = BestPairs.Of(his, her, want, eggs, question.Most, new KinDoubts(state, sires, dams, wanted, cancel).Ties, cancel);
        if (ranking.Apart > 0)
        {
            notes.Add($"{ranking.Apart:N0} pairs that are kin could stand in this list, but the doubts that they share are too much to reckon: they count as if each animal's doubt were its own.");
        }

        var words = new Dictionary<StockAnimal, PairAnimal>();
        var listed = ranking.Pairs;
        var kin = PairKin.Of(state.Kin, listed.Select(p => (sires[p.Sire].Animal.AnimalId, dams[p.Dam].Animal.AnimalId)).ToArray());
        cancel.ThrowIfCancellationRequested();
        return new PairsAnswer(
            text,
            listed.Select(Pair).ToArray(),
            ranking.PairsThatCan,
            ranking.LeftOut.Select(LeftOut).ToArray(),
            ranking.LeftOutCount,
            sires.Length,
            dams.Length,
            clutchText,
            notes);

        PairLine Pair(RankedPair pair, int place) => new(
            Animal(sires[pair.Sire]),
            Animal(dams[pair.Dam]),
            pair.PerEgg.PerEgg,
            pair.AtLeastOne,
            pair.PerEgg.Ceiling,
            [.. pair.Dangers.Select(d => catalogue.Wording.Danger(d)), .. kin[place].Notes],
            kin[place]);

        LeftOutPair LeftOut(RankedPair pair) => new(
            Animal(sires[pair.Sire]),
            Animal(dams[pair.Dam]),
            pair.AtLeastOne,
            pair.Dangers.Where(d => d.Severity >= Severity.Suffering).Select(d => catalogue.Wording.Danger(d)).ToArray());

        PairAnimal Animal(StockAnimal animal)
        {
            if (!words.TryGetValue(animal, out var known))
            {
                words.Add(animal, known = new(animal.Animal.Tag, animal.Animal.Name, catalogue.Wording.Animal(animal.Belief.Genotype)));
            }

            return known;
        }
    }

    /// <summary>The males and the females that can be paired this season.</summary>
    /// <param name="here">The animals kept.</param>
    /// <param name="notes">Takes who was left out.</param>
    internal (StockAnimal[] Sires, StockAnimal[] Dams) Breeders(StockAnimal[] here, List<string> notes)
    {
        var sires = OfAge(here, Sex.Male, notes);
        return (sires, OfAge(here, Sex.Female, notes));
    }

    // One that is surely younger than the youngest breeding age cannot be paired this season; one whose age is in doubt is let through.
    private StockAnimal[] OfAge(StockAnimal[] here, Sex sex, List<string> notes)
    {
        var biology = _catalogue.Catalogue.Biology;
        var all = here.Where(a => a.Animal.Sex == sex).ToArray();
        var today = DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);
        var old = all.Where(a => !(BreedingAge.Reached(biology, a.Animal, sex) > today)).ToArray();
        if (all.Length - old.Length is > 0 and var young)
        {
            var word = sex == Sex.Male ? (young == 1 ? "male is" : "males are") : (young == 1 ? "female is" : "females are");
            notes.Add($"{young} {word} under {BreedingAge.Least(biology, sex):0} months old, too young for this season, and {(young == 1 ? "was" : "were")} left out.");
        }

        return old;
    }

    private static void NoteMissing(OpenCatalogue catalogue, StockAnimal[] here, Genetics.Wants.Want want, List<string> notes)
    {
        foreach (var condition in want.Alternatives.Count == 1 ? want.Alternatives[0].Loci : [])
        {
            var needed = condition.Locus.Alleles
                .Where(a => !a.IsWild && condition.Locus.Alleles.Any(b => condition.Allows(a.Index, b.Index, ordered: true) || condition.Allows(b.Index, a.Index, ordered: true)))
                .ToArray();
            if (needed.Length > 0 && needed.All(a => here.All(h => h.Belief.Genotype.ChanceOfCarrying(a).IsImpossible)))
            {
                notes.Add($"As far as is known, no animal of the stock carries {string.Join(" or ", needed.Select(a => a.Name))}.");
            }
        }
    }
}
