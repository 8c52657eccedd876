using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Settings;

/// <summary>What is set?</summary>
public sealed class FindSetting(Book book)
{
    /// <returns>The JSON kept under each of these names that something is kept under.</returns>
    public Task<Outcome<IReadOnlyDictionary<string, string>>> RunAsync(IReadOnlyCollection<string> names, CancellationToken cancellation) =>
        book.ReadAsync(async db => Outcome.Of<IReadOnlyDictionary<string, string>>(
            await db.Settings.AsNoTracking().Where(s => names.Contains(s.Name)).ToDictionaryAsync(s => s.Name, s => s.Value, StringComparer.Ordinal, cancellation)));
}
