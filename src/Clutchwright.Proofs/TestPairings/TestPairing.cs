using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Allelisms;
using Clutchwright.Proofs.Linkages;

namespace Clutchwright.Proofs.TestPairings;

/// <summary>A pairing that could settle a doubt between a claim and its opposite: the kinds of eggs it gives if the claim holds and if not.</summary>
/// <remarks>Within a hypothesis the parents may still be one thing or another; the eggs of the pair share that. Immutable.</remarks>
public sealed class TestPairing
{
    /// <summary>Makes a pairing.</summary>
    /// <param name="name">What it is called, for example the mate's tag.</param>
    /// <param name="classes">The classes of egg that can be told apart, at least two.</param>
    /// <param name="ifSo">The cases if the claim holds; weights in sum 1.</param>
    /// <param name="ifNot">The cases if it does not; weights in sum 1.</param>
    /// <exception cref="ArgumentException">Weights or chances do not sum to 1, or a case has other classes.</exception>
    public TestPairing(string name, IReadOnlyList<string> classes, IReadOnlyList<PairingCase> ifSo, IReadOnlyList<PairingCase> ifNot)
    {
        foreach (var cases in new[] { ifSo, ifNot })
        {
            if (Math.Abs(cases.Sum(c => c.Weight) - 1.0) > 1e-9
                || cases.Any(c => c.Classes.Count != classes.Count || c.Classes.Any(p => p is not (>= 0.0 and <= 1.0)) || Math.Abs(c.Classes.Sum() - 1.0) > 1e-9))
            {
                throw new ArgumentException("Weights and chances sum to 1.", nameof(ifSo));
            }
        }

        Name = name;
        Classes = [.. classes];
        IfSo = [.. ifSo.Where(c => c.Weight > 0.0)];
        IfNot = [.. ifNot.Where(c => c.Weight > 0.0)];
    }

    /// <summary>Gets what it is called.</summary>
    public string Name { get; }

    /// <summary>Gets the classes of egg.</summary>
    public IReadOnlyList<string> Classes { get; }

    /// <summary>Gets the cases if the claim holds.</summary>
    public IReadOnlyList<PairingCase> IfSo { get; }

    /// <summary>Gets the cases if it does not.</summary>
    public IReadOnlyList<PairingCase> IfNot { get; }

    /// <summary>A mate for a possible het of a recessive; the claim is that the animal is het.</summary>
    /// <param name="name">The mate.</param>
    /// <param name="visual">The chance that the mate has two copies.</param>
    /// <param name="het">The chance that it has one.</param>
    /// <exception cref="ArgumentOutOfRangeException">The two chances pass 1 together.</exception>
    public static TestPairing OfHet(string name, Probability visual, Probability het)
    {
        var neither = (visual + het).Complement;
        return new(
            name,
            ["visual", "normal"],
            [new(visual.Value, [0.5, 0.5]), new(het.Value, [0.25, 0.75]), new(neither.Value, [0.0, 1.0])],
            [new(1.0, [0.0, 1.0])]);
    }

    /// <summary>A cross that tells whether two alleles lie at one locus; the claim is that they do.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="pairing">The cross.</param>
    /// <param name="carries">The chance that the parents are what the cross says.</param>
    public static TestPairing OfAllelism(string name, AllelismPairing pairing, Probability carries)
    {
        return new(name, ["telling", "other"], Cases(isOneLocus: true), Cases(isOneLocus: false));

        PairingCase[] Cases(bool isOneLocus)
        {
            var telling = AllelismClutch.TellingPerEgg(pairing, isOneLocus).Value;
            var otherwise = pairing == AllelismPairing.BothByNeither ? telling : 0.0;
            return
            [
                new(carries.Value, [telling, 1.0 - telling]),
                new(carries.Complement.Value, [otherwise, 1.0 - otherwise]),
            ];
        }
    }

    /// <summary>A cross of a doubly heterozygous animal; the claim is that its two loci are linked at a fraction, against free.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="r">The fraction if linked, in [0, 0.5).</param>
    /// <param name="informative">The share of eggs in which both loci can be read, in (0, 1].</param>
    /// <param name="phase">Whether recombinants can be told from parental types.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static TestPairing OfLinkage(string name, double r, double informative, LinkagePhase phase)
    {
        if (r is not (>= 0.0 and < 0.5) || informative is not (> 0.0 and <= 1.0))
        {
            throw new ArgumentOutOfRangeException(nameof(r), r, "r lies in [0, 0.5), the informative share in (0, 1].");
        }

        double[] Eggs(double share) => [informative * (1.0 - share), informative * share, 1.0 - informative];
        return new(
            name,
            ["one kind", "other kind", "not told"],
            phase == LinkagePhase.Known ? [new(1.0, Eggs(r))] : [new(0.5, Eggs(r)), new(0.5, Eggs(1.0 - r))],
            [new(1.0, Eggs(0.5))]);
    }
}
