namespace Clutchwright.Planning.Schemes;

/// <summary>The cheapest schemes in which a plant, once made, can be parent again and again.</summary>
/// <remarks>Each genotype is made once at most. Found by local search over the lists of genotypes to make, from the cheapest tree; proven by branch
/// and bound where that ends in time: two and three loci, and four of which some start together. Source of the problem: docs/references.md [CanzarElKebir2011].</remarks>
public static class SharedSchemes
{
    /// <summary>Looks for the cheapest scheme.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="effort">How hard to look.</param>
    /// <param name="threads">How many threads to use, at least 1; changes nothing but the time.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The best scheme found and how good it is.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public static SchemeAnswer Best(SchemeProblem problem, SchemeEffort effort, int threads = 1, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(effort.Starts, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(effort.Steps);
        ArgumentOutOfRangeException.ThrowIfNegative(effort.ProofSteps);
        if (TreeSchemes.ParentsAtWill(problem) is not { } tree)
        {
            // What a plant used twice can make, two such plants can.
            return new(null, SchemeCosts.Never, true);
        }

        var junctions = new JunctionBound(problem);
        var joined = junctions.Of(problem.Parents.Aggregate(0, (all, p) => all | junctions.JoinedBy(p)));
        var bound = Math.Max(new SchemeBound(problem).OfParents(), tree.Cost == 0 ? 0 : joined);
        if (tree.Cost <= bound)
        {
            return new(tree, tree.Cost, true);
        }

        var found = new CrossingScheme[effort.Starts];
        Parallel.For(0, effort.Starts, new() { MaxDegreeOfParallelism = threads, CancellationToken = cancel }, start =>
            found[start] = new SchemeAnnealing(problem, effort.Seed, (ulong)start).Run(tree, effort.Steps, cancel));
        var best = found.Append(tree).MinBy(s => s.Cost)!;
        if (best.Cost <= bound || effort.ProofSteps == 0 || problem.Loci.Count > SchemeProof.MostLoci)
        {
            return new(best, Math.Min(bound, best.Cost), best.Cost <= bound);
        }

        var proof = new SchemeProof(problem, best, effort.ProofSteps, cancel);
        return proof.Run() ? new(proof.Best, proof.Best.Cost, true) : new(proof.Best, bound, false);
    }
}
