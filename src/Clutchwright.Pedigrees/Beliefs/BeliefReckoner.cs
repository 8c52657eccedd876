using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Works out what is believed of one animal from what is recorded of it and from what is believed of its parents.</summary>
/// <remarks>
/// Group by group: the start is what the parents may pass on, or, of a founder and where the parents' records know nothing of it, what the words about
/// the animal say; each further record then multiplies in its likelihood (Bayes' rule). A possible het that someone told is a start, never a likelihood: where
/// the parents' records imply a chance of their own it is not counted a second time. Parents are taken as independent of each
/// other, and young of the animal tell nothing here: that needs the whole pedigree at once.
/// </remarks>
public static class BeliefReckoner
{
    /// <summary>Reckons the belief.</summary>
    /// <param name="species">The species.</param>
    /// <param name="sex">The animal's sex; <c>null</c>: not known, sex-linked alleles then being told without their chromosome.</param>
    /// <param name="observations">What is recorded of it, in order.</param>
    /// <param name="matings">The pairs it may come from, with weights that sum to 1; empty: a founder.</param>
    /// <param name="bothParentsKnown">Whether sire and dam are both recorded. Where one is not, what someone said of the animal tells more than
    /// the one parent does, and is the start.</param>
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
            var fromParents = !IsWild(ofParents)
                && (bothParentsKnown || start is not { } first || observations[first] is not Observation.Said);
            if (fromParents)
            {
                Step(BeliefSource.Parents, null, ofParents);
            }
            else if (start is { } words)
            {
                Step(BeliefSource.Words, words, Reading(words));
            }
            else
            {
                return Wild;
            }

            for (var i = 0; i < observations.Count; i++)
            {
                Weigh(i, fromParents, isStart: !fromParents && i == start);
            }

            return _now;
        }

        private void Weigh(int index, bool fromParents, bool isStart)
        {
            switch (observations[index])
            {
                case Observation.Seen seen:
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
                    Multiply(BeliefSource.RuledOut, index, d => One(!ruledOut.Alleles.Any(a => Copies(d, a) > 0)), Wild);
                    break;
                case Observation.DnaTest test when test.Allele.Locus.Group == group:
                    Multiply(BeliefSource.DnaTest, index, d => Says(test, d), _now);
                    break;
            }
        }

        // Where nothing believed so far agrees with the record, the record is told as a conflict and what it says is believed.
        private void Multiply(
            BeliefSource source, int index, Func<Diplotype, Probability> likelihood, IReadOnlyList<Weighted<Diplotype>> otherwise)
        {
            var weighed = _now
                .Select(w => w with { Weight = w.Weight * likelihood(w.Value) })
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
                Step(source, index, weighed.Select(w => w with { Weight = w.Weight.Given(total) }).ToArray());
            }
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

        // What was said tells more than what can be seen; of equals the first.
        private int? Words()
        {
            int? seen = null;
            for (var i = 0; i < observations.Count; i++)
            {
                switch (observations[i])
                {
                    case Observation.Said said when !IsWild(said.Reading[group]):
                        return i;
                    case Observation.Seen look when !IsWild(look.Reading[group]):
                        seen ??= i;
                        break;
                }
            }

            return seen;
        }

        private IReadOnlyList<Weighted<Diplotype>> Reading(int index) => observations[index] switch
        {
            Observation.Said said => said.Reading[group],
            Observation.Seen seen => seen.Reading[group],
            _ => Wild,
        };

        // The chance that an animal of this diplotype shows, at the loci of the group, what was seen; a locus that something seen hides tells nothing.
        private Probability Matches(Observation.Seen seen, Diplotype diplotype)
        {
            var chance = Probability.Certain;
            foreach (var locus in group.Loci)
            {
                var (a, b) = Pair(diplotype, locus);
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

        private Probability Says(Observation.DnaTest test, Diplotype diplotype)
        {
            var copies = Copies(diplotype, test.Allele);
            return copies == 0
                ? (test.Copies == 0 ? test.Specificity : test.Specificity.Complement)
                : (test.Copies == copies ? test.Sensitivity : test.Sensitivity.Complement);
        }

        private int Copies(Diplotype diplotype, Allele allele)
        {
            var (a, b) = Pair(diplotype, allele.Locus);
            return (a == allele.Index ? 1 : 0) + (b == allele.Index ? 1 : 0);
        }

        private (int First, int Second) Pair(Diplotype diplotype, Locus locus) => (
            group.AlleleAt(diplotype.First, locus.IndexInGroup),
            group.AlleleAt(diplotype.Second, locus.IndexInGroup));

        private static bool IsWild(IReadOnlyList<Weighted<Diplotype>> possibilities) =>
            possibilities.Count == 1 && possibilities[0].Value.IsWild;

        private static bool IsChance(IReadOnlyList<Weighted<Diplotype>> possibilities) =>
            possibilities.Any(w => w.Value.IsWild);

        private static Probability One(bool holds) => holds ? Probability.Certain : Probability.Impossible;
    }
}
