using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Desk.Crosses;

/// <summary>The odds of a want in a cross, and how they come about.</summary>
internal sealed class WantReckoning(OpenCatalogue catalogue, Cross cross, GoodEggs eggs, CrossQuestion question)
{
    public static readonly IReadOnlyList<int> Confidences = [50, 90, 95, 99];

    public WantAnswer Answer((string Text, Want Want) asked)
    {
        var shared = cross.SharedChanceOf(asked.Want);
        var perEgg = shared.PerEgg;
        return new(
            asked.Text,
            perEgg,
            cross.Survival.IsImpossible ? Probability.Impossible : perEgg.Given(cross.Survival),
            shared.AtLeastOne(eggs),
            shared.AtLeast(question.AtLeast, eggs),
            question.AtLeast,
            AskCross.Range(shared.NumberIn(eggs)),
            shared.Ceiling,
            Confidences.ToDictionary(c => c, c => shared.EggsFor(Probability.Ratio(c, 100))),
            Confidences.ToDictionary(c => c, c => shared.ClutchesFor(Probability.Ratio(c, 100), eggs)),
            [.. Why(asked, shared)]);
    }

    // Where not every egg lives, loci are reckoned among live hatchlings: only there do their chances multiply.
    private IEnumerable<WhyStep> Why((string Text, Want Want) asked, SharedChance shared)
    {
        if (cross.Survival.IsImpossible)
        {
            yield return new("No genotype of this pair lives to hatch.", Probability.Impossible);
            yield break;
        }

        var ofWhat = cross.Survival.IsCertain ? "eggs" : "live hatchlings";
        foreach (var alternative in asked.Want.Alternatives)
        {
            if (asked.Want.Alternatives.Count > 1)
            {
                yield return new($"One way to have it; of the {ofWhat}:", Among(new Want([alternative])));
            }

            foreach (var locus in alternative.Loci)
            {
                var alone = Among(new Want([new WantedGenotype(null, [locus])]));
                yield return new($"At {locus.Locus.Name}: {Parents(locus)}. Of the {ofWhat} this share has what is wanted there.", alone);
            }

            if (alternative.Sex is { } sex)
            {
                yield return new($"It is to be {(sex == Genetics.Loci.Sex.Male ? "male" : "female")}.", null);
            }

            if (alternative.Loci.Count > 1)
            {
                yield return new(
                    $"Loci that are not linked are inherited independently, so their chances multiply. All together, of the {ofWhat}:",
                    Among(new Want([alternative])));
            }
            else if (alternative.Sex is not null)
            {
                yield return new($"Both together, of the {ofWhat}:", Among(new Want([alternative])));
            }
        }

        if (asked.Want.Alternatives.Count > 1)
        {
            yield return new($"Any of these ways, what is wanted in several of them counted once; of the {ofWhat}:", Among(asked.Want));
        }

        if (!cross.Survival.IsCertain)
        {
            yield return new("Not every genotype lives. Of good eggs laid this share becomes a live hatchling:", cross.Survival);
            yield return new("Multiplied with it, per good egg laid:", shared.PerEgg);
        }

        if (shared.Cases.Count > 1)
        {
            yield return new("What the parents carry is in doubt, and all eggs of the pair share that doubt:", null);
            foreach (var (chance, weight) in shared.Cases)
            {
                yield return new(
                    chance.IsImpossible
                        ? "It may be that the pair cannot give it at all. The chance of that:"
                        : $"It may be that every egg has a chance of {OddsText.RatioAndPercent(chance)}. The chance of that:",
                    weight);
            }
        }

        yield return new(
            shared.Cases.Count > 1
                ? $"At least one in the clutch, reckoned in each of these cases and then weighed ({eggs.Mean:0.#} good eggs on average):"
                : $"At least one in the clutch is one less the chance of none in {eggs.Mean:0.#} good eggs on average:",
            shared.AtLeastOne(eggs));
    }

    private Probability Among(Want want) => cross.ChanceOf(want).Given(cross.Survival);

    private string Parents(WantedPairs condition)
    {
        var locus = condition.Locus;
        return $"sire {Side(cross.Mating.PairsAt(locus, Genetics.Loci.Sex.Male))}, dam {Side(cross.Mating.PairsAt(locus, Genetics.Loci.Sex.Female))}";

        string Side(IReadOnlyList<Weighted<(int First, int Second)>> pairs) => string.Join(" or ", pairs.Select(p =>
        {
            var text = catalogue.Wording.Pair(locus, p.Value.First, p.Value.Second, isOrdered: false);
            return pairs.Count == 1 ? text : $"{text} ({OddsText.Percent(p.Weight)})";
        }));
    }
}
