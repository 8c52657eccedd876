using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Charts;

/// <summary>Which part of the stock's pedigree to draw.</summary>
/// <param name="Tag">The animal asked about; <c>null</c> or empty: the whole stock.</param>
public sealed record ChartQuestion(string? Tag)
{
    /// <summary>The most generations up or down that can be asked for.</summary>
    public const int MostGenerations = 12;

    /// <summary>The most genes that are marked at once.</summary>
    public const int MostGenes = 4;

    /// <summary>The most animals that are drawn at once.</summary>
    public const int MostAnimals = 600;

    /// <summary>Gets how many generations of ancestors, from 0.</summary>
    public int Up { get; init; } = 3;

    /// <summary>Gets how many generations of young, from 0.</summary>
    public int Down { get; init; } = 2;

    /// <summary>Gets whether all kin are drawn, however far.</summary>
    public bool IsWhole { get; init; }

    /// <summary>Gets the genes to mark, by id or name; empty: none; <c>null</c>: the one that most of the drawn animals carry.</summary>
    public IReadOnlyList<string>? Genes { get; init; }

    /// <summary>Gets how many animals are drawn at most, the nearest kin first.</summary>
    public int Most { get; init; } = 150;

    /// <summary>Gets how many young of one pair are drawn one by one where they have none themselves.</summary>
    public int MostYoung { get; init; } = 12;
}

/// <summary>What a symbol stands for.</summary>
public enum SymbolMeaning
{
    /// <summary>An animal.</summary>
    Animal = 1,

    /// <summary>An animal that stands elsewhere too.</summary>
    Again = 2,

    /// <summary>A parent that is not recorded.</summary>
    NotRecorded = 3,

    /// <summary>Several young that are not drawn one by one.</summary>
    SeveralYoung = 4,
}

/// <summary>How a line of a label is set.</summary>
public enum LabelStyle
{
    /// <summary>The keeper's id.</summary>
    Tag = 1,

    /// <summary>The animal's name.</summary>
    Name = 2,

    /// <summary>What can be seen.</summary>
    Seen = 3,

    /// <summary>What is carried unseen.</summary>
    Carried = 4,
}

/// <summary>One line of a label.</summary>
/// <param name="Text">Short enough for the room it has.</param>
/// <param name="Style">How it is set.</param>
public sealed record LabelLine(string Text, LabelStyle Style);

/// <summary>A symbol of a chart.</summary>
/// <param name="Meaning">What it stands for.</param>
/// <param name="X">The middle, in CSS pixels from the left.</param>
/// <param name="Y">The middle, in CSS pixels from the top.</param>
public sealed record ChartSymbolLine(SymbolMeaning Meaning, double X, double Y)
{
    /// <summary>Gets the animal's tag; <c>null</c> where it stands for none.</summary>
    public string? Tag { get; init; }

    /// <summary>Gets its sex; <c>null</c>: not known, or no animal.</summary>
    public Sex? Sex { get; init; }

    /// <summary>Gets whether this is the animal asked about.</summary>
    public bool IsAskedAbout { get; init; }

    /// <summary>Gets whether it is dead.</summary>
    public bool IsDead { get; init; }

    /// <summary>Gets whether it is in the room.</summary>
    public bool IsHere { get; init; } = true;

    /// <summary>Gets how many young it stands for.</summary>
    public int Young { get; init; }

    /// <summary>Gets whether parents are recorded that the chart does not draw.</summary>
    public bool HasMoreParents { get; init; }

    /// <summary>Gets how many young are recorded that the chart does not draw.</summary>
    public int MoreYoung { get; init; }

    /// <summary>Gets the share of each band that is filled, in the order of the key.</summary>
    public IReadOnlyList<double> Filled { get; init; } = [];

    /// <summary>Gets the label, line by line.</summary>
    public IReadOnlyList<LabelLine> Label { get; init; } = [];

    /// <summary>Gets all that the symbol says, in a sentence.</summary>
    public string Description { get; init; } = string.Empty;
}

/// <summary>What a line of a chart joins.</summary>
public enum StrokeUse
{
    /// <summary>A pair.</summary>
    Mating = 1,

    /// <summary>A pair, or siblings, with those above or below.</summary>
    Descent = 2,

    /// <summary>Two symbols of one animal; four points of a Bézier curve.</summary>
    Again = 3,
}

/// <summary>A point, in CSS pixels from the upper left corner.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Down.</param>
public readonly record struct ChartSpot(double X, double Y);

/// <summary>A line of a chart.</summary>
/// <param name="Use">What it joins.</param>
/// <param name="Points">Its corners.</param>
/// <param name="IsDouble">Whether the pair it joins are kin.</param>
/// <param name="IsDashed">Whether the sire is only a possible one.</param>
public sealed record ChartStroke(StrokeUse Use, IReadOnlyList<ChartSpot> Points, bool IsDouble = false, bool IsDashed = false);

/// <summary>A gene that can be marked.</summary>
/// <param name="Id">Its id in the catalogue.</param>
/// <param name="Name">Its name.</param>
public sealed record ChartGene(string Id, string Name);

/// <summary>One animal of a chart in words, for who does not see the drawing.</summary>
/// <param name="Tag">The keeper's id of it.</param>
/// <param name="Name">Its name, if any.</param>
/// <param name="Sex">Its sex; <c>null</c>: not known.</param>
/// <param name="Words">Its genotype as believed.</param>
/// <param name="Sires">Tags of the sire, or of the possible ones.</param>
/// <param name="Dam">The dam's tag; <c>null</c>: not recorded.</param>
/// <param name="AreParentsKin">Whether its parents are kin.</param>
/// <param name="Chances">The chance that it carries each gene marked, in the order of the key.</param>
/// <param name="Row">The generation on the chart, from 0 at the top.</param>
public sealed record ChartListLine(
    string Tag,
    string? Name,
    Sex? Sex,
    AnimalWords Words,
    IReadOnlyList<string> Sires,
    string? Dam,
    bool AreParentsKin,
    IReadOnlyList<Probability> Chances,
    int Row);

/// <summary>A drawn pedigree.</summary>
/// <param name="Tag">The animal asked about; <c>null</c>: the whole stock.</param>
/// <param name="Name">Its name, if any.</param>
/// <param name="Width">In CSS pixels.</param>
/// <param name="Height">In CSS pixels.</param>
/// <param name="SymbolSize">Width and height of a symbol in CSS pixels.</param>
/// <param name="LabelWidth">The width of the label under a symbol in CSS pixels.</param>
/// <param name="Symbols">Row by row, from left to right.</param>
/// <param name="Strokes">The lines, those that lie below others first.</param>
/// <param name="Marked">The genes marked, in the order of the bands.</param>
/// <param name="Genes">The genes that some drawn animal shows or may carry, by name.</param>
/// <param name="List">The same in words.</param>
/// <param name="NotDrawn">How many animals that were asked for were left out or counted in diamonds.</param>
public sealed record ChartAnswer(
    string? Tag,
    string? Name,
    double Width,
    double Height,
    double SymbolSize,
    double LabelWidth,
    IReadOnlyList<ChartSymbolLine> Symbols,
    IReadOnlyList<ChartStroke> Strokes,
    IReadOnlyList<ChartGene> Marked,
    IReadOnlyList<ChartGene> Genes,
    IReadOnlyList<ChartListLine> List,
    int NotDrawn);
