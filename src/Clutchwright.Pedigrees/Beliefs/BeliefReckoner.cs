using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Works out what is believed of one animal from what is recorded of it and from what is believed of its parents.</summary>
/// <remarks>
/// Group by group: the start is what the parents may pass on, or, of a founder and where the parents' records know nothing of it, what the words about
/// the animal say; each further record then multiplies in its likelihood (Bayes' rule). A possible het that someone told is a start, never a likelihood: where
/// the parents' records imply a chance of their own it is not counted a second time. Of an animal of which nothing but a DNA test is
/// recorded, having what the test found and not having it are taken as equally likely before the test. Parents are taken as independent of each
/// other, and young of the animal tell nothing here: that needs the whole pedigree at once. A record that someone is only c sure of has likelihood c where
/// it agrees and 1 - c where it does not; taken as the start, it leaves a chance of 1 - c that the animal carries nothing.
/// </remarks>
public static class BeliefReckoner
{
    /// <summary>Reckons the belief.</summary>
    /// <param name="species">The species.</param>
    /// <param name="sex">The animal's sex; <c>null</c>: not known, sex-linked alleles then being told without their chromosome.</param>
    /// <param name="observations">What is recorded of it, in order.</param>
    /// <param name="matings">The pairs it may come from, with weights that sum to 1; empty: a founder.</param>
    /// <param name="bothParentsKnown">Whether sire and dam are both recorded. Where one is not (it stands as wild in <paramref name="matings"/>), what
    /// someone said of the animal, or what is seen of it and the one parent alone cannot give, is the start, and of that remains what the one parent
    /// may have had a part in.</param>
    public static AnimalBelief Of(
        Species species,
        Sex? sex,
        IReadOnlyList<Observation> observations,
        IReadOnlyList<Weighted<Mating>> matings,
        bool bothParentsKnown = true)
    {
        var belief = GenotypeBelief.Wild(species, sex ?? species.SexSystem.Heterogametic().Opposite());
        var steps = new List<BeliefStep>();
        var conflicts = new List<BeliefConflict>();
        foreach (var group in species.Groups)
        {
            var before = steps.Count;
            var work = new GroupWork(species, group, sex, observations, steps, conflicts);
            var after = work.Reckon(matings, bothParentsKnown);
            if (steps.Count > before)
            {
                belief = belief.With(group, after);
            }
        }

        return new(belief, steps, conflicts);
    }

