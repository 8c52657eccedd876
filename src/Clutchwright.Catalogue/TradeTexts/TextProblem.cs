using System.Diagnostics.CodeAnalysis;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>Why a trade text cannot be taken.</summary>
public enum TextProblemKind
{
    /// <summary>Nothing is said.</summary>
    Empty = 1,

    /// <summary>A word or sign that is not known.</summary>
    UnknownWord = 2,

    /// <summary>A word that lacks what belongs to it: a percentage without het, het without a gene.</summary>
    Incomplete = 3,

    /// <summary>More than two alleles at one locus.</summary>
    TooManyAlleles = 4,

    /// <summary>Two statements that cannot both hold.</summary>
    Contradiction = 5,

    /// <summary>Het of a gene that shows in one copy.</summary>
    NotCarriedUnseen = 6,

    /// <summary>A maker that cannot be one: the wrong sex, or a gene that is not sex-linked.</summary>
    NotAMaker = 7,

    /// <summary>A slash between alleles of different loci, or strands that fit no linkage group.</summary>
    NotOneLocus = 8,

    /// <summary>A name that stands for several pairs of alleles.</summary>
    Ambiguous = 9,

    /// <summary>Something that the place does not allow: a percentage in a want, more than one animal.</summary>
    NotHere = 10,
}

/// <summary>What is wrong with a trade text, and where.</summary>
/// <param name="Kind">The kind of fault.</param>
/// <param name="Position">The first character concerned, from 0.</param>
/// <param name="Length">How many characters are concerned; 0 at the end of the text.</param>
/// <param name="Text">What is wrong, and what would be right.</param>
/// <param name="Spellings">Up to three known spellings near an unknown word, nearest first.</param>
public sealed record TextProblem(TextProblemKind Kind, int Position, int Length, string Text, IReadOnlyList<string> Spellings);

/// <summary>How something in a trade text was taken that can be taken in more than one way.</summary>
/// <param name="Position">The first character concerned, from 0.</param>
/// <param name="Length">How many characters are concerned.</param>
/// <param name="Text">How it was taken.</param>
public sealed record TextNote(int Position, int Length, string Text);

/// <summary>What came of reading a trade text: the value, or what is wrong.</summary>
public sealed class TextOutcome<T>
    where T : class
{
    internal TextOutcome(T value) => Value = value;

    internal TextOutcome(TextProblem problem) => Problem = problem;

    /// <summary>Gets whether the text was taken.</summary>
    [MemberNotNullWhen(true, nameof(Value))]
    [MemberNotNullWhen(false, nameof(Problem))]
    public bool IsRead => Value is not null;

    /// <summary>Gets what was read; <c>null</c> if there is a problem.</summary>
    public T? Value { get; }

    /// <summary>Gets what is wrong; <c>null</c> if there is a value.</summary>
    public TextProblem? Problem { get; }
}
