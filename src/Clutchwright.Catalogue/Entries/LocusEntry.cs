using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.Entries;

/// <summary>What the catalogue says of a locus.</summary>
/// <param name="Locus">The locus.</param>
/// <param name="Gene">The gene's symbol; <c>null</c>: not known.</param>
/// <param name="Recombination">For a sex-linked locus the interval in which its recombination fraction is held to lie; <c>null</c>: none stated.</param>
/// <param name="Note">A remark, or <c>null</c>.</param>
/// <param name="Evidence">That its alleles share it, and where it lies.</param>
public sealed record LocusEntry(
    Locus Locus,
    string? Gene,
    (RecombinationFraction Least, RecombinationFraction Most)? Recombination,
    string? Note,
    Evidence Evidence);

/// <summary>What the catalogue says of a mutant allele.</summary>
/// <param name="Allele">The allele.</param>
/// <param name="Also">Other names and spellings.</param>
/// <param name="OneCopy">What one copy looks like.</param>
/// <param name="TwoCopies">What two copies look like; <c>null</c>: not known.</param>
/// <param name="WithAge">How the look changes; <c>null</c>: not stated.</param>
/// <param name="IsSubtle">Whether one copy is hard to tell by eye.</param>
/// <param name="TellableFrom">The first stage at which the visible form can be told.</param>
/// <param name="Frequency">How common it is among animals of which nothing is known; <c>null</c>: not stated.</param>
/// <param name="Evidence">On what grounds.</param>
public sealed record AlleleEntry(
    Allele Allele,
    IReadOnlyList<string> Also,
    string OneCopy,
    string? TwoCopies,
    string? WithAge,
    bool IsSubtle,
    AgeStage TellableFrom,
    AlleleFrequency? Frequency,
    Evidence Evidence);

/// <summary>How common an allele is among founders.</summary>
/// <param name="Value">The share of all copies of the locus, above 0, at most 1.</param>
/// <param name="Evidence">On what grounds.</param>
public sealed record AlleleFrequency(double Value, Evidence Evidence);

/// <summary>What the catalogue says of a visible form, stated on its own or following from its allele.</summary>
/// <param name="Expression">The form.</param>
/// <param name="Also">Other names.</param>
/// <param name="Pairs">The pairs of allele indices that show it, the smaller index first; more than one: not to be told apart by eye.</param>
/// <param name="Shows">What it looks like; <c>null</c>: not known.</param>
/// <param name="WithAge">How it changes; <c>null</c>: not stated.</param>
/// <param name="IsRecorded">False: put together from its parts, not recorded.</param>
/// <param name="Evidence">On what grounds.</param>
public sealed record FormEntry(
    Expression Expression,
    IReadOnlyList<string> Also,
    IReadOnlyList<(int First, int Second)> Pairs,
    string? Shows,
    string? WithAge,
    bool IsRecorded,
    Evidence Evidence);

/// <summary>What hides what, and on what grounds.</summary>
/// <param name="Definition">The rule.</param>
/// <param name="Evidence">On what grounds.</param>
public sealed record MaskEntry(MaskDefinition Definition, Evidence Evidence);
