using Clutchwright.Genetics.Genotypes;
using Clutchwright.Pedigrees.Tests.Beliefs.Twin;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>The engine against the slow twin, which enumerates every genotype of every animal, on every kind of record.</summary>
public class BeliefTwinTests
{
    [Fact]
    public void Of_AnyBook_EqualsTheSlowTwin() => BookGen.Any.Sample(Compare, iter: 3000);

    [Fact]
    public void Of_BooksOfFalseEntries_EqualsTheSlowTwin() => BookGen.Clashing.Sample(Compare, iter: 2000);

    private static void Compare(SampleBook book)
    {
        var beliefs = book.Reckon();
        if (beliefs.Clashes.Sum(c => c.Records.Count) > 6)
        {
            // The twin's plain products would fall below the smallest number.
            return;
        }

        var twin = BeliefTwin.Of(book.Species, book.Animals, book.Settings, beliefs.Clashes);

        Assert.False(twin.Kins.Exists(k => k.Complaints.Count > 0), string.Join("; ", twin.Kins.SelectMany(k => k.Complaints)));
        Assert.Equal(twin.LogLikelihood, beliefs.LogLikelihood, 1e-8);
        foreach (var kin in twin.Kins)
        {
            TwinNode[] recorded = [.. kin.Nodes.Where(n => n.Record is not null && n.Name == n.Record.Key)];
            foreach (var (node, group) in recorded.SelectMany(_ => twin.Groups, (n, g) => (n, g)))
            {
                var own = kin.Own(group, node);
                AssertEqual(
                    Table(own.Select((w, s) => (Key(group, node, s), w))),
                    beliefs[node.Name].Genotype[group.Group].ToDictionary(w => w.Value, w => w.Weight.Value));
                foreach (var other in recorded.Where(o => o != node))
                {
                    var joint = kin.Joint[(group, node, other)];
                    AssertEqual(
                        Table(joint.Cast<double>().Select((w, i) =>
                            ((Key(group, node, i / group.States.Count), Key(group, other, i % group.States.Count)), w))),
                        beliefs.Together(group.Group, node.Name, other.Name).ToDictionary(w => w.Value, w => w.Weight.Value));
                }
            }

            foreach (var node in recorded)
            {
                var observations = node.Record!.Observations;
                Assert.Equal(
                    Enumerable.Range(0, observations.Count).Where(i => kin.IsChance(observations[i]) && !kin.IsCounted(node, observations[i])),
                    beliefs[node.Name].NotCounted.Order());
            }
        }
    }

    private static Diplotype Key(TwinGroup group, TwinNode node, int state)
    {
        var diplotype = group.States[state].Diplotype;
        return group.Group.IsSex && node.Sex is null ? Diplotype.Unordered(diplotype.First, diplotype.Second) : diplotype;
    }

    private static Dictionary<T, double> Table<T>(IEnumerable<(T Key, double Weight)> weights)
        where T : notnull => weights.GroupBy(w => w.Key).ToDictionary(g => g.Key, g => g.Sum(w => w.Weight));

    private static void AssertEqual<T>(Dictionary<T, double> expected, Dictionary<T, double> actual)
        where T : notnull
    {
        foreach (var key in expected.Keys.Union(actual.Keys))
        {
            Assert.Equal(expected.GetValueOrDefault(key), actual.GetValueOrDefault(key), 1e-10);
        }
    }
}
