using System.Data;
using System.Data.Common;
using System.Runtime.CompilerServices;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Clutchwright.Stock.Backups;

/// <summary>One table of the book. Which there are is read from the model, so that a new one is copied and compared without more code.</summary>
internal sealed class BookTable
{
    private BookTable(ITable table)
    {
        Name = table.Name;
        Columns = [.. table.Columns
            .OrderBy(column => column.Name, StringComparer.Ordinal)
            .Select(column => new BookColumn(column.Name, Nullable.GetUnderlyingType(column.ProviderClrType) ?? column.ProviderClrType, column.StoreType))];
        var key = table.PrimaryKey?.Columns ?? throw new NotSupportedException($"The table {Name} has no key, by which its rows could be ordered.");
        var names = string.Join(", ", Columns.Select(column => Quoted(column.Name)));
        SelectSql = $"SELECT {names} FROM {Quoted(Name)} ORDER BY {string.Join(", ", key.Select(column => Quoted(column.Name)))}";
        InsertSql = $"INSERT INTO {Quoted(Name)} ({names}) VALUES ({string.Join(", ", Columns.Select((_, i) => $"@p{i}"))})";
        CopySql = $"COPY {Quoted(Name)} ({names}) FROM STDIN (FORMAT BINARY)";
        WaitingSql = $"CREATE TEMPORARY TABLE {Quoted(Waiting)} ON COMMIT DROP AS SELECT {names} FROM {Quoted(Name)} WITH NO DATA";
        CopyWaitingSql = $"COPY {Quoted(Waiting)} ({names}) FROM STDIN (FORMAT BINARY)";
        InsertWaitingSql = $"INSERT INTO {Quoted(Name)} ({names}) SELECT {names} FROM {Quoted(Waiting)}";
        DeleteSql = $"DELETE FROM {Quoted(Name)}";
        Named = [.. table.ForeignKeyConstraints.Select(link => link.PrincipalTable.Name).Distinct(StringComparer.Ordinal)];
        OrphanSql = [.. table.ForeignKeyConstraints.Select(OrphansOf)];
    }

    public string Name { get; }

    /// <summary>By name.</summary>
    public IReadOnlyList<BookColumn> Columns { get; }

    /// <summary>Reads every row, by key: keys sort alike on every database.</summary>
    public string SelectSql { get; }

    public string InsertSql { get; }

    /// <summary>For PostgreSQL.</summary>
    public string CopySql { get; }

    public string DeleteSql { get; }

    /// <summary>For PostgreSQL: makes a table in which rows wait for those of the other tables of a circle.</summary>
    public string WaitingSql { get; }

    /// <summary>For PostgreSQL: writes rows there.</summary>
    public string CopyWaitingSql { get; }

    /// <summary>For PostgreSQL: takes them from there.</summary>
    public string InsertWaitingSql { get; }

    /// <summary>Each counts the rows that name a row which is not there.</summary>
    public IReadOnlyList<string> OrphanSql { get; }

    private IReadOnlyList<string> Named { get; }

    private string Waiting => $"Waiting{Name}";

    /// <summary>The tables that name each other in a circle with this one, itself among them; only itself if there is no circle.</summary>
    public IReadOnlyList<BookTable> Circle { get; private set; } = [];

    /// <summary>Every table of the model; those that others name come before them, those of a circle one after another.</summary>
    public static IReadOnlyList<BookTable> Of(IModel model)
    {
        var left = model.GetRelationalModel().Tables.OrderBy(table => table.Name, StringComparer.Ordinal).Select(table => new BookTable(table)).ToList();
        var ordered = new List<BookTable>(left.Count);
        while (left.Count > 0)
        {
            // The next are those from which one comes only to tables that lead back.
            var reached = left.ToDictionary(table => table, table => Reached(table, left));
            var next = reached.First(one => one.Value.All(other => reached[other].Contains(one.Key))).Value;
            foreach (var table in next)
            {
                table.Circle = next;
            }

            ordered.AddRange(next);
            left.RemoveAll(next.Contains);
        }

        return ordered;
    }

    /// <summary>One statement that does what several would, so that what they name is looked at when all of them are done. For PostgreSQL.</summary>
    public static string Together(IEnumerable<string> statements) =>
        $"WITH {string.Join(", ", statements.Select((statement, i) => $"s{i} AS ({statement})"))} SELECT 1";

    public static string Quoted(string name) => $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    /// <summary>Every row, by key, one at a time in an array that the next one overwrites.</summary>
    public async IAsyncEnumerable<object?[]> RowsAsync(
        DbConnection connection, DbTransaction? transaction, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = SelectSql;
        command.Transaction = transaction;
        command.CommandTimeout = 0;
        await using var reader = await command.ExecuteReaderAsync(CommandBehavior.SequentialAccess, cancellation);
        var row = new object?[Columns.Count];
        while (await reader.ReadAsync(cancellation))
        {
            cancellation.ThrowIfCancellationRequested();
            for (var i = 0; i < row.Length; i++)
            {
                row[i] = Columns[i].Read(reader, i);
            }

            yield return row;
        }
    }

    // The table itself, and all that one comes to by what it and they name; by name.
    private static IReadOnlyList<BookTable> Reached(BookTable from, IReadOnlyList<BookTable> among)
    {
        var reached = new List<BookTable> { from };
        for (var i = 0; i < reached.Count; i++)
        {
            reached.AddRange(among.Where(table => reached[i].Named.Contains(table.Name, StringComparer.Ordinal) && !reached.Contains(table)));
        }

        return [.. reached.OrderBy(table => table.Name, StringComparer.Ordinal)];
    }

    private string OrphansOf(IForeignKeyConstraint link)
    {
        var set = string.Join(" AND ", link.Columns.Select(column => $"c.{Quoted(column.Name)} IS NOT NULL"));
        var same = string.Join(" AND ", link.Columns.Zip(link.PrincipalColumns, (own, other) => $"p.{Quoted(other.Name)} = c.{Quoted(own.Name)}"));
        return $"SELECT count(*) FROM {Quoted(Name)} c WHERE {set} AND NOT EXISTS (SELECT 1 FROM {Quoted(link.PrincipalTable.Name)} p WHERE {same})";
    }
}
