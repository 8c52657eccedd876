using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Schemes;
using CsCheck;

namespace Clutchwright.Planning.Tests.Schemes;

/// <summary>A random problem with the recombination fractions of its neighbours, for the checker.</summary>
internal sealed record SchemeCase(SchemeProblem Problem, double[] Neighbours)
{
    public static Gen<SchemeCase> Of(int loci, int mostParents, bool hasWeights) =>
        from r in Gen.OneOf(Gen.Const(0.5), Gen.Double[0.02, 0.5]).Array[loci - 1]
        from parents in Gen.Int[0, (1 << loci) - 1].Select(Gen.Int[0, (1 << loci) - 1], (a, b) => new HaplotypePair(a, b)).Array[1, mostParents]
        from a in Gen.Int[0, (1 << loci) - 1]
        from b in Gen.OneOf(Gen.Const(a), Gen.Int[0, (1 << loci) - 1])
        from success in Among(0.5, 0.9, 0.99)
        from weights in hasWeights ? Among((0, 0), (5, 0), (0, 7), (10, 10)) : Among((0, 0), (5, 0))
        from most in Among(40, 100_000)
        select new SchemeCase(
            new(LinkedLoci.Neighbours([.. r.Select(RecombinationFraction.From)]), parents, new(a, b), success)
            {
                PerCrossing = weights.Item1,
                PerGeneration = weights.Item2,
                MostPlants = most,
            },
            r);

    private static Gen<T> Among<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    public override string ToString() => string.Join(
        "; ",
        $"r = {string.Join(", ", Neighbours)}",
        $"parents {string.Join(", ", Problem.Parents.Select(p => p.ToString(Problem.Loci.Count)))}",
        $"target {Problem.Target.ToString(Problem.Loci.Count)}, success {Problem.Success}",
        $"weights {Problem.PerCrossing}, {Problem.PerGeneration}, most {Problem.MostPlants}");
}
