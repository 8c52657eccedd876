using System.Data.Common;
using Clutchwright.Stock.Backups;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Storage;

/// <summary>What a book asks of the database under it, where databases differ.</summary>
internal abstract class Store : IDisposable
{
    /// <summary>Longest wait for another program that writes, in seconds.</summary>
    public const int DefaultWaitSeconds = 15;

    /// <summary>Where the book lies, in words; never with a password.</summary>
    public abstract string Place { get; }

    public abstract DbContextOptions<StockContext> Options { get; }

    /// <summary>Makes what is missing around the book and can be made.</summary>
    public abstract void MakePlace();

    /// <summary>Keeps every other program from changing the form of the book until it is disposed; ends with the program, however
    /// that ends.</summary>
    /// <returns>Null if another program did not let go in time.</returns>
    public abstract Task<IAsyncDisposable?> LockFormAsync(CancellationToken cancellation);

    /// <summary>Whether what is acknowledged here is on the disk, and text is kept as it is.</summary>
    /// <returns>Null if so.</returns>
    public abstract Task<StorageProblem?> CheckSettingsAsync(StockContext db, CancellationToken cancellation);

    public abstract Task<bool> HasOtherTablesAsync(StockContext db, CancellationToken cancellation);

    /// <summary>Takes away what a killed migration may have left.</summary>
    public abstract Task ClearKilledMigrationAsync(StockContext db, CancellationToken cancellation);

    /// <summary>Called first in the transaction of a deed: from here on no other deed is carried out until it ends.</summary>
    public abstract Task HoldOffOtherDeedsAsync(StockContext db, CancellationToken cancellation);

    /// <summary>Begins to read the book as it is at one moment, whatever is written meanwhile; that ends with the transaction.</summary>
    public async Task<BookMoment> BeginMomentAsync(StockContext db, CancellationToken cancellation)
    {
        await db.Database.OpenConnectionAsync(cancellation);
        var transaction = await FixMomentAsync(db.Database.GetDbConnection(), cancellation);
        await db.Database.UseTransactionAsync(transaction, cancellation);
        return new(db, transaction);
    }

    /// <summary>Begins a transaction that sees what was committed before it and nothing after.</summary>
    public abstract Task<DbTransaction> FixMomentAsync(DbConnection connection, CancellationToken cancellation);

    /// <summary>What is damaged of what the book lies in, and which records break a rule of their table.</summary>
    public abstract Task<IReadOnlyList<string>> DamageAsync(BookMoment moment, CancellationToken cancellation);

    /// <summary>Copies everything into a new file that is a book in SQLite's format.</summary>
    /// <returns>What was copied; null where that was not read on the way.</returns>
    public abstract Task<BookContents?> CopyToAsync(BookMoment moment, string file, CancellationToken cancellation);

    /// <summary>Begins to replace everything; from here on no deed is carried out until that ends.</summary>
    public abstract Task<Replacement> BeginReplacingAsync(CancellationToken cancellation);

    /// <summary>The problem that an exception of the database stands for; null if it is a mistake of the program's.</summary>
    public abstract StorageProblem? ProblemOf(Exception exception);

    /// <summary>The same for an exception while the book is opened, where it may also come from around the database.</summary>
    public virtual StorageProblem? ProblemOfOpening(Exception exception) => ProblemOf(exception);

    public abstract void Dispose();
}
