using Clutchwright.Stock.Backups;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Clutchwright.Stock.Storage;

/// <summary>The keeper's book, open. Every deed and question works on one. Safe to use from many threads.</summary>
public sealed class Book : IDisposable
{
    public const string FileName = "clutchwright.db";

    private readonly Store _store;
    private readonly TimeProvider _clock;

    private Book(Store store, string? folder, TimeProvider clock)
    {
        _store = store;
        Folder = folder;
        _clock = clock;
    }

    /// <summary>The data folder, as a full path; null for a book on a server.</summary>
    public string? Folder { get; }

    /// <summary>The file that holds the book, as a full path; null for a book on a server.</summary>
    public string? File => Folder is null ? null : Path.Combine(Folder, FileName);

    /// <summary>Where the book lies, for a person to read: the file, or the database and its server.</summary>
    public string Place => _store.Place;

    /// <summary>Now, in UTC, to the microsecond: finer than that not every database keeps.</summary>
    internal DateTime Now => Instants.ToMicrosecond(_clock.GetUtcNow().UtcDateTime);

    /// <summary>Opens the book in a data folder; makes the folder and an empty book if there is none, and brings an older
    /// book to this program's form.</summary>
    public static Task<Outcome<Book>> OpenAsync(string folder, TimeProvider clock, CancellationToken cancellation) =>
        OpenAsync(BookPlace.InFolder(folder), clock, cancellation);

    /// <summary>Opens the book at a place; makes an empty book if there is none, and brings an older book to this program's form.
    /// A folder is made too; a database on a server is not.</summary>
    public static Task<Outcome<Book>> OpenAsync(BookPlace place, TimeProvider clock, CancellationToken cancellation) =>
        OpenAsync(place, clock, [], cancellation);

    /// <summary>Lets go of the file or the server.</summary>
    public void Dispose() => _store.Dispose();

    internal static async Task<Outcome<Book>> OpenAsync(
        BookPlace place,
        TimeProvider clock,
        IReadOnlyList<IInterceptor> interceptors,
        CancellationToken cancellation,
        int waitSeconds = Store.DefaultWaitSeconds)
    {
        ArgumentNullException.ThrowIfNull(place);
        ArgumentNullException.ThrowIfNull(clock);
        if (place.Folder is { } folder)
        {
            return await OpenAsync(new SqliteStore(folder, interceptors, waitSeconds), folder, clock, cancellation);
        }

        var store = PostgreSqlStore.Of(place.Connection!, interceptors, waitSeconds);
        return store.IsDone ? await OpenAsync(store.Value, null, clock, cancellation) : store.Problem;
    }

    internal StockContext NewContext() => new(_store.Options);

    /// <summary>Carries out one deed: what is read, checked and written in it sees no other deed in between, and is kept as a
    /// whole or not at all.</summary>
    internal async Task<Outcome<T>> WriteAsync<T>(Func<StockContext, Task<Outcome<T>>> deed, CancellationToken cancellation)
        where T : notnull
    {
        try
        {
            await using var db = NewContext();

            // No two deeds can decide on the same state.
            await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
            await _store.HoldOffOtherDeedsAsync(db, cancellation);
            var outcome = await deed(db);
            if (outcome.IsDone)
            {
                await transaction.CommitAsync(cancellation);
            }

            return outcome;
        }
        catch (Exception exception) when (_store.ProblemOf(exception) is { } problem)
        {
            return problem;
        }
    }

    /// <summary>Answers one question.</summary>
    internal async Task<Outcome<T>> ReadAsync<T>(Func<StockContext, Task<Outcome<T>>> question)
        where T : notnull
    {
        try
        {
            await using var db = NewContext();
            return await question(db);
        }
        catch (Exception exception) when (_store.ProblemOf(exception) is { } problem)
        {
            return problem;
        }
    }

