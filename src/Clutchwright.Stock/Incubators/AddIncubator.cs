using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Incubators;

/// <summary>Writes down a new incubator.</summary>
public sealed class AddIncubator(Book book)
{
    /// <returns>The incubator; <see cref="IncubatorProblem.Refused"/> with everything that is wrong.</returns>
    public Task<Outcome<Incubator>> RunAsync(IncubatorEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Incubator>(
            async db =>
            {
                var problems = await WhyNotAsync(db, null, entry, cancellation);
                if (problems.Count > 0)
                {
                    return new IncubatorProblem.Refused(problems);
                }

                var incubator = new Incubator(IncubatorId.New(), entry);
                db.Incubators.Add(incubator);
                await db.RecordAsync(who, $"Added incubator {incubator}", book.Now, cancellation);
                return incubator;
            },
            cancellation);
    }

    /// <summary>What is wrong with what is entered; names are compared whatever the case, also with those out of use.</summary>
    internal static async Task<List<IncubatorProblem>> WhyNotAsync(StockContext db, IncubatorId? but, IncubatorEntry entry, CancellationToken cancellation)
    {
        var problems = Incubator.WhyNot(entry).ToList();
        var key = TextRules.Fold(entry.Name.Trim());
        var others = await db.Incubators.AsNoTracking().Where(i => i.IncubatorId != but).Select(i => i.Name).ToListAsync(cancellation);
        if (others.FirstOrDefault(name => TextRules.Fold(name) == key) is { } taken)
        {
            problems.Add(new IncubatorProblem.NameTaken(taken));
        }

        return problems;
    }
}
