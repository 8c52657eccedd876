using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Proofs.Modes;

/// <summary>A species of one or two loci, in which a hypothesis about a trait is true.</summary>
internal sealed class TraitSpecies
{
    private const string Trait = "trait";
    private const string Other = "other";

    private readonly TraitHypothesis _hypothesis;
    private readonly InheritanceMode? _other;
    private readonly bool _isOneLocus;
    private readonly Species _species;

    /// <summary>Makes the species.</summary>
    /// <param name="hypothesis">How the trait is inherited.</param>
    /// <param name="other">How a second trait is; <c>null</c>: there is none.</param>
    /// <param name="isOneLocus">Whether both lie at one locus, which is then autosomal.</param>
    /// <param name="system">Which sex has two different sex chromosomes.</param>
    /// <param name="r">The recombination fraction with sex, where the locus is sex-linked.</param>
    public TraitSpecies(TraitHypothesis hypothesis, InheritanceMode? other, bool isOneLocus, SexSystem system, double r)
    {
        (_hypothesis, _other, _isOneLocus) = (hypothesis, other, isOneLocus);
        Placement placement = hypothesis.Placement == TraitPlacement.Autosomal
            ? new Placement.Autosomal()
            : new Placement.SexLinked(RecombinationFraction.From(r));
        var trait = new AlleleDefinition(Trait, Trait, hypothesis.Mode!.Value);
        var second = other is { } mode ? new AlleleDefinition(Other, Other, mode) : null;
        LocusDefinition[] loci = (second, isOneLocus) switch
        {
            (null, _) => [new(Trait, Trait, placement, [trait])],
            (_, false) => [new(Trait, Trait, placement, [trait]), new(Other, Other, new Placement.Autosomal(), [second])],
            _ => [new(Trait, Trait, placement, [trait, second]) { Forms = [new("both", "both", [(Trait, Other)])] }],
        };
        _species = Species.From(new("hypothesis", system, loci));
    }

    /// <summary>ln of the chance of all looks, given those of the founders, at a frequency of the alleles among these.</summary>
    public double Log(IReadOnlyList<TraitAnimal> animals, double q, CancellationToken cancel)
    {
        var settings = new BeliefSettings
        {
            Frequencies = _species.Loci.SelectMany(l => l.Alleles.Skip(1)).ToDictionary(a => a, _ => q),
        };
        var records = new List<RecordedAnimal>(animals.Count);
        foreach (var animal in animals)
        {
            if (Record(animal) is not { } record)
            {
                return double.NegativeInfinity;
            }

            records.Add(record);
        }

        var all = Chance(records, settings, cancel);
        if (double.IsNegativeInfinity(all))
        {
            return all;
        }

        // Founders are independent, and few looks differ among them.
        foreach (var founders in animals.Zip(records).Where(p => p.First.IsFounder && p.First.Look is not null)
            .GroupBy(p => (p.First.Sex, p.First.Look, p.First.OtherLook)))
        {
            all -= founders.Count() * Chance([founders.First().Second], settings, cancel);
        }

        return all;
    }

    private double Chance(IReadOnlyList<RecordedAnimal> records, BeliefSettings settings, CancellationToken cancel)
    {
        var beliefs = PedigreeBeliefs.Of(_species, records, settings, null, cancel);
        return beliefs.Clashes.Count > 0 ? double.NegativeInfinity : beliefs.LogLikelihood;
    }

    private RecordedAnimal? Record(TraitAnimal animal)
    {
        var observations = Array.Empty<Observation>();
        if (animal.Look is { } look)
        {
            if (Forms(look, animal.OtherLook) is not { } forms)
            {
                return null;
            }

            // Wild words: where an animal starts is left to the frequency.
            observations = [new Observation.Seen(forms, GenotypeBelief.Wild(_species, animal.Sex ?? Sex.Female))];
        }

        return new(animal.Key, animal.Sex, observations)
        {
            Sire = animal.Sire,
            Dam = animal.Dam,
            PossibleSires = animal.PossibleSires,
            SireWeights = animal.SireWeights,
            Clutch = animal.Clutch,
        };
    }

    // The visible forms; null where the hypothesis has no such look.
    private Expression[]? Forms(TraitLook look, TraitLook other)
    {
        var trait = _species.FindAllele(Trait)!;
        if (_other is not { } mode)
        {
            return Form(trait, _hypothesis, look) is var (found, form) && found ? form : null;
        }

        var second = _species.FindAllele(Other)!;
        if (_isOneLocus && look != TraitLook.Normal && other != TraitLook.Normal)
        {
            return look == TraitLook.Shows && other == TraitLook.Shows ? [trait.Locus.ExpressionOf(trait.Index, second.Index)] : null;
        }

        var (isFirst, first) = Form(trait, _hypothesis, look);
        var (isSecond, last) = Form(second, new(TraitPlacement.Autosomal, mode), other);
        return isFirst && isSecond ? [.. first, .. last] : null;
    }

    private static (bool IsPossible, Expression[] Forms) Form(Allele allele, TraitHypothesis hypothesis, TraitLook look)
    {
        if (look == TraitLook.Normal)
        {
            return (true, []);
        }

        for (var copies = 1; copies <= 2; copies++)
        {
            if (hypothesis.Look(copies) == look)
            {
                return (true, [allele.Locus.ExpressionOf(copies == 1 ? 0 : allele.Index, allele.Index)]);
            }
        }

        return (false, []);
    }
}
