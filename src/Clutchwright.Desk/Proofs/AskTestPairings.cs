using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Linkages;
using Clutchwright.Proofs.TestPairings;

namespace Clutchwright.Desk.Proofs;

/// <summary>Which mate settles a doubt soonest, and how many eggs it takes?</summary>
public sealed class AskTestPairings
{
    /// <summary>The doubts that can be asked about.</summary>
    public static readonly IReadOnlyList<string> Doubts = ["het", "allelism", "linkage"];

    private static readonly int[] Confidences = [50, 90, 95];

    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs? _stock;

    internal AskTestPairings(OpenCatalogue catalogue, StockBeliefs? stock)
    {
        _catalogue = catalogue;
        _stock = stock;
    }

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public async Task<Answer<TestPairingsAnswer>> RunAsync(TestPairingsQuestion question, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var prior = question.Prior is null ? Probability.Half : ChanceReader.Read("prior", question.Prior, problems) ?? Probability.Half;
        var sure = question.Sure is null ? Probability.Ratio(95, 100) : ChanceReader.Read("sure", question.Sure, problems) ?? Probability.Certain;
        if (sure <= Probability.Half || (sure.IsCertain && problems.Count == 0))
        {
            problems.Add(new("sure", $"'{question.Sure}' is no sureness to wait for. Write a chance above 1/2 and below 1, for example 95%."));
        }

        if (question.Recombination is not (>= 0.0 and < 0.5))
        {
            problems.Add(new("r", $"{question.Recombination} is no fraction to tell from 1/2. Write 0 or more, and less than 0.5."));
        }

        var (clutch, clutchText) = _catalogue.Clutches.Of(question.Clutch, withLaying: false, problems);
        var candidates = new List<Candidate>();
        var claim = string.Empty;
        switch (question.About.Trim().ToLowerInvariant())
        {
            case "het" when question.Animal is { } animal:
                (claim, prior) = await OfStockAsync(question, animal, prior, candidates, problems, cancel);
                break;
            case "het":
                claim = "The animal is het.";
                candidates.AddRange(question.Mates.Select(m => OfMate(m, problems)).OfType<Candidate>());
                break;
            case "allelism":
                claim = "The two genes share a locus.";
                candidates.AddRange(question.Mates.Select(m => OfCross(m, problems)).OfType<Candidate>());
                break;
            case "linkage":
                claim = $"The two genes are linked, at r = {question.Recombination:0.###}.";
                candidates.AddRange(question.Mates.Select(m => OfPhase(m, question.Recombination, problems)).OfType<Candidate>());
                break;
            default:
                problems.Add(new("about", $"'{question.About}' is no doubt that can be asked about. Write het, allelism or linkage.", DidYouMean: NearWords.Of(question.About, Doubts)));
                break;
        }

        if (problems.Count == 0 && candidates.Count == 0 && question.Animal is null)
        {
            problems.Add(new("mate", "No mate or cross is named to compare. Write at least one."));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var ranked = PairingWorth.Rank(candidates.Select(c => (c.Pairing, clutch)), prior, sure);
        var words = candidates.ToLookup(c => c.Pairing, c => c.Words);
        return new TestPairingsAnswer(
            claim,
            prior,
            sure,
            [.. ranked.Where(w => w.EntropyDrop > 1e-12).Take(question.Most).Select(w => Line(w, words[w.Pairing].First()))],
            candidates.Count,
            clutchText,
            Verdict(ranked, prior, sure),
            [
                "You may look after every egg and stop when it is clear: these chances depend on what hatched, not on why one stopped. A p value would not stand that.",
                .. KinNotes(question),
                $"Eggs are reckoned one by one up to {PairingWorth.MostEggs}; a pairing that may never settle it has no mean.",
            ]);
    }

    private static IEnumerable<string> KinNotes(TestPairingsQuestion question) => (question.Animal, question.About.Trim().ToLowerInvariant()) switch
    {
        (not null, _) => ["Doubts that a mate shares with the animal, as its kin, are reckoned together."],
        (_, "het") => ["A mate's own doubt is taken as independent of the animal's; with an animal of the stock and its mates, kin are reckoned as kin."],
        _ => [],
    };

    private static TestPairingLine Line(PairingWorth worth, string words) => new(
        worth.Pairing.Name,
        words,
        worth,
        Confidences.ToDictionary(c => c, c => Enumerable.Range(0, worth.SettledBy.Count)
            .Where(n => worth.SettledBy[n] >= (c / 100.0) - 1e-12)
            .Select(n => (int?)n)
            .FirstOrDefault()));

    private static string Verdict(IReadOnlyList<PairingWorth> ranked, Probability prior, Probability sure)
    {
        if (prior >= sure || prior.Complement >= sure)
        {
            return "It is as sure as asked already.";
        }

        return ranked.Count == 0 || ranked[0].EntropyDrop <= 1e-12
            ? "No mate here can tell anything."
            : $"Best: {ranked[0].Pairing.Name}. One clutch gives an answer with {OddsText.Percent(Probability.Rounded(ranked[0].ChanceOfAnswer))}"
                + (ranked[0].MeanEggs is { } mean ? $"; it takes {mean:0.#} good eggs on average." : "; it may never settle it for good.");
    }

    private static Candidate? OfMate(string text, List<AskedWrongly> problems)
    {
        if (MateReader.Kind(text) is { } kind)
        {
            return new(kind.IsVisual
                ? TestPairing.OfHet(text.Trim(), Probability.Certain, Probability.Impossible)
                : TestPairing.OfHet(text.Trim(), Probability.Impossible, kind.Carries));
        }

        problems.Add(new("mate", $"'{text}' is no mate for a het proof. Write visual, het, or a possible het such as 66% het."));
        return null;
    }

    private static Candidate? OfCross(string text, List<AskedWrongly> problems) =>
        AskAllelism.Cross("mate", text, problems) is { } pairing
            ? new(TestPairing.OfAllelism(text.Trim(), pairing, Probability.Certain), AskAllelism.Crosses.First(c => c.Pairing == pairing).Words)
            : null;

    private static Candidate? OfPhase(string text, double r, List<AskedWrongly> problems)
    {
        if (r is not (>= 0.0 and < 0.5))
        {
            return null;
        }

        switch (text.Trim().ToLowerInvariant())
        {
            case "known":
                return new(TestPairing.OfLinkage("known", r, 1.0, LinkagePhase.Known), "phase known");
            case "unknown":
                return new(TestPairing.OfLinkage("unknown", r, 1.0, LinkagePhase.Unknown), "phase unknown");
            default:
                problems.Add(new("mate", $"'{text}' is no phase. Write known or unknown."));
                return null;
        }
    }

    private async Task<(string Claim, Probability Prior)> OfStockAsync(
        TestPairingsQuestion question, string asked, Probability prior, List<Candidate> candidates, List<AskedWrongly> problems, CancellationToken cancel)
    {
        if (question.Gene is null || _catalogue.Catalogue.FindAllele(question.Gene) is not { } entry)
        {
            problems.Add(new("gene", question.Gene is null
                ? "The gene in doubt is not named. Write a recessive gene of the catalogue."
                : $"'{question.Gene}' is no gene of the catalogue."));
            return (string.Empty, prior);
        }

        var allele = entry.Allele;
        if (allele.Mode != InheritanceMode.Recessive || allele.Locus.Placement is Placement.SexLinked)
        {
            problems.Add(new("gene", $"{allele.Name} shows in one copy or rides with sex, so it is not proved so. Write a recessive gene."));
            return (string.Empty, prior);
        }

        var stock = _stock is null ? null : await _stock.ReadAsync(_catalogue, cancel);
        var animal = stock?.Find(asked);
        if (stock is null || animal is null)
        {
            problems.Add(new("animal", $"There is no animal '{asked}' in the stock."));
            return (string.Empty, prior);
        }

        var own = Copies.Of(animal.Belief.Genotype, allele);
        if (!own.Two.IsImpossible)
        {
            problems.Add(new("animal", $"{animal.Animal.Tag} shows {allele.Name}, or may: there is no doubt to prove."));
            return (string.Empty, prior);
        }

        foreach (var mate in stock.Animals.Where(a => a != animal && a.IsHere && (a.Animal.Sex is null || a.Animal.Sex != animal.Animal.Sex)))
        {
            var doubt = MateDoubt.Of(stock, animal, mate, allele, cancel);
            if (doubt.MayTell)
            {
                candidates.Add(new(doubt.Pairing(), doubt.Words()));
            }
        }

        return ($"{animal.Animal.Tag} is het {allele.Name}.", question.Prior is null ? own.One : prior);
    }

    private sealed record Candidate(TestPairing Pairing, string Words = "");
}
