using Npgsql;

namespace Clutchwright.Stock.Backups;

/// <summary>The content of a book on a server replaced. Foreign keys are looked at when a statement ends, and each table is one.</summary>
internal sealed class PostgreSqlReplacement(NpgsqlConnection connection, NpgsqlTransaction transaction) : Replacement(connection, transaction)
{
    public override async Task FillAsync(BookTable table, IAsyncEnumerable<object?[]> rows, CancellationToken cancellation)
    {
        // The reader's types by their names in the database, without lengths and precisions.
        var types = table.Columns.Select(column => column.StoreType.Split('(')[0].Trim()).ToArray();
        await using var importer = await ((NpgsqlConnection)Connection).BeginBinaryImportAsync(table.CopySql, cancellation);
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

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await Connection.DisposeAsync();
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
