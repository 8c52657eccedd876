using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Proofs.Linkages;

namespace Clutchwright.Proofs.Makers;

/// <summary>How tightly a locus rides on the sex chromosomes, from everything recorded of a pedigree: phases, doubts and hidden
/// genotypes are summed over by the belief engine.</summary>
/// <remarks>The LOD is against a locus that does not ride with sex, r = 1/2. Source: docs/references.md [Morton1955]. Immutable.</remarks>
public sealed class PedigreeMakerTest
{
    private const int Steps = 25;
    private const double Tolerance = 1e-5;
    private const double Surely = 0.99;

    private PedigreeMakerTest(LodCurve curve, int meioses, bool isExact)
    {
        Curve = curve;
        Meioses = meioses;
        IsExact = isExact;
    }

    /// <summary>Gets the LOD over the recombination fraction; each place newly asked for costs one solution of the pedigree.</summary>
    public LodCurve Curve { get; }

    /// <summary>Gets how many meioses are informative: sexed young of a heterozygous parent with two different sex chromosomes of whom it is
    /// known, with 99 % or more, which allele that parent passed on.</summary>
    public int Meioses { get; }

    /// <summary>Gets whether every likelihood was exact; else the pedigree is too wide and was sampled, and the curve is rough.</summary>
    public bool IsExact { get; }

    /// <summary>Reckons the curve.</summary>
    /// <param name="species">The species, with any fraction at the locus.</param>
    /// <param name="animals">All animals recorded.</param>
    /// <param name="locusId">A sex-linked locus.</param>
    /// <param name="settings">What beliefs are reckoned with; <c>null</c> for the default.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The test; the maximum and the ends of support within 1e-5. Cost: about 80 solutions of the pedigree.</returns>
    /// <exception cref="ArgumentException">The locus is not there or not sex-linked, or the record cannot be a pedigree.</exception>
    public static PedigreeMakerTest Of(
        Species species, IReadOnlyList<RecordedAnimal> animals, string locusId, BeliefSettings? settings = null, CancellationToken cancel = default)
    {
        settings ??= BeliefSettings.Default;
        var free = Solve(0.5);
        var isExact = free.IsExact;
        var known = new Dictionary<double, double> { [0.5] = 0.0 };
        var curve = LodCurve.Search(Lod, Steps, Tolerance);
        var best = Solve(curve.Best);
        return new(curve, CountMeioses(best, animals, best.Species.FindLocus(locusId)!), isExact);

        double Lod(double r)
        {
            if (!known.TryGetValue(r, out var lod))
            {
                var beliefs = Solve(r);
                isExact &= beliefs.IsExact;

                // What no meiosis can give at r = 0 counts as a clash there, and as a recombinant elsewhere.
                lod = r == 0.0 && beliefs.Clashes.Count > free.Clashes.Count
                    ? double.NegativeInfinity
                    : (beliefs.LogLikelihood - free.LogLikelihood) / Math.Log(10.0);
                known.Add(r, lod);
            }

            return lod;
        }

        PedigreeBeliefs Solve(double r)
        {
            cancel.ThrowIfCancellationRequested();
            var other = species.WithRecombination(locusId, RecombinationFraction.From(r));
            var bridge = new SpeciesBridge(species, other);
            return PedigreeBeliefs.Of(other, [.. animals.Select(bridge.Map)], bridge.Map(settings), null, cancel);
        }
    }

    private static int CountMeioses(PedigreeBeliefs beliefs, IReadOnlyList<RecordedAnimal> animals, Locus locus)
    {
        var isMale = beliefs.Species.SexSystem.Heterogametic() == Sex.Male;
        var count = 0;
        foreach (var young in animals.Where(a => a.Sex is not null))
        {
            var (parent, mate) = isMale ? (young.Sire, young.Dam) : (young.Dam, young.Sire);
            if (parent is null || Pair(parent) is not { } own || own.First == own.Second || Pair(young.Key) is not { } got)
            {
                continue;
            }

            var others = mate is null ? Enumerable.Range(0, locus.Alleles.Count) : Pair(mate) is { } pair ? [pair.First, pair.Second] : [];
            var passed = new[] { own.First, own.Second }
                .Where(p => others.Any(o => (Math.Min(p, o), Math.Max(p, o)) == got))
                .Count();
            count += passed == 1 ? young.Count : 0;
        }

        return count;

        (int First, int Second)? Pair(string key) => beliefs[key].Genotype.PairsAt(locus)[0] is { Weight.Value: >= Surely } likeliest ? likeliest.Value : null;
    }
}
