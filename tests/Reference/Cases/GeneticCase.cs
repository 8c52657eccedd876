using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Cases;

/// <summary>A family, one or two loci, and what was seen of each animal.</summary>
/// <param name="Name">What kind of case it is, and the seed it was made from.</param>
/// <param name="Family">Who descends from whom; every animal has two known parents or none.</param>
/// <param name="Loci">One locus, or two linked ones.</param>
/// <param name="IsSexLinked">Whether the loci lie on the X chromosome. The Y then never carries anything but the wild allele, and a male shows what
/// a female with his allele and the wild one shows.</param>
/// <param name="Recombination">Between the two loci, in both sexes.</param>
/// <param name="Seen">By locus and animal: the look recorded; <c>null</c> if none was.</param>
internal sealed record GeneticCase(
    string Name, SamplePedigree Family, IReadOnlyList<LocusModel> Loci, bool IsSexLinked, double Recombination, IReadOnlyList<IReadOnlyList<int?>> Seen)
{
    /// <summary>Says whether an animal has one X and thus one allele of a locus.</summary>
    public bool IsHemizygous(int animal) => IsSexLinked && Family.Sexes[animal] == Sex.Male;

    /// <summary>The chance of what was seen of an animal at a locus, if it has these alleles; a hemizygous animal's second is the wild one.</summary>
    public double SeenChance(int locus, int animal, int a, int b) =>
        Seen[locus][animal] is { } look ? Loci[locus].Chance(a, b, look) : 1;

    /// <inheritdoc/>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"{Name}: {(IsSexLinked ? "X-linked" : "autosomal")}, recombination {Recombination}, {FamilyShape.Loops(Family)} loops");
        foreach (var locus in Loci)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"  alleles {string.Join(' ', locus.Frequencies)}, misread {locus.Misread}, looks {string.Join(' ', locus.Genotypes.Select(g => $"{g.First}{g.Second}:{locus.LookOf(g.First, g.Second)}"))}");
        }

        for (var i = 0; i < Family.Count; i++)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"  {i} {Family.Sexes[i]} of {Family.Sires[i]} x {Family.Dams[i]}: {string.Join(' ', Seen.Select(s => s[i]?.ToString(CultureInfo.InvariantCulture) ?? "?"))}");
        }

        return text.ToString();
    }
}
