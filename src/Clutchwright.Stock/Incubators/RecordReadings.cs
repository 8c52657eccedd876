using System.Globalization;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Incubators;

/// <summary>What taking in many readings did.</summary>
/// <param name="Added">How many were written.</param>
/// <param name="Skipped">How many were in the book already, word for word.</param>
/// <param name="Deed">The one deed that undoing takes back as a whole; null: nothing was new.</param>
public sealed record ReadingsResult(int Added, int Skipped, DeedId? Deed);

/// <summary>A reading of many that cannot be taken.</summary>
/// <param name="Index">Its place among those given, from 0.</param>
/// <param name="Problem">Why.</param>
public sealed record ReadingRefused(int Index, IncubatorProblem Problem);

/// <summary>Writes down many readings of one incubator, as a logger gives them: all that are new, or none.</summary>
public sealed class RecordReadings(Book book)
{
    /// <param name="incubator">The incubator, in use.</param>
    /// <param name="entries">In any order. One of a time that is in the book, or given twice, is passed over if it says the same.</param>
    /// <param name="source">What they come from, for the history.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is written.</param>
    /// <returns>What was written, or <see cref="IncubatorProblem.RowsRefused"/> with each that is wrong.</returns>
    public Task<Outcome<ReadingsResult>> RunAsync(IncubatorId incubator, IReadOnlyList<ReadingEntry> entries, string source, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return book.WriteAsync<ReadingsResult>(
            async db =>
            {
                var checkedAgain = await CheckAsync(db, incubator, entries, book.Now, cancellation);
                if (!checkedAgain.IsDone)
                {
                    return checkedAgain.Problem;
                }

                var (found, fresh, refused) = checkedAgain.Value;
                if (refused.Count > 0)
                {
                    return new IncubatorProblem.RowsRefused(refused);
                }

                if (fresh.Count == 0)
                {
                    return new ReadingsResult(0, entries.Count, null);
                }

                db.Readings.AddRange(fresh.Select(e => new Reading(ReadingId.New(), incubator, e)));
                var words = string.Create(CultureInfo.InvariantCulture, $"Took {fresh.Count} readings of incubator {found} from {source}");
                var deed = await db.RecordAsync(who, words, book.Now, cancellation);
                return new ReadingsResult(fresh.Count, entries.Count - fresh.Count, deed!.DeedId);
            },
            cancellation);
    }

    /// <summary>What taking them in would do. Writes nothing.</summary>
    /// <returns>How many are new, how many are there already, and each that is wrong.</returns>
    public Task<Outcome<ReadingsPreview>> PreviewAsync(IncubatorId incubator, IReadOnlyList<ReadingEntry> entries, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return book.ReadAsync<ReadingsPreview>(async db =>
        {
            var found = await CheckAsync(db, incubator, entries, book.Now, cancellation);
            return found.IsDone
                ? new ReadingsPreview(found.Value.Fresh.Count, entries.Count - found.Value.Fresh.Count - found.Value.Refused.Count, found.Value.Refused)
                : found.Problem;
        });
    }

    private static async Task<Outcome<Checked>> CheckAsync(
        StockContext db, IncubatorId incubator, IReadOnlyList<ReadingEntry> entries, DateTime now, CancellationToken cancellation)
    {
        var found = await db.Incubators.AsNoTracking().SingleOrDefaultAsync(i => i.IncubatorId == incubator && i.RetiredAt == null, cancellation);
        if (found is null)
        {
            return new IncubatorProblem.NotFound(string.Empty);
        }

        var known = await KnownAsync(db, incubator, entries, cancellation);
        var (fresh, refused) = (new List<ReadingEntry>(), new List<ReadingRefused>());
        for (var i = 0; i < entries.Count; i++)
        {
            var entry = entries[i];
            var wrong = Reading.WhyNot(entry, now + RecordReading.Ahead).ToList();
            if (known.TryGetValue(entry.TakenAt, out var there))
            {
                if (there != (entry.Celsius, entry.HumidityPercent))
                {
                    wrong.Add(new IncubatorProblem.ReadAlready(entry.TakenAt));
                }
            }
            else if (wrong.Count == 0)
            {
                fresh.Add(entry);
                known.Add(entry.TakenAt, (entry.Celsius, entry.HumidityPercent));
            }

            refused.AddRange(wrong.Select(problem => new ReadingRefused(i, problem)));
        }

        return new Checked(found, fresh, [.. refused.DistinctBy(r => r.Index)]);
    }

    private static async Task<Dictionary<DateTime, (double? Celsius, double? Humidity)>> KnownAsync(
        StockContext db, IncubatorId incubator, IReadOnlyList<ReadingEntry> entries, CancellationToken cancellation)
    {
        if (entries.Count == 0)
        {
            return [];
        }

        var (first, last) = (entries.Min(e => e.TakenAt), entries.Max(e => e.TakenAt));
        var there = await db.Readings.AsNoTracking()
            .Where(r => r.IncubatorId == incubator && r.WithdrawnAt == null && r.TakenAt >= first && r.TakenAt <= last)
            .Select(r => new { r.TakenAt, r.Celsius, r.HumidityPercent })
            .ToListAsync(cancellation);
        return there.DistinctBy(r => r.TakenAt).ToDictionary(r => r.TakenAt, r => (r.Celsius, r.HumidityPercent));
    }

    private sealed record Checked(Incubator Incubator, IReadOnlyList<ReadingEntry> Fresh, IReadOnlyList<ReadingRefused> Refused);
}

/// <summary>What taking in many readings would do.</summary>
/// <param name="Fresh">How many are new.</param>
/// <param name="Skipped">How many are in the book already, or given twice, word for word.</param>
/// <param name="Refused">Each that is wrong, with the first reason.</param>
public sealed record ReadingsPreview(int Fresh, int Skipped, IReadOnlyList<ReadingRefused> Refused);
