using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.Looks;

/// <summary>What of an animal bears a tone.</summary>
public enum TonePlace
{
    Ground = 1,
    Pattern = 2,
    Eye = 3,
}

/// <summary>What the catalogue has words on.</summary>
public enum WordPlace
{
    Anywhere = 1,
    Ground = 2,
    Form = 3,
    Head = 4,
}

/// <summary>When in life a tone is to be seen.</summary>
public enum LookCourse
{
    /// <summary>At one stage, whatever comes before or after.</summary>
    AtOneAge = 1,

    /// <summary>At every stage.</summary>
    Holds = 2,

    /// <summary>On the adult, not yet on the hatchling.</summary>
    Comes = 3,

    /// <summary>On the hatchling, no longer on the adult.</summary>
    Fades = 4,
}

/// <summary>A tone that is wanted.</summary>
/// <param name="Places">Any one of these will do.</param>
/// <param name="Colours">Any one of these will do.</param>
/// <param name="Most">The greatest difference by CIEDE2000 that still counts as this tone.</param>
public sealed record ToneWish(IReadOnlyList<TonePlace> Places, IReadOnlyList<CielabColour> Colours, double Most);

/// <summary>Words that are to stand in the description.</summary>
/// <param name="Place">Where.</param>
/// <param name="Words">All of these, each as part of a word, in any case.</param>
public sealed record WordWish(WordPlace Place, IReadOnlyList<string> Words);

/// <summary>A look that is looked for: all that is said of it must hold.</summary>
public sealed class LookWish
{
    /// <summary>The most genes a composed making may be asked to have.</summary>
    public const int GreatestGenes = 3;

    /// <summary>Gets the tones.</summary>
    public IReadOnlyList<ToneWish> Tones { get; init; } = [];

    /// <summary>Gets the words.</summary>
    public IReadOnlyList<WordWish> Words { get; init; } = [];

    /// <summary>Gets the least and the most white; <c>null</c>: whatever.</summary>
    public (WhiteExtent Least, WhiteExtent Most)? White { get; init; }

    /// <summary>Gets when in life the tones are to be seen.</summary>
    public LookCourse Course { get; init; } = LookCourse.AtOneAge;

    /// <summary>Gets the stage, where <see cref="Course"/> is one age.</summary>
    public AgeStage Stage { get; init; } = AgeStage.Adult;

    /// <summary>Gets how far own tones may change from hatchling to adult where a look is to hold and no tone is named.</summary>
    public double MostChange { get; init; } = 12.0;

    /// <summary>Gets the most genes (loci) of a composed making, 1 to <see cref="GreatestGenes"/>; stated looks may have more.</summary>
    public int MostGenes { get; init; } = 2;

    /// <summary>Gets the alleles a making must have.</summary>
    public IReadOnlyCollection<Allele> With { get; init; } = [];

    /// <summary>Gets the alleles a making must not have.</summary>
    public IReadOnlyCollection<Allele> Without { get; init; } = [];

    /// <summary>Gets the alleles at hand; <c>null</c>: it does not matter.</summary>
    public IReadOnlySet<Allele>? AtHand { get; init; }

    /// <summary>Gets whether makings with alleles not at hand are left out.</summary>
    public bool IsOfThoseAtHand { get; init; }

    /// <summary>Gets whether makings that suffer or die are left out.</summary>
    public bool IsWithoutHarm { get; init; }

    /// <summary>Gets the stage at which a making is first looked at, and at which its words are read.</summary>
    public AgeStage MainStage => Course switch
    {
        LookCourse.AtOneAge => Stage,
        LookCourse.Fades => AgeStage.Hatchling,
        _ => AgeStage.Adult,
    };
}