    /// <summary>Copies everything into a new file, as it is at one moment; the file is a book in SQLite's format.</summary>
    /// <param name="file">The file.</param>
    /// <param name="look">Looks at the copy, while what the book held at that moment may still be read.</param>
    /// <param name="cancellation">Stops it.</param>
    internal Task<Outcome<(BookContents Held, T Looked)>> CopyToAsync<T>(string file, Func<Task<T>> look, CancellationToken cancellation) =>
        ReadMomentAsync(
            async moment =>
            {
                var copied = await _store.CopyToAsync(moment, file, cancellation);
                var looking = Task.Run(look, cancellation);
                var reading = copied is null ? Task.Run(() => moment.ContentsAsync(cancellation), cancellation) : Task.FromResult(copied);
                await Task.WhenAll(looking, reading);
                return Outcome.Of((await reading, await looking));
            },
            cancellation);

    /// <summary>Answers a question on everything as it is at one moment.</summary>
    internal Task<Outcome<T>> ReadMomentAsync<T>(Func<BookMoment, Task<Outcome<T>>> question, CancellationToken cancellation)
        where T : notnull =>
        ReadAsync(async db =>
        {
            var moment = await _store.BeginMomentAsync(db, cancellation);
            await using (moment.Transaction)
            {
                return await question(moment);
            }
        });

    /// <summary>What is damaged of what the book lies in, and which records break a rule of their table.</summary>
    internal Task<IReadOnlyList<string>> DamageAsync(BookMoment moment, CancellationToken cancellation) => _store.DamageAsync(moment, cancellation);

    /// <summary>What the book holds.</summary>
    internal Task<Outcome<BookContents>> ContentsAsync(CancellationToken cancellation) =>
        ReadMomentAsync(async moment => Outcome.Of(await moment.ContentsAsync(cancellation)), cancellation);

    /// <summary>Replaces everything, or nothing if that has a problem.</summary>
    internal async Task<Outcome<T>> ReplaceAsync<T>(
        Func<Replacement, IReadOnlyList<BookTable>, Task<Outcome<T>>> deed, CancellationToken cancellation)
        where T : notnull
    {
        try
        {
            await using var db = NewContext();
            await using var replacement = await _store.BeginReplacingAsync(cancellation);
            var outcome = await deed(replacement, BookTable.Of(db.Model));
            if (outcome.IsDone)
            {
                await replacement.CommitAsync(cancellation);
            }

            return outcome;
        }
        catch (Exception exception) when (_store.ProblemOf(exception) is { } problem)
        {
            return problem;
        }
    }

    private static async Task<Outcome<Book>> OpenAsync(Store store, string? folder, TimeProvider clock, CancellationToken cancellation)
    {
        var book = new Book(store, folder, clock);
        try
        {
            store.MakePlace();
            if (await book.PrepareAsync(cancellation) is { } problem)
            {
                book.Dispose();
                return problem;
            }

            return book;
        }
        catch (Exception exception) when (store.ProblemOfOpening(exception) is { } problem)
        {
            book.Dispose();
            return problem;
        }
    }

    private async Task<StorageProblem?> PrepareAsync(CancellationToken cancellation)
    {
        await using var db = NewContext();

        // Two programs may start at once; only one may change the form of the book.
        await using var locked = await _store.LockFormAsync(cancellation);
        if (locked is null)
        {
            return new StorageProblem.Locked(Place);
        }

        if (await _store.CheckSettingsAsync(db, cancellation) is { } problem)
        {
            return problem;
        }

        var known = db.Database.GetMigrations().ToList();
        var applied = (await db.Database.GetAppliedMigrationsAsync(cancellation)).ToList();
        if (applied.Except(known, StringComparer.Ordinal).ToList() is { Count: > 0 } unknown)
        {
            return new StorageProblem.MadeByNewerProgram(Place) { Unknown = unknown };
        }

        if (applied.Count == 0 && await _store.HasOtherTablesAsync(db, cancellation))
        {
            return new StorageProblem.NotABook(Place, "it holds other tables");
        }

        if (applied.Count < known.Count)
        {
            await _store.ClearKilledMigrationAsync(db, cancellation);
            await db.Database.MigrateAsync(cancellation);
        }

        return null;
    }
}
