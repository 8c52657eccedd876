using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Animals;

/// <summary>Withdraws a statement; it stays in the history.</summary>
public sealed class WithdrawStatement
{
    private readonly OpenBook _book;
    private readonly ListDeeds _deeds;

    internal WithdrawStatement(OpenBook book, ListDeeds deeds)
    {
        _book = book;
        _deeds = deeds;
    }

    /// <summary>Withdraws it; the deed is given back for undoing.</summary>
    public async Task<Answer<DeedLine>> RunAsync(Guid statement, string who, CancellationToken cancel)
    {
        var done = await new Stock.Statements.WithdrawStatement(_book.Book).RunAsync(new StatementId(statement), who, cancel);
        return done.IsDone ? (await _deeds.RunAsync(null, 1, cancel))[0] : Refusals.Of("statement", done.Problem);
    }
}
