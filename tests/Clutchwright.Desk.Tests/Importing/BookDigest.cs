using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Data.Sqlite;

namespace Clutchwright.Desk.Tests.Importing;

/// <summary>Everything in the tables of a book in a file, as a digest, without its history; and whether anything was written.</summary>
internal sealed class BookDigest : IDisposable
{
    private readonly SqliteConnection _connection;
    private readonly string[] _tables;

    public BookDigest(string folder)
    {
        _connection = new($"Data Source={Path.Combine(folder, "clutchwright.db")};Mode=ReadOnly;Pooling=False");
        _connection.Open();
        _tables = [.. Rows("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE '\\_\\_%' ESCAPE '\\' AND name NOT LIKE 'sqlite%' ORDER BY name")];
    }

    /// <summary>What the book holds, without its history.</summary>
    public string Records() => Of(_tables.Where(t => t is not ("Deeds" or "Changes" or "PhotoContents")).Select(t => $"SELECT * FROM \"{t}\""));

    /// <summary>Changes whenever anything is written by somebody else, and only then.</summary>
    public string Version() => Rows("PRAGMA data_version")[0];

    public void Dispose() => _connection.Dispose();

    private string Of(IEnumerable<string> questions)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var question in questions)
        {
            foreach (var row in Rows(question).Order(StringComparer.Ordinal))
            {
                hash.AppendData(Encoding.UTF8.GetBytes(row + "\n"));
            }
        }

        return Convert.ToHexString(hash.GetHashAndReset());
    }

    private List<string> Rows(string question)
    {
        using var command = _connection.CreateCommand();
        command.CommandText = question;
        using var reader = command.ExecuteReader();
        var rows = new List<string>();

        // A version tells that a record was written, not what it says.
        var columns = Enumerable.Range(0, reader.FieldCount).Where(c => reader.GetName(c) != "Version").ToArray();
        while (reader.Read())
        {
            rows.Add(string.Join('|', columns.Select(c => reader.IsDBNull(c) ? "-" : Convert.ToString(reader.GetValue(c), CultureInfo.InvariantCulture))));
        }

        return rows;
    }
}
