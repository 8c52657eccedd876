using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>The reckoner against the slow twin, on every kind of animal the generators think of.</summary>
public class BeliefTwinTests
{
    [Fact]
    public void Of_AnyAnimal_EqualsTheSlowTwin() => BeliefCase.Any.Sample(
        c =>
        {
            var belief = c.Reckon();

            foreach (var group in c.Species.Groups)
            {
                var twin = new BeliefTwin(c, group);
                var actual = belief.Genotype[group].ToDictionary(w => w.Value, w => w.Weight.Value);
                Assert.Equal(twin.Belief.Keys.ToHashSet(), actual.Keys.ToHashSet());
                Assert.All(twin.Belief, p => Assert.Equal(p.Value, actual[p.Key], 1e-10));
                Assert.Equal(twin.Conflicts, belief.Conflicts.Where(x => x.Group == group).Select(x => (x.Source, x.Observation)));
            }
        },
        iter: 3000);

    [Fact]
    public void Of_AnyAnimal_EndsEveryGroupInItsLastStep() => BeliefCase.Any.Sample(
        c =>
        {
            var belief = c.Reckon();

            Assert.Equal(c.Sex ?? c.Species.SexSystem.Heterogametic().Opposite(), belief.Genotype.Sex);
            foreach (var steps in belief.Steps.GroupBy(s => s.Group))
            {
                Assert.All(steps, s => Assert.Equal(1.0, s.After.Sum(w => w.Weight.Value), 1e-9));
                Assert.Equal(
                    steps.Last().After.OrderBy(w => (w.Value.First, w.Value.Second)).Select(w => w.Value),
                    belief.Genotype[steps.Key].OrderBy(w => (w.Value.First, w.Value.Second)).Select(w => w.Value));
            }
        },
        iter: 600);

    [Fact]
    public void Of_RecordsThatAgreeInAnotherOrder_GivesTheSameBelief() => BeliefCase.Any.Sample(
        c =>
        {
            // Told possibilities depend on which comes first; likelihoods do not.
            var likelihoods = c with { Observations = [.. c.Observations.Where(o => o is not Observation.Said)] };
            var (forward, backward) = (likelihoods.Reckon(), (likelihoods with { Observations = [.. likelihoods.Observations.Reverse()] }).Reckon());
            if (forward.Conflicts.Count > 0 || backward.Conflicts.Count > 0 || c.Parents.Count == 0 || !c.BothParentsKnown)
            {
                return;
            }

            // Groups of which the parents know nothing start from the first words, whichever these are.
            var mating = c.Parents.Select(p => Mating.Of(p.Sire, p.Dam)).ToArray();
            foreach (var group in c.Species.Groups.Where(g => mating.Any(m => m.YoungAt(g, c.Sex).Any(w => !w.Value.IsWild))))
            {
                var expected = forward.Genotype[group].ToDictionary(w => w.Value, w => w.Weight);
                Assert.All(backward.Genotype[group], w => Assert.Equal(expected[w.Value].Value, w.Weight.Value, 1e-10));
            }
        },
        iter: 600);
}
