using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Import;

/// <summary>Takes all the new clutches of a file into the book, or none.</summary>
/// <param name="book">The book.</param>
/// <param name="check">Reads trade text.</param>
/// <param name="name">Gives an id to a clutch that has none in the file.</param>
public sealed class ImportClutches(Book book, CheckTradeText check, NameClutch name)
{
    /// <summary>What an import of this file would do. Writes nothing.</summary>
    public Task<Outcome<TablePreview<ClutchRow>>> PreviewAsync(ClutchFile file, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(file);
        return book.ReadAsync<TablePreview<ClutchRow>>(async db => ClutchCheck.Run(file, await ClutchesInBook.LoadAsync(db, cancellation), check, name, book.Now).Preview);
    }

    /// <param name="file">The file as the preview showed it; it is checked again against the book as it is now.</param>
    /// <param name="source">What the file is called, for the history.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is kept.</param>
    /// <returns>What was added, or <see cref="ImportProblem.Refused"/> with every problem, or <see cref="ImportProblem.NothingNew"/>.</returns>
    public Task<Outcome<ImportResult>> RunAsync(ClutchFile file, string source, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(file);
        return book.WriteAsync<ImportResult>(
            async db =>
            {
                var (run, preview) = ClutchCheck.Run(file, await ClutchesInBook.LoadAsync(db, cancellation), check, name, book.Now);
                if (preview.Problems.Count > 0)
                {
                    return new ImportProblem.Refused(preview.Problems);
                }

                if (run.New.Count == 0)
                {
                    return new ImportProblem.NothingNew(preview.AlreadyThereCount);
                }

                var young = await YoungAsync(db, run, cancellation);
                foreach (var added in run.New)
                {
                    db.Clutches.Add(added.Clutch);
                    if (added.Lost is not null)
                    {
                        db.Happenings.Add(new Happening(HappeningId.New(), added.Clutch.DamId, added.Lost));
                    }

                    foreach (var animal in added.Young.Select(id => young[id]))
                    {
                        animal.BelongTo(added.Clutch.ClutchId);
                        animal.DescendFrom(added.Clutch.DamId, added.Clutch.Sires);
                    }
                }

                var words = string.Create(CultureInfo.InvariantCulture, $"Imported {run.New.Count:N0} {(run.New.Count == 1 ? "clutch" : "clutches")} from {source}");
                var deed = await db.RecordAsync(who, words, book.Now, cancellation)
                    ?? throw new InvalidOperationException("An import of new clutches changed nothing.");
                return new ImportResult(deed.DeedId, run.New.Count, preview.AlreadyThereCount);
            },
            cancellation);
    }

    private static async Task<Dictionary<AnimalId, Animal>> YoungAsync(StockContext db, ClutchCheck run, CancellationToken cancellation)
    {
        var young = new Dictionary<AnimalId, Animal>();
        foreach (var ids in run.New.SelectMany(added => added.Young).Chunk(CurrentRecords.IdsAtOnce))
        {
            foreach (var animal in await db.Animals.Where(a => ids.Contains(a.AnimalId)).ToListAsync(cancellation))
            {
                young.Add(animal.AnimalId, animal);
            }
        }

        return young;
    }
}
