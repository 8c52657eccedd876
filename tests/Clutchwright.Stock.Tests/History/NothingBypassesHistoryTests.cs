using System.Reflection;
using System.Text.RegularExpressions;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Clutchwright.Stock.Tests.Testing;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Clutchwright.Stock.Tests.History;

public sealed partial class NothingBypassesHistoryTests
{
    [Fact]
    public void Source_WritesOnlyInRecordAsync()
    {
        var folder = typeof(NothingBypassesHistoryTests).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(a => a.Key == "StockSource").Value!;
        var files = Directory.GetFiles(folder, "*.cs", SearchOption.AllDirectories);

        var writes = files
            .SelectMany(file => File.ReadLines(file).Select(line => (File: Path.GetFileName(file), Line: line.Trim())))
            .Where(found => Writing().IsMatch(found.Line) && !found.Line.StartsWith("//", StringComparison.Ordinal))
            .Select(found => $"{found.File}: {found.Line}")
            .ToList();

        Assert.True(files.Length > 40);
        Assert.Equal(
            [
                "DurableConnection.cs: await command.ExecuteNonQueryAsync(cancellationToken);",
                "DurableConnection.cs: command.ExecuteNonQuery();",

                // The pictures of a set, which have no history: one at a time, before the deed that keeps the photos.
                "PhotoContent.cs: await db.Database.ExecuteSqlAsync($\"\"\"INSERT INTO \"PhotoContents\" (\"Digest\", \"Picture\", \"Thumbnail\") VALUES ({digest}, {picture}, {thumbnail})\"\"\", cancellation);",

                // Restoring a backup puts the history back together with all else.
                "Replacement.cs: await command.ExecuteNonQueryAsync(cancellation);",
                "SqliteReplacement.cs: await command.ExecuteNonQueryAsync(cancellation);",
                "SqliteReplacement.cs: await command.ExecuteNonQueryAsync(cancellation);",
                "SqliteReplacement.cs: await command.ExecuteNonQueryAsync(cancellation);",

                // On the file of a backup that is being made.
                "SqliteStore.cs: await command.ExecuteNonQueryAsync(cancellation);",
                "SqliteStore.cs: await command.ExecuteNonQueryAsync(cancellation);",

                // Before a migration, on a table that is not the book's.
                "SqliteStore.cs: await db.Database.ExecuteSqlRawAsync(\"DROP TABLE IF EXISTS \\\"__EFMigrationsLock\\\"\", cancellation);",
                "StockContext.cs: await base.SaveChangesAsync(acceptAllChangesOnSuccess: true, cancellation);",
                "StockContext.cs: public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default) =>",
                "StockContext.cs: public override int SaveChanges(bool acceptAllChangesOnSuccess) => throw Bypassed();",
            ],
            writes.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Surface_ShowsNoContextAndNoSetters()
    {
        var shown = typeof(Book).Assembly.GetExportedTypes();

        Assert.DoesNotContain(shown, type => typeof(DbContext).IsAssignableFrom(type));
        foreach (var property in new[] { typeof(Animal), typeof(Stock.Statements.Statement), typeof(Stock.Seasons.KeptSeason), typeof(Stock.Routes.AdoptedRoute), typeof(Stock.Happenings.Happening), typeof(Stock.Clutches.Clutch), typeof(Stock.Incubators.Incubator), typeof(Stock.Incubators.Reading), typeof(Stock.Photos.Photo), typeof(Stock.Settings.KeptSetting) }.SelectMany(type => type.GetProperties()))
        {
            Assert.False(property.SetMethod?.IsPublic ?? false, property.Name);
        }
    }

    [Fact]
    public async Task SaveChanges_AnyOverload_Throws()
    {
        using var book = await TestBook.NewAsync();
        await using var db = book.Book.NewContext();

        Assert.Throws<InvalidOperationException>(() => db.SaveChanges());
        Assert.Throws<InvalidOperationException>(() => db.SaveChanges(acceptAllChangesOnSuccess: true));
        await Assert.ThrowsAsync<InvalidOperationException>(() => db.SaveChangesAsync(TestBook.Cancellation));
        await Assert.ThrowsAsync<InvalidOperationException>(() => db.SaveChangesAsync(acceptAllChangesOnSuccess: true, TestBook.Cancellation));
    }

    [Fact]
    public async Task RecordAsync_OutsideATransaction_Throws()
    {
        using var book = await TestBook.NewAsync();
        await using var db = book.Book.NewContext();

        await Assert.ThrowsAsync<InvalidOperationException>(() => db.RecordAsync("x", "y", FakeClock.Start, TestBook.Cancellation));
    }

    [GeneratedRegex("SaveChanges|ExecuteUpdate|ExecuteDelete|ExecuteSql|ExecuteNonQuery|BulkInsert")]
    private static partial Regex Writing();
}
