using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Sheets;

/// <summary>What a clutch card says, for the tub of the eggs.</summary>
/// <param name="Sires">The sire, or the possible ones; none: not known.</param>
/// <param name="Dam">The dam.</param>
public sealed record ClutchCard(IReadOnlyList<ClutchParent> Sires, ClutchParent Dam)
{
    /// <summary>Gets the keeper's name of the clutch; <c>null</c>: it has none.</summary>
    public string? Name { get; init; }

    /// <summary>Gets when it was laid, in words; <c>null</c>: a line to write on.</summary>
    public string? Laid { get; init; }

    /// <summary>Gets the good eggs; <c>null</c>: a line to write on.</summary>
    public int? Eggs { get; init; }

    /// <summary>Gets what else is known, in order: the incubator, its temperature, slugs.</summary>
    public IReadOnlyList<(string Name, string Text)> More { get; init; } = [];

    /// <summary>Gets between which days most such clutches hatch; <c>null</c>: it is not known when it was laid.</summary>
    public (DateOnly From, DateOnly To)? Expected { get; init; }

    /// <summary>Gets on what the days expected rest.</summary>
    public string ExpectedWhy { get; init; } = string.Empty;

    /// <summary>Gets what can hatch: once, or once for each possible sire; none: the sire is not known.</summary>
    public IReadOnlyList<ClutchOdds> Odds { get; init; } = [];

    /// <summary>Gets dangers and remarks.</summary>
    public IReadOnlyList<Warning> Warnings { get; init; } = [];
}

/// <summary>A parent on a clutch card.</summary>
/// <param name="Name">Its tag and name, or what was asked.</param>
/// <param name="Words">Its genotype as believed.</param>
public sealed record ClutchParent(string Name, AnimalWords Words);

/// <summary>What can hatch of a sire.</summary>
/// <param name="Sire">The sire, where it is one of several.</param>
/// <param name="Looks">The looks, likeliest first.</param>
/// <param name="HasMore">Whether there are more looks than these.</param>
public sealed record ClutchOdds(string? Sire, IReadOnlyList<ClutchLook> Looks, bool HasMore);

/// <summary>A look that can hatch.</summary>
/// <param name="Name">In trade words.</param>
/// <param name="Label">The trade's name of the combination; <c>null</c>: none.</param>
/// <param name="Sex">In words; <c>null</c>: either.</param>
/// <param name="Chance">Of hatchlings.</param>
/// <param name="Hidden">What hatchlings of this look may carry, in words.</param>
public sealed record ClutchLook(string Name, string? Label, string? Sex, Probability Chance, IReadOnlyList<string> Hidden);

/// <summary>For which pair to print a clutch card.</summary>
/// <param name="Sire">A tag of the stock or trade text.</param>
/// <param name="Dam">A tag of the stock or trade text.</param>
public sealed record ClutchCardQuestion(string Sire, string Dam)
{
    /// <summary>Gets the tag of a clutch of the book, in place of sire, dam, day and eggs; <c>null</c>: none.</summary>
    public string? Clutch { get; init; }

    /// <summary>Gets when the eggs were laid, as the keeper writes it; <c>null</c>: a line to write on.</summary>
    public string? Laid { get; init; }

    /// <summary>Gets how many good eggs there are; <c>null</c>: a line to write on.</summary>
    public int? Eggs { get; init; }

    /// <summary>Gets the page: <c>a4</c> or <c>letter</c>.</summary>
    public string Page { get; init; } = "a4";
}
