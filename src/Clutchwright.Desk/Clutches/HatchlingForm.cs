using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Clutches;

/// <summary>A hatchling as a form holds it.</summary>
public sealed record HatchlingForm
{
    /// <summary>Gets its identity, made by whoever enters it: the same sent twice is entered once.</summary>
    public Guid Id { get; init; }

    /// <summary>Gets the clutch's tag.</summary>
    public string Clutch { get; init; } = string.Empty;

    /// <summary>Gets its own id; empty: the next by the scheme.</summary>
    public string? Tag { get; init; }

    /// <summary>Gets what is seen, in trade words; empty: not looked at.</summary>
    public string? Look { get; init; }

    /// <summary>Gets whether the keeper is not quite sure of the look.</summary>
    public bool IsUnsure { get; init; }

    /// <summary>Gets <c>m</c>, <c>f</c>, or <c>u</c> or empty: unsexed.</summary>
    public string? Sex { get; init; }

    /// <summary>Gets the mass in grams.</summary>
    public string? MassGrams { get; init; }

    /// <summary>Gets when it hatched; empty: with the clutch, or today if it is the first.</summary>
    public string? Hatched { get; init; }

    /// <summary>Gets the status as text; empty: kept.</summary>
    public string? Status { get; init; }

    /// <summary>Gets notes.</summary>
    public string? Notes { get; init; }

    /// <summary>Gets whether the keeper was asked and says it again.</summary>
    public bool IsAgain { get; init; }
}

/// <summary>What became of a hatchling that was entered.</summary>
/// <param name="Animal">It, as it is in the book; <c>null</c>: it was not taken yet.</param>
/// <param name="Tag">Its id.</param>
/// <param name="AskAgain">What is to be said again before it is taken, in sentences; empty where it was taken.</param>
/// <param name="Words">What it is believed to be.</param>
/// <param name="Advice">Whether to hold it back, and why.</param>
/// <param name="Deed">The deed; <c>null</c>: it was entered before.</param>
public sealed record HatchlingAnswer(
    AnimalLine? Animal, string Tag, IReadOnlyList<string> AskAgain, AnimalWords? Words, IReadOnlyList<Advice> Advice, DeedLine? Deed);

/// <summary>Whether to hold an animal back.</summary>
/// <param name="IsHoldBack">Whether it is needed; else nothing that is followed needs it.</param>
/// <param name="Text">For what, and how sure it is what is needed.</param>
public sealed record Advice(bool IsHoldBack, string Text);