    private sealed class GroupWork(
        Species species,
        LinkageGroup group,
        Sex? sex,
        IReadOnlyList<Observation> observations,
        List<BeliefStep> steps,
        List<BeliefConflict> conflicts)
    {
        private static readonly Weighted<Diplotype>[] Wild = [new(default, Probability.Certain)];
        private IReadOnlyList<Weighted<Diplotype>> _now = Wild;

        public IReadOnlyList<Weighted<Diplotype>> Reckon(IReadOnlyList<Weighted<Mating>> matings, bool bothParentsKnown)
        {
            var ofParents = FromParents(matings);
            var start = Words();
            var byWords = IsWild(ofParents) || (!bothParentsKnown && start is { } first && TellsMore(observations[first], ofParents));
            if (!byWords)
            {
                Step(BeliefSource.Parents, null, ofParents);
            }
            else if (start is { } words)
            {
                Step(BeliefSource.Words, words, Doubted(words, Reading(words)));
                if (!IsWild(ofParents))
                {
                    Restrict(words, ofParents);
                }
            }
            else
            {
                return Wild;
            }

            for (var i = 0; i < observations.Count; i++)
            {
                Weigh(i, fromParents: !byWords, isStart: byWords && i == start);
            }

            return _now;
        }

        // Of the parent that is not recorded nothing is known, so whatever it may have given is believed of it.
        private bool TellsMore(Observation words, IReadOnlyList<Weighted<Diplotype>> ofOneParent) => words switch
        {
            Observation.Said => true,
            Observation.Seen seen => ofOneParent.All(w => Matches(seen, w.Value).IsImpossible),
            _ => false,
        };

        // One of the two haplotypes must come from the recorded parent; the other parent gave a wild one in what is passed in.
        private void Restrict(int words, IReadOnlyList<Weighted<Diplotype>> ofOneParent)
        {
            var given = ofOneParent.Select(w => Math.Max(w.Value.First, w.Value.Second)).ToHashSet();
            Multiply(BeliefSource.Parents, words, d => One(given.Contains(d.First) || given.Contains(d.Second)), _now);
        }

        private void Weigh(int index, bool fromParents, bool isStart)
        {
            switch (observations[index])
            {
                case Observation.Seen seen when !(isStart && !seen.Confidence.IsCertain):
                    Multiply(BeliefSource.Seen, index, d => Matches(seen, d), seen.Reading[group]);
                    break;
                case Observation.Said said when !isStart && !IsWild(said.Reading[group]):
                    if (fromParents && said.Basis == StatementBasis.Told && IsChance(said.Reading[group]))
                    {
                        Step(BeliefSource.SaidAndImplied, index, _now);
                    }
                    else
                    {
                        var possible = said.Reading[group].Select(w => w.Value).ToHashSet();
                        Multiply(BeliefSource.Said, index, d => One(possible.Contains(d)), said.Reading[group]);
                    }

                    break;
                case Observation.RuledOut ruledOut when ruledOut.Alleles.Any(a => a.Locus.Group == group):
                    var gone = ruledOut.Alleles.Where(a => a.Locus.Group == group).ToArray();
                    Multiply(BeliefSource.RuledOut, index, d => One(!Array.Exists(gone, a => Copies(d, a) > 0)), Without(gone));
                    break;
                case Observation.DnaTest test when !isStart && test.Allele.Locus.Group == group:
                    Multiply(BeliefSource.DnaTest, index, d => Says(test, d), test.Copies == 0 ? Without([test.Allele]) : Found(test));
                    break;
            }
        }

        // Where nothing believed so far agrees with the record, the record is told as a conflict and what it says is believed.
        private void Multiply(
            BeliefSource source, int index, Func<Diplotype, Probability> likelihood, IReadOnlyList<Weighted<Diplotype>> otherwise)
        {
            var sure = source == BeliefSource.Parents ? Probability.Certain : observations[index].Confidence;
            var weighed = _now
                .Select(w => w with { Weight = w.Weight * Doubted(likelihood(w.Value), sure) })
                .Where(w => !w.Weight.IsImpossible)
                .ToArray();
            if (weighed.Length == 0)
            {
                conflicts.Add(new(group, source, index));
                Step(source, index, otherwise);
                return;
            }

            var total = weighed.Aggregate(Probability.Impossible, (sum, w) => sum + w.Weight);
            if (!total.IsCertain)
            {
                Step(source, index, weighed.Select(w => w with { Weight = w.Weight.Given(total).Tamed() }).ToArray());
            }
        }

        private static Probability Doubted(Probability agrees, Probability sure) =>
            sure.IsCertain ? agrees : (sure * agrees) + (sure.Complement * agrees.Complement);

        private IReadOnlyList<Weighted<Diplotype>> Doubted(int index, IReadOnlyList<Weighted<Diplotype>> reading)
        {
            var sure = observations[index].Confidence;
            return sure.IsCertain
                ? reading
                : [.. reading
                    .Select(w => w with { Weight = w.Weight * sure })
                    .Append(new(default, sure.Complement))
                    .GroupBy(w => w.Value)
                    .Select(g => new Weighted<Diplotype>(g.Key, g.Aggregate(Probability.Impossible, (sum, w) => sum + w.Weight)))];
        }

        private void Step(BeliefSource source, int? observation, IReadOnlyList<Weighted<Diplotype>> after)
        {
            _now = after;
            steps.Add(new(group, source, observation, after));
        }

        private Weighted<Diplotype>[] FromParents(IReadOnlyList<Weighted<Mating>> matings)
        {
            var sum = new Dictionary<Diplotype, Probability>();
            foreach (var (mating, weight) in matings)
            {
                foreach (var (diplotype, chance) in mating.YoungAt(group, sex))
                {
                    sum[diplotype] = (sum.TryGetValue(diplotype, out var old) ? old : Probability.Impossible) + (weight * chance);
                }
            }

            return matings.Count == 0 ? Wild : sum.Select(p => new Weighted<Diplotype>(p.Key, p.Value)).ToArray();
        }

        // What was said tells more than what can be seen, and that more than a test that finds something; of equals the first.
        private int? Words()
        {
            int? seen = null;
            int? found = null;
            for (var i = 0; i < observations.Count; i++)
            {
                switch (observations[i])
                {
                    case Observation.Said said when !IsWild(said.Reading[group]):
                        return i;
                    case Observation.Seen look when !IsWild(look.Reading[group]):
                        seen ??= i;
                        break;
                    case Observation.DnaTest { Copies: > 0 } test when test.Allele.Locus.Group == group:
                        found ??= i;
                        break;
                }
            }

            return seen ?? found;
        }

        private IReadOnlyList<Weighted<Diplotype>> Reading(int index) => observations[index] switch
        {
            Observation.Said said => said.Reading[group],
            Observation.Seen seen => seen.Reading[group],
            Observation.DnaTest test => AfterTest(test),
            _ => Wild,
        };

        private Weighted<Diplotype>[] AfterTest(Observation.DnaTest test)
        {
            var (truly, falsely) = (test.Sensitivity * Probability.Half, test.Specificity.Complement * Probability.Half);
            var total = truly + falsely;
            return total.IsImpossible ? Wild :
            [
                .. Found(test).Select(w => w with { Weight = w.Weight * truly.Given(total) }).Where(w => !w.Weight.IsImpossible),
                .. falsely.IsImpossible ? Wild[..0] : [new(default, falsely.Given(total))],
            ];
        }

        // As many copies as a test found, wild otherwise; which of two different sex chromosomes carries one copy the test does not say.
        private Weighted<Diplotype>[] Found(Observation.DnaTest test)
        {
            var haplotype = group.With(0, test.Allele.Locus.IndexInGroup, test.Allele.Index);
            return test.Copies > 1 ? [new(new(haplotype, haplotype), Probability.Certain)]
                : group.IsSex && sex == species.SexSystem.Heterogametic()
                    ? [new(new(haplotype, 0), Probability.Half), new(new(0, haplotype), Probability.Half)]
                    : [new(new(0, haplotype), Probability.Certain)];
        }

        // What is believed now, with the wild allele in place of some.
        private Weighted<Diplotype>[] Without(IReadOnlyList<Allele> alleles)
        {
            var isOrdered = group.IsSex && sex == species.SexSystem.Heterogametic();
            return _now
                .GroupBy(w => isOrdered
                    ? new Diplotype(Clean(w.Value.First), Clean(w.Value.Second))
                    : Diplotype.Unordered(Clean(w.Value.First), Clean(w.Value.Second)))
                .Select(g => new Weighted<Diplotype>(g.Key, g.Aggregate(Probability.Impossible, (sum, w) => sum + w.Weight)))
                .ToArray();

            int Clean(int haplotype) => alleles
                .Where(a => group.AlleleAt(haplotype, a.Locus.IndexInGroup) == a.Index)
                .Aggregate(haplotype, (code, a) => group.With(code, a.Locus.IndexInGroup, 0));
        }

        // The chance that an animal of this diplotype shows, at the loci of the group, what was seen; a locus that something seen hides tells nothing.
        private Probability Matches(Observation.Seen seen, Diplotype diplotype)
        {
            var chance = Probability.Certain;
            foreach (var locus in group.Loci)
            {
                var (a, b) = locus.PairOf(diplotype);
                var form = seen.Forms.FirstOrDefault(f => f.Locus == locus);
                var match = Probability.Impossible;
                foreach (var (expression, share) in locus.ExpressionsOf(a, b))
                {
                    var hidden = expression.IsVisible && species.IsHidden(expression, seen.Forms);
                    var agrees = form is not null
                        ? expression == form
                        : !expression.IsVisible || hidden || expression.TellableFrom > AgeStage.Hatchling;
                    match += agrees ? share : Probability.Impossible;
                }

                chance *= match;
            }

            return chance;
        }

        private static Probability Says(Observation.DnaTest test, Diplotype diplotype)
        {
            var copies = Copies(diplotype, test.Allele);
            return copies == 0
                ? (test.Copies == 0 ? test.Specificity : test.Specificity.Complement)
                : (test.Copies == copies ? test.Sensitivity : test.Sensitivity.Complement);
        }

        private static int Copies(Diplotype diplotype, Allele allele)
        {
            var (a, b) = allele.Locus.PairOf(diplotype);
            return (a == allele.Index ? 1 : 0) + (b == allele.Index ? 1 : 0);
        }

        private static bool IsWild(IReadOnlyList<Weighted<Diplotype>> possibilities) =>
            possibilities.Count == 1 && possibilities[0].Value.IsWild;

        private static bool IsChance(IReadOnlyList<Weighted<Diplotype>> possibilities) =>
            possibilities.Any(w => w.Value.IsWild);

        private static Probability One(bool holds) => holds ? Probability.Certain : Probability.Impossible;
    }
}
