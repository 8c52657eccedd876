using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Statements;

/// <summary>Takes back what was said of an animal. It stays in the history and can be brought back by undoing this.</summary>
public sealed class WithdrawStatement(Book book)
{
    public Task<Outcome<Statement>> RunAsync(StatementId statement, string who, CancellationToken cancellation) =>
        book.WriteAsync<Statement>(
            async db =>
            {
                var found = await db.Statements.SingleOrDefaultAsync(s => s.StatementId == statement, cancellation);
                if (found is null)
                {
                    return new StatementProblem.NotFound(statement);
                }

                if (found.WithdrawnAt is not null)
                {
                    return new StatementProblem.AlreadyWithdrawn(statement);
                }

                var tag = await db.Animals.Where(a => a.AnimalId == found.AnimalId).Select(a => a.Tag).SingleAsync(cancellation);
                found.Withdraw(book.Now);
                await db.RecordAsync(who, $"Withdrew of {tag}: {found}", book.Now, cancellation);
                return found;
            },
            cancellation);
}
