using Npgsql;

namespace Clutchwright.Stock.Backups;

/// <summary>The content of a book on a server replaced. Foreign keys are looked at when a statement ends; each table is one,
/// and so are tables that name each other in a circle, whose rows wait until those of all are there.</summary>
internal sealed class PostgreSqlReplacement(NpgsqlConnection connection, NpgsqlTransaction transaction) : Replacement(connection, transaction)
{
    private readonly HashSet<BookTable> _waiting = [];

    public override async Task ClearAsync(IReadOnlyList<BookTable> tables, CancellationToken cancellation)
    {
        foreach (var circle in tables.Reverse().Select(table => table.Circle).Distinct())
        {
            await RunAsync(BookTable.Together(circle.Select(table => table.DeleteSql)), cancellation);
        }
    }

    public override async Task FillAsync(BookTable table, IAsyncEnumerable<object?[]> rows, CancellationToken cancellation)
    {
        var isWaiting = table.Circle.Count > 1;
        if (isWaiting)
        {
            await RunAsync(table.WaitingSql, cancellation);
        }

        await CopyAsync(isWaiting ? table.CopyWaitingSql : table.CopySql, table, rows, cancellation);
        if (isWaiting && _waiting.Add(table) && table.Circle.All(_waiting.Contains))
        {
            await RunAsync(BookTable.Together(table.Circle.Select(one => one.InsertWaitingSql)), cancellation);
        }
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await Connection.DisposeAsync();
    }

    private async Task CopyAsync(string sql, BookTable table, IAsyncEnumerable<object?[]> rows, CancellationToken cancellation)
    {
        // The reader's types by their names in the database, without lengths and precisions.
        var types = table.Columns.Select(column => column.StoreType.Split('(')[0].Trim()).ToArray();
        await using var importer = await ((NpgsqlConnection)Connection).BeginBinaryImportAsync(sql, cancellation);
        importer.Timeout = TimeSpan.Zero;
        await foreach (var row in rows.WithCancellation(cancellation))
        {
            await importer.StartRowAsync(cancellation);
            for (var i = 0; i < row.Length; i++)
            {
                await WriteAsync(importer, table.Columns[i].Type, types[i], row[i], cancellation);
            }
        }

        await importer.CompleteAsync(cancellation);
    }

    private static Task WriteAsync(NpgsqlBinaryImporter importer, Type type, string storeType, object? value, CancellationToken cancellation) => value switch
    {
        null => importer.WriteNullAsync(cancellation),
        long whole when type == typeof(int) => importer.WriteAsync(checked((int)whole), storeType, cancellation),
        long whole when type == typeof(short) => importer.WriteAsync(checked((short)whole), storeType, cancellation),
        long whole => importer.WriteAsync(whole, storeType, cancellation),
        string text => importer.WriteAsync(text, storeType, cancellation),
        double real => importer.WriteAsync(real, storeType, cancellation),
        bool truth => importer.WriteAsync(truth, storeType, cancellation),
        Guid id => importer.WriteAsync(id, storeType, cancellation),
        DateTime instant => importer.WriteAsync(instant, storeType, cancellation),
        DateOnly day => importer.WriteAsync(day, storeType, cancellation),
        TimeOnly time => importer.WriteAsync(time, storeType, cancellation),
        decimal amount => importer.WriteAsync(amount, storeType, cancellation),
        byte[] bytes => importer.WriteAsync(bytes, storeType, cancellation),
        _ => throw new NotSupportedException($"Values of {value.GetType()} cannot be written."),
    };
}
