using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Meiosis;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Testing.Pedigrees;

/// <summary>Genotypes dropped down a made-up pedigree, and the looks that a keeper would record.</summary>
public static class GeneDrop
{
    /// <summary>Drops alleles from founders drawn at random and records how every animal looks.</summary>
    /// <param name="species">The species.</param>
    /// <param name="pedigree">The pedigree.</param>
    /// <param name="frequencies">How common each allele is among founders; alleles not listed are absent.</param>
    /// <param name="seed">The seed.</param>
    public static IReadOnlyList<RecordedAnimal> Record(
        Species species, SamplePedigree pedigree, IReadOnlyDictionary<Allele, double> frequencies, ulong seed)
    {
        var genotypes = Genotypes(species, pedigree, frequencies, seed);
        var looks = new Dictionary<string, Observation.Seen>(StringComparer.Ordinal);
        return [.. genotypes.Select((g, i) => new RecordedAnimal(SamplePedigree.Id(i)!, pedigree.Sexes[i], [Look(species, g, looks)])
        {
            Sire = SamplePedigree.Id(pedigree.Sires[i]),
            Dam = SamplePedigree.Id(pedigree.Dams[i]),
        })];
    }

    /// <summary>The genotypes alone, in the order of the pedigree.</summary>
    public static IReadOnlyList<Genotype> Genotypes(
        Species species, SamplePedigree pedigree, IReadOnlyDictionary<Allele, double> frequencies, ulong seed)
    {
        var random = new SplitMix64(seed);
        var genotypes = new List<Genotype>(pedigree.Count);
        for (var i = 0; i < pedigree.Count; i++)
        {
            genotypes.Add(pedigree.IsFounder(i)
                ? Founder(species, pedigree.Sexes[i], frequencies, random)
                : Young(species, pedigree.Sexes[i], genotypes[pedigree.Sires[i]], genotypes[pedigree.Dams[i]], random));
        }

        return genotypes;
    }

    /// <summary>What is seen of an animal, with the reading of the words for it: one copy where one shows as much as two.</summary>
    /// <param name="species">The species.</param>
    /// <param name="genotype">What it truly is.</param>
    /// <param name="known">Looks made before, so that equal ones are one.</param>
    public static Observation.Seen Look(Species species, Genotype genotype, Dictionary<string, Observation.Seen> known)
    {
        var shown = species.Loci
            .Select(l => l.ExpressionOf(genotype.AllelesAt(l).First, genotype.AllelesAt(l).Second))
            .Where(e => e.IsVisible)
            .ToArray();
        var seen = species.SeenOf(shown);
        var key = string.Join('|', seen.Select(e => e.Id));
        if (!known.TryGetValue(key, out var look))
        {
            known.Add(key, look = new(seen, Reading(species, seen)));
        }

        return look;
    }

    private static GenotypeBelief Reading(Species species, IReadOnlyList<Expression> seen)
    {
        var reading = Genotype.Wild(species, species.SexSystem.Heterogametic().Opposite());
        foreach (var form in seen)
        {
            var pairs =
                from a in form.Locus.Alleles
                from b in form.Locus.Alleles
                where a.Index <= b.Index && form.Locus.ExpressionOf(a.Index, b.Index) == form
                orderby (a.IsWild ? 0 : 1) + (b.IsWild ? 0 : 1)
                select (a.Index, b.Index);
            var (first, second) = pairs.First();
            reading = reading.With(form.Locus, first, second);
        }

        return GenotypeBelief.Certain(reading);
    }

    private static Genotype Founder(Species species, Sex sex, IReadOnlyDictionary<Allele, double> frequencies, SplitMix64 random)
    {
        var genotype = Genotype.Wild(species, sex);
        foreach (var group in species.Groups)
        {
            genotype = genotype.With(group, Fit(group, species, sex, Haplotype(group), Haplotype(group)));
        }

        return genotype;

        int Haplotype(LinkageGroup group)
        {
            var haplotype = 0;
            foreach (var locus in group.Loci)
            {
                var left = random.NextShare();
                foreach (var allele in locus.Alleles)
                {
                    if (!allele.IsWild && frequencies.TryGetValue(allele, out var frequency) && (left -= frequency) < 0.0)
                    {
                        haplotype = group.With(haplotype, locus.IndexInGroup, allele.Index);
                        break;
                    }
                }
            }

            return haplotype;
        }
    }

    private static Genotype Young(Species species, Sex sex, Genotype sire, Genotype dam, SplitMix64 random)
    {
        var genotype = Genotype.Wild(species, sex);
        foreach (var group in species.Groups)
        {
            // Drawn again until the sex is right: sex is part of the pedigree.
            while (true)
            {
                var (diplotype, own) = Fertilization.Of(species, group, Gamete(sire, group, random), Gamete(dam, group, random));
                if (own is null || own == sex)
                {
                    genotype = genotype.With(group, diplotype);
                    break;
                }
            }
        }

        return genotype;
    }

    private static Gamete Gamete(Genotype parent, LinkageGroup group, SplitMix64 random)
    {
        var left = random.NextShare();
        var gametes = GameteFormation.Of(group, parent[group], parent.IsHeterogametic);
        foreach (var (gamete, chance) in gametes)
        {
            if ((left -= chance.Value) < 0.0)
            {
                return gamete;
            }
        }

        return gametes[^1].Value;
    }

    private static Diplotype Fit(LinkageGroup group, Species species, Sex sex, int first, int second) =>
        group.IsSex && sex == species.SexSystem.Heterogametic() ? new(first, second) : Diplotype.Unordered(first, second);
}
