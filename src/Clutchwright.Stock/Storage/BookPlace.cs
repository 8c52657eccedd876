namespace Clutchwright.Stock.Storage;

/// <summary>Where a book lies: in a folder, or on a PostgreSQL server.</summary>
public sealed record BookPlace
{
    private BookPlace(string? folder, string? connection)
    {
        Folder = folder;
        Connection = connection;
    }

    /// <summary>The data folder; null for a book on a server.</summary>
    internal string? Folder { get; }

    /// <summary>The connection string; null for a book in a folder. It may hold a password: it is shown nowhere.</summary>
    internal string? Connection { get; }

    public static BookPlace InFolder(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        return new(Path.GetFullPath(folder), null);
    }

    /// <summary>A database on a PostgreSQL server, by a connection string as Npgsql reads it: <c>Host=…;Database=…;Username=…</c>.</summary>
    public static BookPlace OnPostgreSql(string connection)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(connection);
        return new(null, connection);
    }

    public override string ToString() => Folder ?? "a PostgreSQL server";
}
