using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Tests.Testing;

/// <summary>A place for one book that goes when the test ends: a folder, or a database where the tests run on a server.</summary>
internal sealed class TestPlace : IDisposable
{
    /// <summary>An empty book: making one takes longer than most tests.</summary>
    private static readonly Lazy<Task<byte[]>> EmptyFile = new(MakeEmptyFileAsync);

    private static readonly Lazy<Task<string>> EmptyDatabase = new(MakeEmptyDatabaseAsync);

    private readonly string? _database;

    private TestPlace(string text, string? database)
    {
        Text = text;
        _database = database;
    }

    /// <summary>The folder or the connection string.</summary>
    public string Text { get; }

    public BookPlace Place => _database is null ? BookPlace.InFolder(Text) : BookPlace.OnPostgreSql(Text);

    /// <summary>A place without a book.</summary>
    public static Task<TestPlace> BareAsync() => TestServer.HoldsTheBooks ? BareDatabaseAsync() : Task.FromResult(BareFolder());

    public static TestPlace BareFolder() => new(TestBook.NewFolder(), null);

    public static async Task<TestPlace> BareDatabaseAsync() => Of(await TestServer.NewDatabaseAsync());

    /// <summary>A place with an empty book.</summary>
    public static async Task<TestPlace> NewAsync()
    {
        if (TestServer.HoldsTheBooks)
        {
            return Of(await TestServer.NewDatabaseAsync(await EmptyDatabase.Value));
        }

        var folder = TestBook.NewFolder();
        await File.WriteAllBytesAsync(Path.Combine(folder, Book.FileName), await EmptyFile.Value, TestBook.Cancellation);
        return new TestPlace(folder, null);
    }

    public void Dispose()
    {
        if (_database is null)
        {
            Directory.Delete(Text, recursive: true);
        }
        else
        {
            Task.Run(() => TestServer.DropAsync(_database)).GetAwaiter().GetResult();
        }
    }

    // Each book has connections of its own; a test opens few, and many tests run at once.
    private static TestPlace Of(string database) => new(TestServer.For(database, "Maximum Pool Size=20"), database);

    private static async Task<byte[]> MakeEmptyFileAsync()
    {
        var folder = TestBook.NewFolder();
        (await Book.OpenAsync(folder, TimeProvider.System, CancellationToken.None)).Expect().Dispose();
        var bytes = await File.ReadAllBytesAsync(Path.Combine(folder, Book.FileName), CancellationToken.None);
        Directory.Delete(folder, recursive: true);
        return bytes;
    }

    private static async Task<string> MakeEmptyDatabaseAsync()
    {
        var database = await TestServer.NewDatabaseAsync();
        (await Book.OpenAsync(BookPlace.OnPostgreSql(TestServer.For(database, "Pooling=false")), TimeProvider.System, CancellationToken.None)).Expect().Dispose();
        return database;
    }
}
