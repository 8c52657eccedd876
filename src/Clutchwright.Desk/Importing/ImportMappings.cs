using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Clutchwright.Desk.Opened;
using Clutchwright.Stock.Settings;

namespace Clutchwright.Desk.Importing;

/// <summary>How the columns of a file were read the last time that one of the same headings was taken in.</summary>
/// <param name="Since">When it was first read so.</param>
/// <param name="Fields">By heading the word of its field; <c>null</c>: kept as a note.</param>
internal sealed record KeptMapping(DateOnly Since, IReadOnlyDictionary<string, string?> Fields);

/// <summary>The mappings that are kept, by what is imported and the set of headings.</summary>
internal sealed class ImportMappings(OpenBook book, TimeProvider clock)
{
    private const int DigestLetters = 32;

    /// <summary>The mapping for these headings; <c>null</c>: none is kept.</summary>
    public async Task<KeptMapping?> FindAsync(string kind, IEnumerable<string> headings, CancellationToken cancel)
    {
        var name = NameOf(kind, headings);
        var kept = (await new FindSetting(book.Book).RunAsync([name], cancel)).Expect();
        return kept.TryGetValue(name, out var json) ? Read(json) : null;
    }

    /// <summary>Keeps a mapping where it says more than the headings do by themselves, or other than what was kept.</summary>
    /// <param name="kind">What is imported, in a lower-case word.</param>
    /// <param name="fields">By heading the word of its field.</param>
    /// <param name="byName">Whether each heading would be read so by its name.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    public async Task KeepAsync(string kind, IReadOnlyDictionary<string, string?> fields, bool byName, string who, CancellationToken cancel)
    {
        var known = await FindAsync(kind, fields.Keys, cancel);
        if (known is null ? byName : known.Fields.Count == fields.Count && known.Fields.All(f => fields.TryGetValue(f.Key, out var word) && word == f.Value))
        {
            return;
        }

        var value = JsonSerializer.Serialize(new KeptMapping(DateOnly.FromDateTime(clock.GetLocalNow().DateTime), fields));

        // A mapping too long to be kept is asked for again the next time; the import itself is done.
        _ = await new KeepSetting(book.Book).RunAsync(NameOf(kind, fields.Keys), value, $"Remembered how the columns of a file of {kind} are read", who, cancel);
    }

    // What cannot be read is as if it were not there.
    private static KeptMapping? Read(string json)
    {
        try
        {
            return JsonSerializer.Deserialize<KeptMapping>(json) is { Fields: not null } kept ? kept : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    // The order of the columns does not matter, nor the case of their headings.
    private static string NameOf(string kind, IEnumerable<string> headings)
    {
        var text = string.Join('\n', headings.Select(h => h.Trim().ToUpperInvariant()).Order(StringComparer.Ordinal));
        var digest = Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..DigestLetters];
        return $"import-{kind}-{string.Concat(digest.Select(d => (char)('a' + Convert.ToInt32(d.ToString(), 16))))}";
    }
}
