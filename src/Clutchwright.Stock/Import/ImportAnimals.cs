using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Import;

/// <summary>What an import did.</summary>
/// <remarks><c>Deed</c> is the one deed that undoing takes back as a whole.</remarks>
public sealed record ImportResult(DeedId Deed, int Added, int Skipped);

/// <summary>Takes all the new animals of a file into the book, or none.</summary>
public sealed class ImportAnimals(Book book, CheckTradeText check)
{
    /// <param name="file">The file as the preview showed it; it is checked again against the book as it is now.</param>
    /// <param name="source">What the file is called, for the history.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is kept.</param>
    /// <returns>What was added, or <see cref="ImportProblem.Refused"/> with every problem, or
    /// <see cref="ImportProblem.NothingNew"/>.</returns>
    public Task<Outcome<ImportResult>> RunAsync(AnimalFile file, string source, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(file);
        return book.WriteAsync<ImportResult>(
            async db =>
            {
                var (run, preview) = await ImportCheck.RunAsync(db, file, check, cancellation);
                if (preview.Problems.Count > 0)
                {
                    return new ImportProblem.Refused(preview.Problems);
                }

                if (run.New.Count == 0)
                {
                    return new ImportProblem.NothingNew(preview.AlreadyThereCount);
                }

                foreach (var (id, entry, row) in run.New)
                {
                    var animal = new Animal(id);
                    animal.Take(entry);
                    db.Animals.Add(animal);
                    db.Statements.AddRange(row.Statements.Select(statement => new Statement(StatementId.New(), id, statement)));
                }

                var words = string.Create(CultureInfo.InvariantCulture, $"Imported {run.New.Count:N0} {(run.New.Count == 1 ? "animal" : "animals")} from {source}");
                var deed = await db.RecordAsync(who, words, book.Now, cancellation)
                    ?? throw new InvalidOperationException("An import of new animals changed nothing.");
                return new ImportResult(deed.DeedId, run.New.Count, preview.AlreadyThereCount);
            },
            cancellation);
    }
}
