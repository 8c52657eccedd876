using Clutchwright.Genetics.Loci;

namespace Clutchwright.Genetics.Tests.Twin;

/// <summary>The places of one chromosome in map order, as the definition of the placements gives them.</summary>
/// <param name="IsSex">Whether it is the sex chromosomes.</param>
/// <param name="Places">The indices of the loci; -1 is the sex-determining region.</param>
/// <param name="Fractions">The recombination fractions between neighbours; on the sex chromosomes of the sex with two different ones.</param>
/// <param name="OtherFractions">The same for the sex with two like sex chromosomes.</param>
internal sealed record TwinCluster(bool IsSex, int[] Places, double[] Fractions, double[] OtherFractions)
{
    /// <summary>Gets the bits that the alleles of these loci take in the code of a strand.</summary>
    public long Bits { get; } = Places.Where(p => p >= 0).Aggregate(0L, (bits, p) => bits | (7L << (3 * p)));

    public static List<TwinCluster> Of(SpeciesDefinition species)
    {
        var clusters = new List<TwinCluster>();
        var numbered = species.Loci.Select((l, i) => (l.Placement, Index: i)).ToArray();
        clusters.AddRange(numbered.Where(n => n.Placement is Placement.Autosomal).Select(n => new TwinCluster(false, [n.Index], [], [])));
        foreach (var chromosome in numbered.Where(n => n.Placement is Placement.Linked).GroupBy(n => ((Placement.Linked)n.Placement).Group))
        {
            var ordered = chromosome.OrderBy(n => ((Placement.Linked)n.Placement).Position).ToArray();
            var fractions = new double[ordered.Length - 1];
            for (var i = 0; i < fractions.Length; i++)
            {
                var morgans = (((Placement.Linked)ordered[i + 1].Placement).Position - ((Placement.Linked)ordered[i].Placement).Position) / 100.0;
                fractions[i] = 0.5 * (1.0 - Math.Exp(-2.0 * morgans)); // Haldane 1919
            }

            clusters.Add(new(false, ordered.Select(n => n.Index).ToArray(), fractions, fractions));
        }

        clusters.Add(SexOf(numbered));
        return clusters;
    }

    // Arm 2, the sex-determining region, arm 1; each arm by its distance from the region in the sex with two different chromosomes.
    private static TwinCluster SexOf((Placement Placement, int Index)[] numbered)
    {
        var linked = numbered
            .Where(n => n.Placement is Placement.SexLinked)
            .Select(n => (Placement: (Placement.SexLinked)n.Placement, n.Index))
            .OrderBy(n => n.Placement.Recombination.Value)
            .ThenBy(n => n.Placement.OtherSex?.Value ?? n.Placement.Recombination.Value)
            .ToArray();
        var (left, right) = (linked.Where(n => n.Placement.Arm == 2).ToList(), linked.Where(n => n.Placement.Arm != 2).ToList());
        var places = new List<int> { -1 };
        var (fractions, others) = (new List<double>(), new List<double>());
        foreach (var (arm, atEnd) in new[] { (right, true), (left, false) })
        {
            var (near, nearOther) = (0.0, 0.0);
            foreach (var (placement, index) in arm)
            {
                var far = placement.Recombination.Value;
                var farOther = placement.OtherSex?.Value ?? far;
                places.Insert(atEnd ? places.Count : 0, index);
                fractions.Insert(atEnd ? fractions.Count : 0, Between(near, far));
                others.Insert(atEnd ? others.Count : 0, Between(nearOther, farOther));
                (near, nearOther) = (far, farOther);
            }
        }

        return new(true, [.. places], [.. fractions], [.. others]);
    }

    // From r13 = r12 + r23 - 2 r12 r23 (no interference). A farther place with the smaller fraction counts as no distance;
    // beyond a place that is free of the region nothing is known, so all is free there.
    private static double Between(double near, double far) =>
        far < near ? 0.0 : near >= 0.5 ? 0.5 : (far - near) / (1.0 - (2.0 * near));
}
