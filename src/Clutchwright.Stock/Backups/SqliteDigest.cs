using System.Buffers.Text;
using Clutchwright.Stock.Storage;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Clutchwright.Stock.Backups;

/// <summary>The digest of a table in SQLite's format, taken from the bytes as they lie there: the same as of the rows one by one, without making values of them.</summary>
internal static class SqliteDigest
{
    private const int DayLength = 10;
    private const int GuidLength = 36;

    /// <summary>Reads through a table.</summary>
    public static TableContents Of(BookTable table, SqliteConnection connection, SqliteTransaction? transaction, CancellationToken cancellation)
    {
        using var command = connection.CreateCommand();
        command.CommandText = table.SelectSql;
        command.Transaction = transaction;
        command.CommandTimeout = 0;
        using var reader = command.ExecuteReader();
        using var digest = new TableDigest();
        while (reader.Read())
        {
            cancellation.ThrowIfCancellationRequested();
            for (var i = 0; i < table.Columns.Count; i++)
            {
                Add(digest, table.Columns[i], reader, i);
            }

            digest.EndRow();
        }

        return new(table.Name, digest.Rows, digest.Finish());
    }

    private static void Add(TableDigest digest, BookColumn column, SqliteDataReader reader, int ordinal)
    {
        var row = reader.Handle!;
        var isText = raw.sqlite3_column_type(row, ordinal) == raw.SQLITE_TEXT;
        if (column.Type == typeof(byte[]) && raw.sqlite3_column_type(row, ordinal) == raw.SQLITE_BLOB)
        {
            digest.PutBytes(raw.sqlite3_column_blob(row, ordinal));
        }
        else if (!isText)
        {
            digest.Put(column.Read(reader, ordinal));
        }
        else if (column.Type == typeof(string))
        {
            digest.PutText(raw.sqlite3_column_blob(row, ordinal));
        }
        else if (column.Type == typeof(Guid) && raw.sqlite3_column_blob(row, ordinal) is { Length: GuidLength } id && Guid.TryParse(id, null, out var guid))
        {
            digest.Put(guid);
        }
        else if (column.Type == typeof(DateOnly) && Day(raw.sqlite3_column_blob(row, ordinal)) is { } day)
        {
            digest.Put(day);
        }
        else if (column.Type == typeof(DateTime) && Instant(raw.sqlite3_column_blob(row, ordinal)) is { } instant)
        {
            digest.Put(instant);
        }
        else
        {
            // Written in another way than this program does.
            digest.Put(column.Read(reader, ordinal));
        }
    }

    private static DateOnly? Day(ReadOnlySpan<byte> text) =>
        text.Length == DayLength && text[4] == '-' && text[7] == '-'
        && Whole(text[..4]) is var year and > 0 && Whole(text[5..7]) is var month and >= 1 and <= 12 && Whole(text[8..]) is var day and >= 1
        && day <= DateTime.DaysInMonth(year, month)
            ? new(year, month, day)
            : null;

    // "2026-03-04 05:06:07" and up to seven decimals, of which the last is not kept.
    private static DateTime? Instant(ReadOnlySpan<byte> text)
    {
        if (text.Length is < 19 or 20 or > 27 || text[10] != ' ' || text[13] != ':' || text[16] != ':' || Day(text[..DayLength]) is not { } day
            || Whole(text[11..13]) is not (var hour and >= 0 and < 24) || Whole(text[14..16]) is not (var minute and >= 0 and < 60) || Whole(text[17..19]) is not (var second and >= 0 and < 60))
        {
            return null;
        }

        var ticks = 0L;
        if (text.Length > 19)
        {
            if (text[19] != '.' || Whole(text[20..]) is not (var part and >= 0))
            {
                return null;
            }

            ticks = part;
            for (var digits = text.Length - 20; digits < 7; digits++)
            {
                ticks *= 10;
            }
        }

        return Instants.ToMicrosecond(day.ToDateTime(new TimeOnly(hour, minute, second), DateTimeKind.Utc).AddTicks(ticks));
    }

    // -1: not only digits.
    private static int Whole(ReadOnlySpan<byte> digits) =>
        digits.Length > 0 && digits[0] is >= (byte)'0' and <= (byte)'9' && Utf8Parser.TryParse(digits, out int whole, out var read) && read == digits.Length ? whole : -1;
}
