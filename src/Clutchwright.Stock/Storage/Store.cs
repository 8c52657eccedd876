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

    /// <summary>The problem that an exception of the database stands for; null if it is a mistake of the program's.</summary>
    public abstract StorageProblem? ProblemOf(Exception exception);

    /// <summary>The same for an exception while the book is opened, where it may also come from around the database.</summary>
    public virtual StorageProblem? ProblemOfOpening(Exception exception) => ProblemOf(exception);

    public abstract void Dispose();
}
