using System.Diagnostics.CodeAnalysis;

namespace Clutchwright.Stock;

/// <summary>What came of a deed or a question: its answer, or the problem for which nothing was done.</summary>
public sealed class Outcome<T>
    where T : notnull
{
    internal Outcome(T? value, Problem? problem)
    {
        Value = value;
        Problem = problem;
    }

    /// <summary>The answer; null if there is a problem.</summary>
    public T? Value { get; }

    /// <summary>Why nothing was done; null if it was done.</summary>
    public Problem? Problem { get; }

    [MemberNotNullWhen(true, nameof(Value))]
    [MemberNotNullWhen(false, nameof(Problem))]
    public bool IsDone => Problem is null;

    [SuppressMessage("Usage", "CA2225:Operator overloads have named alternates", Justification = "Match reads it, return makes it.")]
    public static implicit operator Outcome<T>(T value) => Outcome.Of(value);

    [SuppressMessage("Usage", "CA2225:Operator overloads have named alternates", Justification = "Match reads it, return makes it.")]
    public static implicit operator Outcome<T>(Problem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return new(default, problem);
    }

    public TResult Match<TResult>(Func<T, TResult> done, Func<Problem, TResult> refused)
    {
        ArgumentNullException.ThrowIfNull(done);
        ArgumentNullException.ThrowIfNull(refused);
        return IsDone ? done(Value) : refused(Problem);
    }

    /// <summary>The answer where a problem would be a mistake of the program's.</summary>
    /// <exception cref="InvalidOperationException">There is a problem.</exception>
    public T Expect() => IsDone ? Value : throw new InvalidOperationException($"Refused: {ProblemWords.Say(Problem)}");

    public override string ToString() => IsDone ? $"Done: {Value}" : $"Refused: {Problem}";
}

/// <summary>Makes outcomes where the compiler cannot: an interface has no implicit conversion.</summary>
public static class Outcome
{
    public static Outcome<T> Of<T>(T value)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(value);
        return new(value, null);
    }
}
