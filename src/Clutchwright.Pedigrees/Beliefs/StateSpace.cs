using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Meiosis;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What an animal can be at one linkage group, counted, where only some alleles of each locus matter.</summary>
internal sealed class StateSpace
{
    private readonly int[] _child;
    private readonly Dictionary<(Diplotype Diplotype, bool Heterogametic), int> _index = [];

    /// <summary>Counts the states.</summary>
    /// <param name="species">The species.</param>
    /// <param name="group">The group.</param>
    /// <param name="alleles">For each locus of the group the indices of the alleles that matter, the wild one first.</param>
    public StateSpace(Species species, LinkageGroup group, IReadOnlyList<int[]> alleles)
    {
        Group = group;
        Alleles = alleles;
        var haplotypes = new List<int> { 0 };
        for (var locus = 0; locus < alleles.Count; locus++)
        {
            haplotypes = [.. alleles[locus].SelectMany(a => haplotypes.Select(h => group.With(h, locus, a)))];
        }

        Haplotypes = [.. haplotypes];
        var heterogametic = species.SexSystem.Heterogametic();
        var diplotypes = new List<Diplotype>();
        var sexes = new List<Sex?>();
        for (var i = 0; i < Haplotypes.Length; i++)
        {
            for (var j = i; j < Haplotypes.Length; j++)
            {
                Add(Diplotype.Unordered(Haplotypes[i], Haplotypes[j]), group.IsSex ? heterogametic.Opposite() : null);
            }
        }

        if (group.IsSex)
        {
            foreach (var shared in Haplotypes)
            {
                foreach (var unshared in Haplotypes)
                {
                    Add(new(shared, unshared), heterogametic);
                }
            }
        }

        Diplotypes = [.. diplotypes];
        Sexes = [.. sexes];
        var place = Haplotypes.Select((h, i) => (h, i)).ToDictionary(p => p.h, p => p.i);
        GameteCount = Haplotypes.Length * 2;
        Gametes = new int[Diplotypes.Length][];
        GameteChances = new double[Diplotypes.Length][];
        IsExact = true;
        for (var s = 0; s < Diplotypes.Length; s++)
        {
            var formed = GameteFormation.Of(group, Diplotypes[s], Sexes[s] == heterogametic);
            Gametes[s] = [.. formed.Select(g => (place[g.Value.Haplotype] * 2) + (g.Value.CarriesUnshared ? 1 : 0))];
            GameteChances[s] = [.. formed.Select(g => g.Weight.Value)];
            IsExact &= formed.All(g => g.Weight.Exact is not null);
        }

        _child = new int[GameteCount * GameteCount];
        for (var a = 0; a < GameteCount; a++)
        {
            for (var b = 0; b < GameteCount; b++)
            {
                _child[(a * GameteCount) + b] = Egg(species, a, b);
            }
        }

        void Add(Diplotype diplotype, Sex? sex)
        {
            _index.Add((diplotype, sex == heterogametic), diplotypes.Count);
            diplotypes.Add(diplotype);
            sexes.Add(sex);
        }
    }

    /// <summary>Gets the group.</summary>
    public LinkageGroup Group { get; }

    /// <summary>Gets the alleles that matter, by locus of the group, the wild one first.</summary>
    public IReadOnlyList<int[]> Alleles { get; }

    /// <summary>Gets the codes of the haplotypes made of them.</summary>
    public int[] Haplotypes { get; }

    /// <summary>Gets the diplotype of each state.</summary>
    public Diplotype[] Diplotypes { get; }

    /// <summary>Gets the sex of each state; <c>null</c> where the group does not tell it.</summary>
    public Sex?[] Sexes { get; }

    /// <summary>Gets how many gametes there are.</summary>
    public int GameteCount { get; }

    /// <summary>Gets the gametes that an animal of each state forms.</summary>
    public int[][] Gametes { get; }

    /// <summary>Gets the chances of <see cref="Gametes"/>.</summary>
    public double[][] GameteChances { get; }

    /// <summary>Gets whether every chance is a ratio known exactly.</summary>
    public bool IsExact { get; }

    /// <summary>Gets how many states there are.</summary>
    public int Count => Diplotypes.Length;

    /// <summary>The state of an egg; -1 where two gametes cannot meet.</summary>
    public int Child(int fromSire, int fromDam) => _child[(fromSire * GameteCount) + fromDam];

    /// <summary>Gets for each pair of states of sire and dam, the dam's counting faster, the states that young can have, as bits; <c>null</c> where there are more than 64 states.</summary>
    public ulong[]? Young => Count > 64 ? null : field ??= YoungOfAll();

    /// <summary>The state of a diplotype; -1 if it has a haplotype that does not matter here.</summary>
    public int Of(Diplotype diplotype, bool heterogametic) =>
        _index.TryGetValue((Group.IsSex && heterogametic ? diplotype : Diplotype.Unordered(diplotype.First, diplotype.Second), Group.IsSex && heterogametic), out var state)
            ? state
            : -1;

    /// <summary>Whether a state has an allele of some kind, other than the wild one.</summary>
    /// <param name="state">The state.</param>
    /// <param name="isMeant">Tells by locus of the group and index of the allele.</param>
    public bool Has(int state, Func<int, int, bool> isMeant)
    {
        for (var locus = 0; locus < Group.Loci.Count; locus++)
        {
            var (a, b) = Group.Loci[locus].PairOf(Diplotypes[state]);
            if ((a > 0 && isMeant(locus, a)) || (b > 0 && isMeant(locus, b)))
            {
                return true;
            }
        }

        return false;
    }

    private ulong[] YoungOfAll()
    {
        var young = new ulong[Count * Count];
        for (var sire = 0; sire < Count; sire++)
        {
            for (var dam = 0; dam < Count; dam++)
            {
                foreach (var a in Gametes[sire])
                {
                    foreach (var b in Gametes[dam])
                    {
                        young[(sire * Count) + dam] |= Child(a, b) is >= 0 and var child ? 1UL << child : 0UL;
                    }
                }
            }
        }

        return young;
    }

    private int Egg(Species species, int fromSire, int fromDam)
    {
        var sire = new Gamete(Haplotypes[fromSire / 2], fromSire % 2 == 1);
        var dam = new Gamete(Haplotypes[fromDam / 2], fromDam % 2 == 1);
        var heterogametic = species.SexSystem.Heterogametic();
        var homogametic = heterogametic == Sex.Male ? dam : sire;
        if (homogametic.CarriesUnshared || (!Group.IsSex && (sire.CarriesUnshared || dam.CarriesUnshared)))
        {
            return -1;
        }

        var (diplotype, sex) = Fertilization.Of(species, Group, sire, dam);
        return Of(diplotype, sex == heterogametic);
    }
}
