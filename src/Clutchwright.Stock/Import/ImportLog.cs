using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Import;

/// <summary>Takes everything new of a log file into the book, or nothing. The latest weighing of an animal is its mass from then on.</summary>
public sealed class ImportLog(Book book)
{
    /// <summary>What an import of this file would do. Writes nothing.</summary>
    public Task<Outcome<TablePreview<LogRow>>> PreviewAsync(LogFile file, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(file);
        return book.ReadAsync<TablePreview<LogRow>>(async db => LogCheck.Run(file, await LogInBook.LoadAsync(db, file, cancellation), book.Now).Preview);
    }

    /// <param name="file">The file as the preview showed it; it is checked again against the book as it is now.</param>
    /// <param name="source">What the file is called, for the history.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is kept.</param>
    /// <returns>How many entries were added, or <see cref="ImportProblem.Refused"/> with every problem, or <see cref="ImportProblem.NothingNew"/>.</returns>
    public Task<Outcome<ImportResult>> RunAsync(LogFile file, string source, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(file);
        return book.WriteAsync<ImportResult>(
            async db =>
            {
                var there = await LogInBook.LoadAsync(db, file, cancellation);
                var (run, preview) = LogCheck.Run(file, there, book.Now);
                if (preview.Problems.Count > 0)
                {
                    return new ImportProblem.Refused(preview.Problems);
                }

                if (run.New.Count == 0)
                {
                    return new ImportProblem.NothingNew(preview.AlreadyThereCount);
                }

                db.Happenings.AddRange(run.New);
                await LeaveTracesAsync(db, run.New, there.Log, cancellation);
                var words = string.Create(CultureInfo.InvariantCulture, $"Imported {run.New.Count:N0} {(run.New.Count == 1 ? "entry" : "entries")} of the log from {source}");
                var deed = await db.RecordAsync(who, words, book.Now, cancellation)
                    ?? throw new InvalidOperationException("An import of a log changed nothing.");
                return new ImportResult(deed.DeedId, run.New.Count, preview.AlreadyThereCount);
            },
            cancellation);
    }

    private static async Task LeaveTracesAsync(StockContext db, IReadOnlyList<Happening> added, IReadOnlyList<Happening> there, CancellationToken cancellation)
    {
        var masses = Latest(added, there, kind => kind == HappeningKind.Weighed);
        var ends = Latest(added, there, kind => HappeningRules.StatusAfter(kind) is not null);
        foreach (var ids in masses.Keys.Union(ends.Keys).Chunk(CurrentRecords.IdsAtOnce))
        {
            foreach (var animal in await db.Animals.Where(a => ids.Contains(a.AnimalId)).ToListAsync(cancellation))
            {
                if (masses.TryGetValue(animal.AnimalId, out var weighing))
                {
                    animal.Weigh(weighing.Amount);
                }

                if (ends.TryGetValue(animal.AnimalId, out var end))
                {
                    animal.Become(HappeningRules.StatusAfter(end.Kind)!.Value);
                }
            }
        }
    }

    /// <summary>By animal, the last of such a kind, where nothing of it that stood before is later.</summary>
    private static Dictionary<AnimalId, Happening> Latest(IEnumerable<Happening> added, IEnumerable<Happening> there, Func<HappeningKind, bool> isOfKind)
    {
        var before = there.Where(h => isOfKind(h.Kind)).GroupBy(h => h.AnimalId).ToDictionary(same => same.Key, same => same.Max(h => h.When.Latest));
        return added.Where(h => isOfKind(h.Kind))
            .GroupBy(h => h.AnimalId, (animal, same) => (Animal: animal, Last: same.OrderBy(h => h.When.Latest).Last()))
            .Where(found => !before.TryGetValue(found.Animal, out var day) || day <= found.Last.When.Latest)
            .ToDictionary(found => found.Animal, found => found.Last);
    }
}
