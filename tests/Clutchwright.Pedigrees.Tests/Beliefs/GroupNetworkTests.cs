using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Pedigrees.Tests.Beliefs.Twin;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>What is struck out family by family before anything is summed.</summary>
public class GroupNetworkTests
{
    [Fact]
    public void Reduce_AnyBook_KeepsEveryStateThatHasWeight() => BookGen.Any.Sample(
        book =>
        {
            var run = new BeliefRun(book.Species, book.Animals, book.Settings, new BeliefCache(book.Species, book.Settings, null), null, default);
            run.Run();
            if (run.Clashes.Count > 0)
            {
                return;
            }

            var twin = BeliefTwin.Of(book.Species, book.Animals, book.Settings, []);
            for (var node = 0; node < run.Frame.RecordedCount; node++)
            {
                var (kin, own) = twin.Kins
                    .SelectMany(_ => _.Nodes, (k, n) => (Kin: k, Node: n))
                    .First(p => p.Node.Name == run.Frame.Records[node]!.Key);
                foreach (var group in twin.Groups)
                {
                    var network = run.Networks[group.Group.Index]!;
                    var left = network.States[node].Select(s => (network.Space.Diplotypes[s], network.Space.Sexes[s])).ToHashSet();
                    var weights = kin.Own(group, own);
                    Assert.All(Enumerable.Range(0, weights.Length).Where(s => weights[s] > 0.0), s => Assert.Contains(group.States[s], left));
                }
            }
        },
        iter: 500);
}
