using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>Kinship at a locus on the sex chromosomes: each animal's two strands are followed, and which strand a parent with two different
/// chromosomes passes on goes by the sex of the young and by recombination.</summary>
/// <remarks>
/// Assumes founders' strands all different, and no recombination between the sex chromosomes in the sex that has two alike to matter: at one
/// locus it does not. Founders' inbreeding and kinship that the keeper says hold for autosomes and are not used. Of a sire in
/// doubt each young is taken by itself, also within a clutch. At recombination 1/2 the numbers are those of an autosomal locus. Cannot
/// change. Source: docs/references.md [GrossmanEisen1989] for full linkage; the rest follows from the definition.
/// </remarks>
public sealed class SexLinkedKinship
{
    private readonly KinshipReckoner _strands;
    private readonly IReadOnlyList<Sex?> _sexes;
    private readonly SexSystem _system;

    private SexLinkedKinship(Pedigree pedigree, KinshipReckoner strands, IReadOnlyList<Sex?> sexes, SexSystem system)
    {
        Pedigree = pedigree;
        _strands = strands;
        _sexes = sexes;
        _system = system;
    }

    /// <summary>The pedigree; positions are its own.</summary>
    public Pedigree Pedigree { get; }

    /// <summary>Works out the kinships.</summary>
    /// <param name="pedigree">Who descends from whom.</param>
    /// <param name="sexes">By position, the sex; null: not sexed, then its young's strands are a mixture of both cases.</param>
    /// <param name="system">Which sex has two different chromosomes.</param>
    /// <param name="recombination">Between the locus and the place that decides the sex, in the sex with two different chromosomes.</param>
    /// <param name="settings">Chances of sires in doubt; null: each alike.</param>
    /// <exception cref="ArgumentException">There are not as many sexes as animals, or chances are not as many as possible sires.</exception>
    /// <remarks>Cost: as autosomal kinship of twice as many animals, without the gain from full-sib families.</remarks>
    public static SexLinkedKinship Of(
        Pedigree pedigree, IReadOnlyList<Sex?> sexes, SexSystem system, RecombinationFraction recombination, KinshipSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(pedigree);
        ArgumentNullException.ThrowIfNull(sexes);
        if (sexes.Count != pedigree.Count)
        {
            throw new ArgumentException($"There are {pedigree.Count} animals and {sexes.Count} sexes.", nameof(sexes));
        }

        var graph = new DescentGraph();
        for (var i = 0; i < pedigree.Count; i++)
        {
            // Two nodes an animal: first the strand from the parent with two alike, then that from the other.
            var (sires, dams) = (SiresOf(pedigree, i, settings), DamsOf(pedigree, i));
            var (alike, different) = system == SexSystem.XY ? (dams, sires) : (sires, dams);
            AddStrand(graph, alike, 0.5);
            AddStrand(graph, different, sexes[i] switch
            {
                null => 0.5,
                { } sex when sex == system.Heterogametic() => recombination.Value,
                _ => 1.0 - recombination.Value,
            });
        }

        var strands = new Descent(graph, [.. Enumerable.Range(0, graph.Count)], null);
        return new SexLinkedKinship(pedigree, KinshipReckoner.Of(strands), sexes, system);
    }

    /// <summary>The chance that an allele drawn from any strand of one and any strand of the other are identical by descent, in [0, 1].</summary>
    /// <param name="first">An animal's position.</param>
    /// <param name="second">An animal's position.</param>
    public double Between(int first, int second) => (Strands(first, 0, second, 0) + Strands(first, 0, second, 1)
        + Strands(first, 1, second, 0) + Strands(first, 1, second, 1)) / 4.0;

    /// <summary>The chance that the two strands of an animal carry alleles identical by descent, in [0, 1].</summary>
    /// <param name="animal">The animal's position.</param>
    public double InbreedingOf(int animal) => Strands(animal, 0, animal, 1);

    /// <summary>The same as <see cref="Between"/> with alleles drawn from the X (or Z) only, of which one sex has one and the other two: the
    /// usual kinship at a locus that the other chromosome lacks.</summary>
    /// <param name="first">An animal's position.</param>
    /// <param name="second">An animal's position.</param>
    /// <exception cref="ArgumentException">An animal is not sexed.</exception>
    public double BetweenShared(int first, int second)
    {
        var (of, and) = (SharedStrands(first), SharedStrands(second));
        return of.Sum(a => and.Sum(b => Strands(first, a, second, b))) / of.Length / and.Length;
    }

    private static (int Animal, double Weight)[] SiresOf(Pedigree pedigree, int animal, KinshipSettings? settings)
    {
        if (pedigree.SireOf(animal) is >= 0 and var sire)
        {
            return [(sire, 1.0)];
        }

        var possible = pedigree.PossibleSiresOf(animal);
        var given = settings?.SireWeights.GetValueOrDefault(pedigree.Animals[animal].Key);
        return given is not null && given.Count != possible.Count
            ? throw new ArgumentException($"The chances of the possible sires of {pedigree.Animals[animal].Key} are not {possible.Count}.", nameof(settings))
            : [.. possible.Select((candidate, i) => (candidate, given?[i].Value ?? (1.0 / possible.Count)))];
    }

    private static (int Animal, double Weight)[] DamsOf(Pedigree pedigree, int animal) =>
        pedigree.DamOf(animal) is >= 0 and var dam ? [(dam, 1.0)] : [];

    private static void AddStrand(DescentGraph graph, (int Animal, double Weight)[] parents, double firstShare)
    {
        if (parents.Length == 0)
        {
            // A strand is one allele: surely identical with itself.
            graph.AddFounder(Probability.Certain);
            return;
        }

        var drawn = parents
            .SelectMany(p => new[] { (Node: 2 * p.Animal, Weight: p.Weight * firstShare), (Node: (2 * p.Animal) + 1, Weight: p.Weight * (1.0 - firstShare)) })
            .Where(d => d.Weight > 0.0)
            .ToArray();
        graph.AddChoice(
            [.. drawn.Select(d => d.Node)], [.. drawn.Select(d => d.Weight)], [.. drawn.Select(d => Probability.From(Math.Min(1.0, d.Weight)))]);
    }

    private double Strands(int first, int strand, int second, int other) => _strands.Between((2 * first) + strand, (2 * second) + other);

    private int[] SharedStrands(int animal) => _sexes[animal] switch
    {
        null => throw new ArgumentException($"{Pedigree.Animals[animal].Key} is not sexed.", nameof(animal)),
        { } sex when sex == _system.Heterogametic() => [0],
        _ => [0, 1],
    };
}
