namespace Clutchwright.Desk.Words;

/// <summary>An answer, or what was asked wrongly.</summary>
/// <typeparam name="T">The answer's type.</typeparam>
public sealed class Answer<T>
    where T : class
{
    private Answer(T? value, IReadOnlyList<AskedWrongly> problems)
    {
        Value = value;
        Problems = problems;
    }

    /// <summary>Gets the answer; <c>null</c> where something was asked wrongly.</summary>
    public T? Value { get; }

    /// <summary>Gets what was asked wrongly; empty where there is an answer.</summary>
    public IReadOnlyList<AskedWrongly> Problems { get; }

    /// <summary>Takes an answer.</summary>
    public static implicit operator Answer<T>(T value) => new(value, []);

    /// <summary>Takes one problem.</summary>
    public static implicit operator Answer<T>(AskedWrongly problem) => new(null, [problem]);

    /// <summary>Takes several problems.</summary>
    public static implicit operator Answer<T>(AskedWrongly[] problems) => new(null, problems);
}

/// <summary>Makes answers where the compiler cannot: an interface has no implicit conversion.</summary>
public static class Answer
{
    /// <summary>Takes an answer.</summary>
    public static Answer<T> Of<T>(T value)
        where T : class => value;
}

/// <summary>Something that was asked wrongly: what, where, and what would be right.</summary>
/// <param name="Where">The field or argument, for example <c>sire</c> or <c>want 1</c>.</param>
/// <param name="Text">What is wrong, in a sentence.</param>
/// <param name="At">Where in the text it begins, from 0; <c>null</c>: the whole.</param>
/// <param name="Length">How long the wrong place is.</param>
/// <param name="DidYouMean">The nearest good spellings.</param>
public sealed record AskedWrongly(
    string Where, string Text, int? At = null, int Length = 0, IReadOnlyList<string>? DidYouMean = null);
