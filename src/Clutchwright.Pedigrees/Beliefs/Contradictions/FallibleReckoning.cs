using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs.Contradictions;

/// <summary>One story about who is whose young, reckoned with records that may be wrong.</summary>
internal sealed class FallibleReckoning
{
    private readonly FallibleModel _model;
    private readonly NetworkAssembly _assembly;
    private readonly GroupNetwork[] _networks;
    private readonly PartSolution[] _solutions = [];
    private readonly double _logFixed;

    /// <summary>Reckons.</summary>
    /// <param name="model">How records weigh.</param>
    /// <param name="animals">The animals as the story has them.</param>
    /// <param name="virginBirth">Young that are of their dam alone, and stand no longer among the animals; <c>null</c>: none.</param>
    public FallibleReckoning(FallibleModel model, IReadOnlyList<RecordedAnimal> animals, VirginBirth? virginBirth = null)
    {
        _model = model;
        Frame = PedigreeFrame.Of(animals);
        _assembly = new NetworkAssembly(Frame, model.Species.Groups.Count);
        _networks = new GroupNetwork[model.Groups.Length];
        LogLikelihood = double.NegativeInfinity;
        for (var g = 0; g < _networks.Length; g++)
        {
            var weights = model.Weights(g, Frame, virginBirth);
            if (virginBirth is not null)
            {
                virginBirth.Weigh(model, model.Groups[g], weights[Enumerable.Range(0, Frame.RecordedCount).First(n => Frame.Records[n]!.Key == virginBirth.Dam)]);
            }

            _networks[g] = new GroupNetwork(Frame, model.Groups[g].Space, Frame.Sires, Frame.Dams, Frame.PossibleSires, weights);
            if (!_networks[g].Reduce() || !_assembly.Add(_networks[g], model.Groups[g], []))
            {
                return;
            }
        }

        var parts = _assembly.Parts();
        _solutions = new PartSolution[parts.Count];
        var total = _logFixed = _assembly.LogConstant + (virginBirth?.LogSexes ?? 0.0);
        for (var p = 0; p < parts.Count; p++)
        {
            _solutions[p] = model.Solve(parts[p]);
            if (!_solutions[p].IsPossible)
            {
                return;
            }

            total += _solutions[p].LogTotal;
        }

        LogLikelihood = total;
    }

    /// <summary>Gets the animals as nodes.</summary>
    public PedigreeFrame Frame { get; }

    /// <summary>Gets the natural logarithm of the probability of all records; minus infinity where the story is impossible.</summary>
    public double LogLikelihood { get; }

    /// <summary>The natural logarithm of how many times likelier all records are in this story than in another of the same model.</summary>
    /// <returns>Minus infinity where this story is impossible; <c>null</c> where a part in which the two differ was sampled, so that its probability is not known.</returns>
    /// <remarks>Parts that both stories share are left out, sampled or not.</remarks>
    public double? LogRatioTo(FallibleReckoning other)
    {
        if (double.IsNegativeInfinity(LogLikelihood))
        {
            return double.NegativeInfinity;
        }

        var times = new Dictionary<PartSolution, int>(ReferenceEqualityComparer.Instance);
        foreach (var solution in _solutions)
        {
            times[solution] = times.GetValueOrDefault(solution) + 1;
        }

        foreach (var solution in other._solutions)
        {
            times[solution] = times.GetValueOrDefault(solution) - 1;
        }

        var ratio = times.Where(t => t.Value != 0).Sum(t => t.Value * t.Key.LogTotal) + _logFixed - other._logFixed;
        return double.IsNaN(ratio) ? null : ratio;
    }

    /// <summary>Gets whether no part had to be sampled.</summary>
    public bool IsExact => Array.TrueForAll(_solutions, s => s.Errors is null);

    /// <summary>The states a node can have at one of the model's groups.</summary>
    public int[] StatesOf(int index, int node) => _networks[index].States[node];

    /// <summary>The posterior of a node's states at one of the model's groups, by state of the space.</summary>
    public double[] BeliefOf(int index, int node)
    {
        var group = _model.Groups[index].Space.Group.Index;
        var belief = new double[_model.Groups[index].Space.Count];
        var states = _networks[index].States[node];
        var variable = _assembly.Variables[group][node];
        if (variable < 0)
        {
            belief[states[0]] = 1.0;
            return belief;
        }

        var marginal = _solutions[_assembly.PartOf(variable)].Marginals[_assembly.Local[variable]];
        for (var i = 0; i < states.Length; i++)
        {
            belief[states[i]] = marginal[i];
        }

        return belief;
    }
}

/// <summary>Young of their dam alone, by terminal fusion: two copies of one of her haplotypes, at nearly every locus.</summary>
/// <remarks>They have the two like sex chromosomes: daughters in an XY species, sons in a ZW one. Source: docs/references.md [Booth2014].</remarks>
internal sealed record VirginBirth(string Dam, IReadOnlyList<RecordedAnimal> Young)
{
    /// <summary>Gets the logarithm of how much likelier their recorded sexes are than of sexual young, of which half are of either.</summary>
    public double LogSexes => Young.Sum(y => y.Sex is null ? 0.0 : y.Count * Math.Log(2.0));

    /// <summary>Weighs the dam's states by what is recorded of the young.</summary>
    public void Weigh(FallibleModel model, GroupModel group, double[] dam)
    {
        var space = group.Space;
        var isDamOrdered = space.Group.IsSex && model.Species.SexSystem.Heterogametic() == Sex.Female;
        foreach (var young in Young)
        {
            var records = young.Observations.Select(o => model.OfRecord(group, o, isFounder: false)).OfType<double[]>().ToArray();
            for (var d = 0; d < dam.Length; d++)
            {
                var (total, all) = (0.0, 0.0);
                for (var g = 0; g < space.Gametes[d].Length; g++)
                {
                    if (space.Gametes[d][g] % 2 == 1)
                    {
                        continue;
                    }

                    var haplotype = space.Haplotypes[space.Gametes[d][g] / 2];
                    var child = space.Of(new(haplotype, haplotype), heterogametic: false);
                    all += space.GameteChances[d][g];
                    total += space.GameteChances[d][g] * records.Aggregate(1.0, (product, r) => product * r[child]);
                }

                var kept = isDamOrdered ? 0.0 : model.Rates.RetainedHeterozygosity;
                var one = all == 0.0 ? 0.0 : ((1.0 - kept) * total / all) + (kept == 0.0 ? 0.0 : kept * records.Aggregate(1.0, (product, r) => product * r[d]));
                dam[d] *= Math.Pow(one, young.Count);
            }
        }
    }
}
