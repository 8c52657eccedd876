using Clutchwright.Genetics.Loci;
using Clutchwright.Proofs.Distributions;

namespace Clutchwright.Proofs.Modes;

/// <summary>How a trait is inherited, by all that a pedigree records of it: kin of kin are counted, which <see cref="TraitModeTest"/> leaves out.</summary>
/// <remarks>
/// What the founders show is taken as given. Alleles have one unknown frequency among founders, every value from 0 to 0.5 equally likely
/// before, and so has an unknown recombination fraction; the belief engine sums over all else. Full penetrance, no misread animal.
/// Source: docs/references.md [KassRaftery1995]. Immutable.
/// </remarks>
public sealed class PedigreeModeTest
{
    private static readonly (double At, double Weight)[] Recombinations = GaussLegendre.On(0.0, 0.5, 12);
    private static readonly (double At, double Weight)[] Frequencies = GaussLegendre.On(0.0, 0.5, 6);

    private PedigreeModeTest(IReadOnlyList<PedigreeModeEvidence> evidence)
    {
        Evidence = evidence;
        IsContradiction = evidence.All(e => double.IsNegativeInfinity(e.LogLikelihood));
    }

    /// <summary>Gets every hypothesis, the likeliest first.</summary>
    public IReadOnlyList<PedigreeModeEvidence> Evidence { get; }

    /// <summary>Gets whether no hypothesis can give the record; the posteriors are then the priors.</summary>
    public bool IsContradiction { get; }

    /// <summary>Weighs all hypotheses, each equally likely before.</summary>
    /// <param name="animals">The pedigree.</param>
    /// <param name="system">Which sex has two different sex chromosomes.</param>
    /// <param name="besides">How a known autosomal gene is inherited whose looks are recorded too: the trait may then be an allele of its locus.
    /// <c>null</c>: none.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The hypotheses with their odds. Cost: about 250 solutions of the pedigree.</returns>
    /// <exception cref="ArgumentException">The animals are no pedigree.</exception>
    public static PedigreeModeTest Of(
        IReadOnlyList<TraitAnimal> animals, SexSystem system, InheritanceMode? besides = null, CancellationToken cancel = default)
    {
        var hypotheses = TraitHypothesis.All.Select(h => (Hypothesis: h, IsOneLocus: false)).ToList();
        if (besides is not null)
        {
            hypotheses.AddRange(TraitHypothesis.All.Where(h => h.Placement == TraitPlacement.Autosomal).Select(h => (h, true)));
        }

        return new(Weigh(
            [.. hypotheses.Select(h => (h.Hypothesis, h.IsOneLocus, Log(animals, h.Hypothesis, h.IsOneLocus, system, besides, cancel)))]));
    }

    /// <summary>Weighs one locus against two for two traits whose modes are known: allelism from a pedigree.</summary>
    /// <param name="animals">The pedigree, with what is seen of both; an animal that shows both may be their compound.</param>
    /// <param name="first">How the first is inherited.</param>
    /// <param name="second">How the second is.</param>
    /// <param name="system">Which sex has two different sex chromosomes.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>Two hypotheses, the likelier first. Both loci are autosomal and, if two, free of each other.</returns>
    /// <exception cref="ArgumentException">The animals are no pedigree.</exception>
    public static PedigreeModeTest OfAllelism(
        IReadOnlyList<TraitAnimal> animals, InheritanceMode first, InheritanceMode second, SexSystem system, CancellationToken cancel = default)
    {
        var hypothesis = new TraitHypothesis(TraitPlacement.Autosomal, first);
        return new(Weigh(
        [
            (hypothesis, true, Log(animals, hypothesis, true, system, second, cancel)),
            (hypothesis, false, Log(animals, hypothesis, false, system, second, cancel)),
        ]));
    }

    private static PedigreeModeEvidence[] Weigh(IReadOnlyList<(TraitHypothesis Hypothesis, bool IsOneLocus, double Log)> logs)
    {
        var prior = 1.0 / logs.Count;
        var total = TraitLikelihood.LogSum([.. logs.Select(l => l.Log)]);
        return
        [
            .. logs
                .Select(l => new PedigreeModeEvidence(
                    l.Hypothesis, l.IsOneLocus, l.Log, prior, double.IsNegativeInfinity(total) ? prior : Math.Exp(l.Log - total)))
                .OrderByDescending(e => e.Posterior),
        ];
    }

    private static double Log(
        IReadOnlyList<TraitAnimal> animals, TraitHypothesis hypothesis, bool isOneLocus, SexSystem system, InheritanceMode? other, CancellationToken cancel)
    {
        if (hypothesis.Placement == TraitPlacement.NotInherited)
        {
            return NotInherited(animals, system, other, cancel);
        }

        (double At, double Weight)[] fractions = hypothesis.Placement switch
        {
            TraitPlacement.Autosomal => [(0.5, 1.0)],
            TraitPlacement.FullySexLinked => [(0.0, 1.0)],
            _ => Recombinations,
        };
        var logs = new List<double>();
        foreach (var (r, weight) in fractions)
        {
            var species = new TraitSpecies(hypothesis, other, isOneLocus, system, r);
            foreach (var (q, share) in Frequencies)
            {
                var log = species.Log(animals, q, cancel);
                if (double.IsNegativeInfinity(log))
                {
                    // What cannot be at one frequency or fraction inside the range cannot be at any.
                    return log;
                }

                logs.Add(Math.Log(weight) + Math.Log(share) + log);
            }
        }

        return TraitLikelihood.LogSum(logs);
    }

    // The trait by chance, the known gene beside it by its own rules.
    private static double NotInherited(IReadOnlyList<TraitAnimal> animals, SexSystem system, InheritanceMode? other, CancellationToken cancel)
    {
        var looks = animals.Where(a => !a.IsFounder && a.Look is not null).GroupBy(a => a.Look!.Value).ToDictionary(g => g.Key, g => g.LongCount());
        var hasSuper = animals.Any(a => a.Look == TraitLook.Super);
        var log = TraitLikelihood.LogOfChance([looks.GetValueOrDefault(TraitLook.Normal), looks.GetValueOrDefault(TraitLook.Shows), looks.GetValueOrDefault(TraitLook.Super)], hasSuper);
        if (other is not { } mode)
        {
            return log;
        }

        var species = new TraitSpecies(new(TraitPlacement.Autosomal, mode), null, isOneLocus: false, system, 0.5);
        var besides = animals.Select(a => a with { Look = a.Look is null ? null : a.OtherLook, OtherLook = TraitLook.Normal }).ToArray();
        return log + TraitLikelihood.LogSum([.. Frequencies.Select(f => Math.Log(f.Weight) + species.Log(besides, f.At, cancel))]);
    }
}

/// <summary>What a pedigree says of one hypothesis.</summary>
/// <param name="Hypothesis">The hypothesis.</param>
/// <param name="IsOneLocus">Whether the trait is an allele of the known gene's locus.</param>
/// <param name="LogLikelihood">The natural logarithm of the chance of all looks, given those of the founders; negative infinity where it cannot be.</param>
/// <param name="Prior">The chance of the hypothesis before.</param>
/// <param name="Posterior">The chance after.</param>
public sealed record PedigreeModeEvidence(TraitHypothesis Hypothesis, bool IsOneLocus, double LogLikelihood, double Prior, double Posterior);
