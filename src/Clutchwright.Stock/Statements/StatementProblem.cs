namespace Clutchwright.Stock.Statements;

/// <summary>Why a statement cannot be recorded or withdrawn.</summary>
public abstract record StatementProblem : Problem
{
    private StatementProblem()
    {
    }

    public sealed record KindUnknown(string Kind) : StatementProblem;

    /// <summary>The kind asks for a text.</summary>
    public sealed record TextMissing(StatementKind Kind) : StatementProblem;

    /// <summary>An animal that shows nothing has no text.</summary>
    public sealed record TextNotWanted(string Text) : StatementProblem;

    public sealed record TextInvalid(int MaxLength) : StatementProblem;

    public sealed record TextUnreadable(string Text, TradeTextProblem Trade) : StatementProblem;

    public sealed record ByInvalid(int MaxLength) : StatementProblem;

    public sealed record ConfidenceOutOfRange(double Confidence) : StatementProblem;

    /// <summary>A DNA test without its result and error rates, or these with another kind.</summary>
    public sealed record TestNotFitting(StatementKind Kind) : StatementProblem;

    public sealed record TestRateOutOfRange(double Rate) : StatementProblem;

    public sealed record NotFound(StatementId Statement) : StatementProblem;

    public sealed record AlreadyWithdrawn(StatementId Statement) : StatementProblem;
}
