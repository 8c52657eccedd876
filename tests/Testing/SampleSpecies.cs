using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Testing;

/// <summary>A made-up species with the description it was made from.</summary>
public sealed class SampleSpecies
{
    /// <summary>Makes the species.</summary>
    /// <param name="definition">The description.</param>
    /// <param name="isExact">Whether every number in it is an exact ratio.</param>
    public SampleSpecies(SpeciesDefinition definition, bool isExact)
    {
        Definition = definition;
        IsExact = isExact;
        Species = Species.From(definition);
    }

    /// <summary>Gets the description.</summary>
    public SpeciesDefinition Definition { get; }

    /// <summary>Gets whether every number in the description is an exact ratio.</summary>
    public bool IsExact { get; }

    /// <summary>Gets the species.</summary>
    public Species Species { get; }

    /// <inheritdoc/>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"{Definition.SexSystem} species, {(IsExact ? "exact" : "inexact")}");
        foreach (var locus in Definition.Loci)
        {
            text.Append(CultureInfo.InvariantCulture, $"  locus {locus.Id} ({Place(locus.Placement)}):");
            foreach (var allele in locus.Alleles)
            {
                text.Append(CultureInfo.InvariantCulture, $" {allele.Id} {allele.Mode}");
                text.Append(allele.Penetrance.IsCertain ? "" : $" shows {allele.Penetrance}");
                text.Append(allele.TellableFrom == AgeStage.Hatchling ? "" : $" from {allele.TellableFrom}");
                text.Append(';');
            }

            foreach (var form in locus.Forms)
            {
                var pairs = string.Join(' ', form.Pairs.Select(p => $"{p.First}/{p.Second}"));
                text.Append(CultureInfo.InvariantCulture, $" form {form.Id} = {pairs}");
                text.Append(form.TellableFrom == AgeStage.Hatchling ? ";" : $" from {form.TellableFrom};");
            }

            text.AppendLine();
        }

        foreach (var mask in Definition.Masks)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"  mask {Write(mask)}");
        }

        foreach (var danger in Definition.Dangers)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"  danger {Write(danger)}");
        }

        return text.ToString();
    }

    private static string Place(Placement placement) => placement switch
    {
        Placement.Linked linked => string.Create(CultureInfo.InvariantCulture, $"{linked.Group} at {linked.Position}"),
        Placement.SexLinked sex => string.Create(
            CultureInfo.InvariantCulture, $"sex arm {sex.Arm}, r {sex.Recombination.Value}, other sex {sex.OtherSex?.Value.ToString(CultureInfo.InvariantCulture) ?? "same"}"),
        _ => "free",
    };

    private static string Write(MaskDefinition mask) =>
        $"by {string.Join(' ', mask.By)} hides {(mask.Hides is null ? "all" : string.Join(' ', mask.Hides))}"
        + $" through [{string.Join(' ', mask.Through)}] faintly [{string.Join(' ', mask.Faintly)}]";

    private static string Write(DangerDefinition danger)
    {
        var when = string.Join(" & ", danger.When.Select(w => w switch
        {
            GenotypeCondition.Carries carries => $"any {carries.AlleleId}",
            GenotypeCondition.IsPair pair => $"{pair.FirstId}/{pair.SecondId}",
            _ => "?",
        }));
        return $"{danger.Id}: {when} {danger.Sex?.ToString() ?? "both sexes"}, lives {danger.Viability.Egg}, {danger.Viability.Hatch}, {danger.Viability.Months}";
    }
}
