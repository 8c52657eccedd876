using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Storage;
using Clutchwright.Stock.Tests.Testing;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Xunit;

namespace Clutchwright.Stock.Tests.Backups;

/// <summary>What is copied and compared is all that the book has, whatever tables it gains.</summary>
public sealed class BookTableTests
{
    [Fact]
    public async Task Of_Model_HasEveryTableAndColumnOfTheDatabase()
    {
        using var book = await TestBook.NewAsync();
        await using var db = book.Book.NewContext();

        var columns = await db.Database.SqlQueryRaw<string>(TestServer.HoldsTheBooks
            ? "SELECT table_name || '.' || column_name AS \"Value\" FROM information_schema.columns WHERE table_schema = current_schema() AND table_name NOT LIKE '\\_\\_EF%'"
            : "SELECT m.name || '.' || c.name AS \"Value\" FROM sqlite_master m JOIN pragma_table_info(m.name) c WHERE m.type = 'table' AND m.name NOT LIKE '\\_\\_EF%' ESCAPE '\\' AND m.name NOT LIKE 'sqlite%'")
            .ToListAsync(TestBook.Cancellation);

        var copied = BookTable.Of(db.Model).SelectMany(table => table.Columns.Select(column => $"{table.Name}.{column.Name}"));
        Assert.Equal(columns.Order(StringComparer.Ordinal), copied.Order(StringComparer.Ordinal));
        Assert.All(db.Model.GetEntityTypes(), entity => Assert.Contains(BookTable.Of(db.Model), table => table.Name == entity.GetTableName()));
    }

    [Fact]
    public async Task Of_Model_KnowsHowToCopyEveryColumn()
    {
        using var book = await TestBook.NewAsync();
        await using var db = book.Book.NewContext();

        Assert.All(BookTable.Of(db.Model), table => Assert.All(table.Columns, column => Assert.True(column.CanBeCopied, $"{table.Name}.{column.Name} of {column.Type}")));
    }

    [Fact]
    public void Of_BothDatabases_AreTheSameTablesInTheSameOrder()
    {
        using var sqlite = new StockContext(new DbContextOptionsBuilder<StockContext>().UseSqlite(new SqliteConnection()).Options);
        using var postgresql = new StockContext(new DbContextOptionsBuilder<StockContext>().UseNpgsql(new NpgsqlConnection()).Options);

        Assert.Equal(Lines(sqlite), Lines(postgresql));

        static IEnumerable<string> Lines(StockContext db) =>
            BookTable.Of(db.Model).Select(table => $"{table.Name}: {string.Join(", ", table.Columns.Select(column => $"{column.Name} {column.Type.Name}"))}");
    }

    [Fact]
    public async Task Of_Model_NamesATableAfterThoseThatItNames()
    {
        using var book = await TestBook.NewAsync();
        await using var db = book.Book.NewContext();
        var order = BookTable.Of(db.Model).Select((table, i) => (table, i)).ToDictionary(t => t.table.Name, t => t);

        Assert.All(
            db.Model.GetEntityTypes().SelectMany(entity => entity.GetForeignKeys()),
            link =>
            {
                var (named, naming) = (order[link.PrincipalEntityType.GetTableName()!], order[link.DeclaringEntityType.GetTableName()!]);
                Assert.True(named.i <= naming.i || naming.table.Circle.Contains(named.table), $"{naming.table.Name} before {named.table.Name}");
            });
        Assert.Equal(["Animals", "Clutches"], order["Animals"].table.Circle.Select(t => t.Name));
        Assert.Equal(["Deeds"], order["Deeds"].table.Circle.Select(t => t.Name));
    }

    [Theory]
    [InlineData("a", "b")]
    [InlineData("", null)]
    [InlineData(1L, 2L)]
    [InlineData(1L, 1.0)]
    [InlineData(0.5, 0.25)]
    [InlineData(true, false)]
    public void Digest_OfAnotherValue_IsAnother(object? one, object? other)
    {
        Assert.NotEqual(Digest([one]), Digest([other]));
        Assert.NotEqual(Digest([one, other]), Digest([other, one]));
        Assert.Equal(Digest([one, other]), Digest([one, other]));
    }

    [Fact]
    public void Digest_CellsCutElsewhere_IsAnother()
    {
        Assert.NotEqual(Digest(["ab", "c"]), Digest(["a", "bc"]));
        Assert.NotEqual(Digest([new byte[] { 1, 2 }, new byte[] { 3 }]), Digest([new byte[] { 1 }, new byte[] { 2, 3 }]));
    }

    [Fact]
    public void Digest_SameNumberWrittenOtherwise_IsTheSame()
    {
        Assert.Equal(Digest([1.50m]), Digest([1.5m]));
        Assert.Equal(Digest([-0.0]), Digest([0.0]));
    }

    /// <summary>By hand: a text is 's', its length in eight bytes, its bytes.</summary>
    [Fact]
    public void Digest_OfOneLetter_IsSha256OfItsBytes() =>
        Assert.Equal(
            Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData([(byte)'s', 0, 0, 0, 0, 0, 0, 0, 1, (byte)'a'])),
            Digest(["a"]));

    private static string Digest(object?[] row)
    {
        using var digest = new TableDigest();
        digest.Add(row);
        return digest.Finish();
    }
}
