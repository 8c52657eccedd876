using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Clutches;

/// <summary>Writes down that eggs were laid: a new clutch.</summary>
public sealed class RecordLaying(Book book, CheckTradeText check)
{
    /// <returns>The clutch; <see cref="ClutchProblem.Refused"/> with everything that is wrong.</returns>
    public Task<Outcome<Clutch>> RunAsync(ClutchEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Clutch>(
            async db =>
            {
                var problems = await ClutchRules.WhyNotAsync(db, null, entry, check, book.Now, cancellation);
                if (problems.Count > 0)
                {
                    return new ClutchProblem.Refused(problems);
                }

                var clutch = new Clutch(ClutchId.New(), entry);
                db.Clutches.Add(clutch);
                await db.RecordAsync(who, $"Wrote down {clutch}", book.Now, cancellation);
                return clutch;
            },
            cancellation);
    }
}
