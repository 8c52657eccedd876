namespace Clutchwright.Stock.Statements;

/// <summary>The identity of a statement. The default is no statement.</summary>
public readonly record struct StatementId(Guid Value)
{
    public static StatementId New() => new(Guid.CreateVersion7());

    public override string ToString() => Value.ToString();
}
