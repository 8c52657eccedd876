using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Statements;

/// <summary>Records what somebody says of an animal.</summary>
public sealed class AddStatement(Book book, CheckTradeText check)
{
    /// <returns>The statement, or <see cref="AnimalProblem.Refused"/> with everything that is wrong.</returns>
    public Task<Outcome<Statement>> RunAsync(AnimalId animal, StatementEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Statement>(
            async db =>
            {
                var tag = await db.Animals
                    .Where(a => a.AnimalId == animal && a.BinnedAt == null)
                    .Select(a => a.Tag)
                    .SingleOrDefaultAsync(cancellation);
                if (tag is null)
                {
                    return new AnimalProblem.NotFound(animal);
                }

                var problems = Statement.WhyNot(entry, check).ToList();
                if (problems.Count > 0)
                {
                    return new AnimalProblem.Refused(problems);
                }

                var statement = new Statement(StatementId.New(), animal, entry);
                db.Statements.Add(statement);
                await db.RecordAsync(who, $"Recorded of {tag}: {statement}", book.Now, cancellation);
                return statement;
            },
            cancellation);
    }
}
