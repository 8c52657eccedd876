using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Finds the alleles that matter: those a record speaks of and those with a frequency among founders.</summary>
internal static class AllelesInPlay
{
    /// <summary>The loci of which a record speaks, be it to rule something out, or at which an allele has a frequency.</summary>
    public static IEnumerable<Locus> LociOf(Species species, IReadOnlyList<RecordedAnimal> animals, BeliefSettings settings)
    {
        var alleles = Of(species, animals, settings);
        var ruledOut = animals
            .SelectMany(a => a.Observations)
            .OfType<Observation.RuledOut>()
            .SelectMany(o => o.Alleles)
            .Select(a => a.Locus)
            .ToHashSet();
        return species.Loci.Where(l => ruledOut.Contains(l) || alleles[l.Group.Index] is { } group && group[l.IndexInGroup].Length > 1);
    }

    /// <summary>The indices of the alleles by group and locus, the wild one first.</summary>
    /// <returns>By group; <c>null</c> where only wild alleles are in play.</returns>
    public static IReadOnlyList<int[]>?[] Of(Species species, IReadOnlyList<RecordedAnimal> animals, BeliefSettings settings)
    {
        var found = new SortedSet<int>?[species.Groups.Count][];
        foreach (var (allele, frequency) in settings.Frequencies)
        {
            if (frequency > 0.0)
            {
                Add(allele);
            }
        }

        var known = new HashSet<GenotypeBelief>(ReferenceEqualityComparer.Instance);
        foreach (var animal in animals)
        {
            foreach (var observation in animal.Observations)
            {
                switch (observation)
                {
                    case Observation.Seen seen:
                        Read(seen.Reading);
                        break;
                    case Observation.Said said:
                        Read(said.Reading);
                        break;
                    case Observation.DnaTest test:
                        Add(test.Allele);
                        break;
                }
            }
        }

        return [.. found.Select((loci, g) => loci is null
            ? null
            : (IReadOnlyList<int[]>)[.. loci.Select(alleles => (int[])[0, .. alleles ?? []])])];

        void Read(GenotypeBelief reading)
        {
            if (!known.Add(reading))
            {
                return;
            }

            foreach (var group in species.Groups)
            {
                if (reading[group] is [{ Value.IsWild: true }])
                {
                    continue;
                }

                foreach (var (diplotype, _) in reading[group])
                {
                    foreach (var locus in group.Loci)
                    {
                        var (a, b) = locus.PairOf(diplotype);
                        Put(locus, a);
                        Put(locus, b);
                    }
                }
            }
        }

        void Add(Allele allele) => Put(allele.Locus, allele.Index);

        void Put(Locus locus, int allele)
        {
            if (allele > 0)
            {
                var loci = found[locus.Group.Index] ??= new SortedSet<int>?[locus.Group.Loci.Count];
                (loci[locus.IndexInGroup] ??= []).Add(allele);
            }
        }
    }
}
