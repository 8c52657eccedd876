using System.Data.Common;
using System.Globalization;
using Clutchwright.Stock.Storage;
using Microsoft.Data.Sqlite;

namespace Clutchwright.Stock.Backups;

/// <summary>One table: how many rows, and a digest of them all (SHA-256 in hexadecimal; null where the rows were only counted).</summary>
public sealed record TableContents(string Name, long Rows, string? Digest)
{
    /// <summary>What the rows are, in words: <c>log entries</c>.</summary>
    public string Words => Name switch
    {
        "Happenings" => "log entries",
        "PossibleSires" => "possible sires",
        "Changes" => "changes in the history",
        _ => string.Concat(Name.Select((letter, i) => i > 0 && char.IsUpper(letter) ? $" {char.ToLowerInvariant(letter)}" : $"{char.ToLowerInvariant(letter)}")),
    };
}

/// <summary>By what a deed is known: its number, when (UTC) and who did what.</summary>
public sealed record DeedMark(long Number, DateTime When, string Who, string Words);

/// <summary>All that a book holds at one moment.</summary>
public sealed class BookContents
{
    internal BookContents(IReadOnlyList<TableContents> tables, long animalsInBin, DeedMark? lastDeed)
    {
        Tables = tables;
        AnimalsInBin = animalsInBin;
        LastDeed = lastDeed;
        Digest = tables.Any(table => table.Digest is null) ? null : TableDigest.OfAll(tables);
    }

    /// <summary>Every table of the book, by name.</summary>
    public IReadOnlyList<TableContents> Tables { get; }

    public long Animals => RowsOf("Animals") - AnimalsInBin;

    public long AnimalsInBin { get; }

    public long LogEntries => RowsOf("Happenings");

    public long Deeds => RowsOf("Deeds");

    /// <summary>Null in a book in which nothing was done yet.</summary>
    public DeedMark? LastDeed { get; }

    public bool IsEmpty => Tables.All(table => table.Rows == 0);

    /// <summary>One digest for everything: two books with the same hold the same. Null where the rows were only counted.</summary>
    public string? Digest { get; }

    public long RowsOf(string table) => Tables.FirstOrDefault(t => t.Name == table)?.Rows ?? 0;

    /// <summary>The tables that differ from another book's; empty if both hold the same.</summary>
    public IReadOnlyList<string> Differences(BookContents other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return [.. Tables.Select(t => t.Name).Union(other.Tables.Select(t => t.Name), StringComparer.Ordinal)
            .Where(name => Tables.FirstOrDefault(t => t.Name == name) != other.Tables.FirstOrDefault(t => t.Name == name))];
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Animals} animals, {LogEntries} log entries, {Deeds} deeds");

    /// <summary>Reads through everything; what is read is of one moment if the transaction is.</summary>
    internal static async Task<BookContents> ReadAsync(
        DbConnection connection, DbTransaction? transaction, IReadOnlyList<BookTable> tables, CancellationToken cancellation)
    {
        var read = new List<TableContents>(tables.Count);
        foreach (var table in tables)
        {
            read.Add(connection is SqliteConnection file
                ? SqliteDigest.Of(table, file, (SqliteTransaction?)transaction, cancellation)
                : await ReadAsync(table, table.RowsAsync(connection, transaction, cancellation), cancellation));
        }

        return await OfAsync(read, connection, transaction, cancellation);
    }

    /// <summary>Makes the digest of rows that are read for another purpose as well.</summary>
    internal static async Task<TableContents> ReadAsync(BookTable table, IAsyncEnumerable<object?[]> rows, CancellationToken cancellation)
    {
        using var digest = new TableDigest();
        await foreach (var row in rows.WithCancellation(cancellation))
        {
            digest.Add(row);
        }

        return new(table.Name, digest.Rows, digest.Finish());
    }

    internal static async Task<BookContents> OfAsync(
        IEnumerable<TableContents> tables, DbConnection connection, DbTransaction? transaction, CancellationToken cancellation)
    {
        var binned = await CountAsync(connection, transaction, "SELECT count(*) FROM \"Animals\" WHERE \"BinnedAt\" IS NOT NULL", cancellation);
        return new([.. tables.OrderBy(t => t.Name, StringComparer.Ordinal)], binned, await LastDeedAsync(connection, transaction, cancellation));
    }

    internal static async Task<long> CountAsync(DbConnection connection, DbTransaction? transaction, string sql, CancellationToken cancellation)
    {
        await using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        command.CommandTimeout = 0;
        return Convert.ToInt64(await command.ExecuteScalarAsync(cancellation), CultureInfo.InvariantCulture);
    }

    internal static async Task<DeedMark?> LastDeedAsync(DbConnection connection, DbTransaction? transaction, CancellationToken cancellation)
    {
        await using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "SELECT \"DeedId\", \"When\", \"Who\", \"Words\" FROM \"Deeds\" ORDER BY \"DeedId\" DESC LIMIT 1";
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        return await reader.ReadAsync(cancellation) ? MarkOf(reader) : null;
    }

    /// <summary>The deed of a row that holds number, time, who and words.</summary>
    internal static DeedMark MarkOf(DbDataReader reader) =>
        new(reader.GetInt64(0), Instants.ToMicrosecond(DateTime.SpecifyKind(reader.GetDateTime(1), DateTimeKind.Utc)), reader.GetString(2), reader.GetString(3));
}
