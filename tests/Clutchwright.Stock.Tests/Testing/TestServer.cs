using Npgsql;
using Xunit;

namespace Clutchwright.Stock.Tests.Testing;

/// <summary>The PostgreSQL server that the tests may make databases on. <c>CLUTCHWRIGHT_TEST_POSTGRESQL</c> holds its connection
/// string; with <c>CLUTCHWRIGHT_TEST_DATABASE=postgresql</c> every test book lies there and none in a file.</summary>
internal static class TestServer
{
    private static readonly string? Connection = Environment.GetEnvironmentVariable("CLUTCHWRIGHT_TEST_POSTGRESQL");

    /// <summary>Whether the test books lie on the server in this run.</summary>
    public static bool HoldsTheBooks { get; } = Environment.GetEnvironmentVariable("CLUTCHWRIGHT_TEST_DATABASE") == "postgresql";

    public static bool IsThere => Connection is not null;

    public static void SkipIfMissing() =>
        Assert.SkipWhen(Connection is null, "no PostgreSQL server to test on; ./test starts one, CLUTCHWRIGHT_TEST_POSTGRESQL names another");

    /// <summary>The connection string for a database, with other settings after it.</summary>
    public static string For(string database, string more = "") => $"{Known};Database={database};{more}";

    /// <summary>Makes a database of its own, empty or like another. It sorts by the rules of a language, which the book must not follow.</summary>
    public static async Task<string> NewDatabaseAsync(string? like = null, string encoding = "UTF8")
    {
        var name = $"clutchwright_test_{Guid.CreateVersion7():N}";
        await RunAsync(like is null
            ? $"CREATE DATABASE {name} TEMPLATE template0 ENCODING '{encoding}' LOCALE_PROVIDER icu ICU_LOCALE 'en-US' LC_COLLATE 'C' LC_CTYPE 'C'"
            : $"CREATE DATABASE {name} TEMPLATE {like}");
        return name;
    }

    public static Task DropAsync(string database) => RunAsync($"DROP DATABASE IF EXISTS {database} WITH (FORCE)");

    public static async Task RunAsync(string sql, string? database = null)
    {
        await using var connection = new NpgsqlConnection((database is null ? Known : For(database)) + ";Pooling=false");
        await connection.OpenAsync(CancellationToken.None);
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(CancellationToken.None);
    }

    private static string Known => Connection ?? throw new InvalidOperationException("CLUTCHWRIGHT_TEST_POSTGRESQL is not set.");
}
