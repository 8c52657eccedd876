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

    /// <summary>Each counts the rows that name a row which is not there.</summary>
    public IReadOnlyList<string> OrphanSql { get; }

    private IReadOnlyList<string> Named { get; }

    /// <summary>Every table of the model; those that others name come before them.</summary>
    public static IReadOnlyList<BookTable> Of(IModel model)
    {
        var left = model.GetRelationalModel().Tables.OrderBy(table => table.Name, StringComparer.Ordinal).Select(table => new BookTable(table)).ToList();
        var ordered = new List<BookTable>(left.Count);
        while (left.Count > 0)
        {
            var next = left.Find(table => table.Named.All(name => name == table.Name || !left.Exists(other => other.Name == name)))
                ?? throw new NotSupportedException($"The tables {string.Join(", ", left.Select(table => table.Name))} name each other in a circle.");
            ordered.Add(next);
            left.Remove(next);
        }

        return ordered;
    }

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

    private string OrphansOf(IForeignKeyConstraint link)
    {
        var set = string.Join(" AND ", link.Columns.Select(column => $"c.{Quoted(column.Name)} IS NOT NULL"));
        var same = string.Join(" AND ", link.Columns.Zip(link.PrincipalColumns, (own, other) => $"p.{Quoted(other.Name)} = c.{Quoted(own.Name)}"));
        return $"SELECT count(*) FROM {Quoted(Name)} c WHERE {set} AND NOT EXISTS (SELECT 1 FROM {Quoted(link.PrincipalTable.Name)} p WHERE {same})";
    }
}
