using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Crosses;

/// <summary>What can hatch from this pair, with which odds?</summary>
public sealed class AskCross
{
    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs? _stock;

    internal AskCross(OpenCatalogue catalogue, StockBeliefs? stock)
    {
        _catalogue = catalogue;
        _stock = stock;
    }

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public async Task<Answer<CrossAnswer>> RunAsync(CrossQuestion question, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var catalogue = _catalogue.With(question.Recombination, problems);
        var stock = _stock is null ? null : await _stock.ReadAsync(catalogue, cancel);
        var sire = ParentReader.Read(catalogue, stock, "sire", question.Sire, Sex.Male, problems);
        var dam = ParentReader.Read(catalogue, stock, "dam", question.Dam, Sex.Female, problems);
        var wants = WantReader.Read(catalogue, question.Wants, problems);
        var (eggs, clutchText) = catalogue.Clutches.Of(question.Clutch, withLaying: false, problems);
        if (question.AtLeast < 1)
        {
            problems.Add(new("at-least", $"{question.AtLeast} is no number of hatchlings to wish for. Write 1 or more."));
        }

        if (question.Most < 1)
        {
            problems.Add(new("most", $"{question.Most} is no number of looks to list. Write 1 or more."));
        }

        if (problems.Count > 0 || sire is null || dam is null)
        {
            return problems.ToArray();
        }

        var mating = MatingOf(stock, question, sire.Value.Belief, dam.Value.Belief, cancel);
        var cross = Cross.Of(mating);
        var looks = cross.Looks().Take(question.Most + 1).ToArray();
        var genotypes = cross.Genotypes().Take(question.Most + 1).ToArray();
        var shown = looks.Take(question.Most).Select(l => Outcome(catalogue, l, eggs)).ToArray();
        return new CrossAnswer(
            sire.Value.Answer,
            dam.Value.Answer,
            shown,
            looks.Length > question.Most,
            shown.Aggregate(Probability.Impossible, (sum, o) => sum + o.PerEgg),
            genotypes.Take(question.Most).Select(g => Line(catalogue, g)).ToArray(),
            genotypes.Length > question.Most,
            wants.Select(w => new WantReckoning(catalogue, cross, eggs, question).Answer(w)).ToArray(),
            cross.Survival,
            CrossWarnings.Losses(catalogue, cross),
            clutchText,
            eggs.Mean,
            PunnettWords.Of(catalogue, sire.Value.Belief, dam.Value.Belief),
            CrossWarnings.Of(catalogue, cross, sire.Value.Belief, dam.Value.Belief));
    }

    // Two animals of the stock may be kin, and then share their doubts.
    private static Mating MatingOf(StockState? stock, CrossQuestion question, GenotypeBelief sire, GenotypeBelief dam, CancellationToken cancel) =>
        stock?.Find(question.Sire) is { } his && stock.Find(question.Dam) is { } her && his != her
            ? StockMating.Of(stock, his, her, cancel)
            : Mating.Of(sire, dam);

    private static OutcomeLine Outcome(OpenCatalogue catalogue, LookOutcome look, GoodEggs eggs)
    {
        var shared = look.Shared();
        return new(
            catalogue.Wording.Look(look.Seen),
            catalogue.Wording.Label(look.Seen),
            look.Sex,
            look.Chance,
            look.ChanceOfHatchling,
            look.Hidden.Select(h => new HiddenLine(catalogue.Wording.Pair(h), h.Chance)).ToArray(),
            look.Faint.Select(f => f.Name).ToArray(),
            Range(shared.NumberIn(eggs)),
            shared.AtLeastOne(eggs),
            catalogue.Wording.LookByAge(look.Seen));
    }

    private static GenotypeLine Line(OpenCatalogue catalogue, GenotypeOutcome outcome) => new(
        catalogue.Wording.Text(outcome.Genotype),
        GeneticNotation.Write(outcome.Genotype),
        outcome.Sex,
        outcome.Chance,
        outcome.Survival);

    /// <summary>The mean of a number and the range that holds it in 90 of 100 clutches.</summary>
    internal static CountRange Range(IReadOnlyList<double> number)
    {
        var mean = number.Select((p, n) => p * n).Sum();
        return new(mean, Percentile(0.05), Percentile(0.95));

        int Percentile(double share)
        {
            var sum = 0.0;
            for (var n = 0; n < number.Count; n++)
            {
                sum += number[n];
                if (sum >= share - 1e-12)
                {
                    return n;
                }
            }

            return number.Count - 1;
        }
    }
}
