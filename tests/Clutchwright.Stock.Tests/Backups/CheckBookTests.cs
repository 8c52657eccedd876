using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Tests.Testing;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Clutchwright.Stock.Tests.Backups;

/// <summary>What was done to a book behind its back is found.</summary>
public sealed class CheckBookTests
{
    [Theory]
    [InlineData("UPDATE \"Animals\" SET \"Notes\" = 'x'", "A is not as deed 2 left it")]
    [InlineData("DELETE FROM \"Statements\"", "told: Clown is not as deed 3 left it")]
    [InlineData("DELETE FROM \"Changes\" WHERE \"DeedId\" = 2", "deed 2 changed nothing")]
    [InlineData("UPDATE \"Changes\" SET \"Before\" = replace(\"Before\", 'first', 'second') WHERE \"DeedId\" = 2", "deed 2: A was not as deed 1 left it")]
    [InlineData("DELETE FROM \"Changes\" WHERE \"DeedId\" = 1; DELETE FROM \"Deeds\" WHERE \"DeedId\" = 1", "deed 2 comes after deed 0")]
    [InlineData("DELETE FROM \"Changes\" WHERE \"RecordId\" = (SELECT \"StatementId\" FROM \"Statements\")", "Statements: 1 records, 0 by the history")]
    public async Task RunAsync_ChangedWithoutADeed_IsFound(string sql, string told)
    {
        using var book = await TestBook.NewAsync();
        var animal = (await book.TryAddAsync(new() { Tag = "A", Notes = "first" })).Expect();
        (await book.TryEditAsync(animal, new() { Tag = "A", Notes = "later" })).Expect();
        await book.SayAsync(animal, StatementKind.Told, "Clown");
        await using (var db = book.Book.NewContext())
        {
            await db.Database.ExecuteSqlRawAsync(sql, TestBook.Cancellation);
        }

        var check = (await new CheckBook(book.Book).RunAsync(TestBook.Cancellation)).Expect();

        Assert.False(check.IsSound);
        Assert.Contains(told, check.History);
    }

    [Fact]
    public async Task RunAsync_RuleBroken_IsFound()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("A");
        await using (var db = book.Book.NewContext())
        {
            await db.Database.ExecuteSqlRawAsync(
                TestServer.HoldsTheBooks
                    ? "ALTER TABLE \"Animals\" DROP CONSTRAINT \"CK_Animals_MassGrams\"; UPDATE \"Animals\" SET \"MassGrams\" = -1; ALTER TABLE \"Animals\" ADD CONSTRAINT \"CK_Animals_MassGrams\" CHECK (\"MassGrams\" > 0) NOT VALID"
                    : "PRAGMA ignore_check_constraints = ON; UPDATE \"Animals\" SET \"MassGrams\" = -1; PRAGMA ignore_check_constraints = OFF",
                TestBook.Cancellation);
        }

        var check = (await new CheckBook(book.Book).RunAsync(TestBook.Cancellation)).Expect();

        Assert.Single(check.Damage);
        Assert.Contains("Animals", check.Damage[0], StringComparison.Ordinal);
    }

    /// <summary>A server lets no link be broken.</summary>
    [Fact]
    [Trait(Once.Key, Once.Value)]
    public async Task RunAsync_LinkBroken_IsFound()
    {
        using var book = await TestBook.NewAsync();
        await book.SayAsync(await book.AddAsync("A"), StatementKind.Told, "Clown");
        await BackupTests.RunAsync(book.Book.File!, "PRAGMA foreign_keys = OFF; DELETE FROM Animals");

        var check = (await new CheckBook(book.Book).RunAsync(TestBook.Cancellation)).Expect();

        Assert.Equal(["Statements: 1 name a record that is not there"], check.Orphans);
    }

    [Fact]
    public async Task RunAsync_EmptyBook_IsSound()
    {
        using var book = await TestBook.NewAsync();

        Assert.True((await new CheckBook(book.Book).RunAsync(TestBook.Cancellation)).Expect().IsSound);
    }
}
