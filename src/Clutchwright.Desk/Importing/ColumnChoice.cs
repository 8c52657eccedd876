using Clutchwright.Desk.Words;
using Clutchwright.Stock.Import;

namespace Clutchwright.Desk.Importing;

/// <summary>A file that was read with the mapping that was chosen or kept.</summary>
/// <typeparam name="TField">The fields of the kind.</typeparam>
/// <typeparam name="TFile">The file of the kind.</typeparam>
/// <param name="File">The file.</param>
/// <param name="MappedAsOn">Since when files of these headings are read so; <c>null</c>: not by a kept mapping.</param>
/// <param name="IsByName">Whether every column is read as its heading says.</param>
/// <param name="Problems">Headings or fields that do not exist.</param>
internal sealed record ChosenFile<TField, TFile>(TFile File, DateOnly? MappedAsOn, bool IsByName, IReadOnlyList<AskedWrongly> Problems)
    where TField : struct, Enum
    where TFile : TableFile<TField>
{
    /// <summary>By heading the word of its field; <c>null</c>: kept as a note.</summary>
    public Dictionary<string, string?> Fields(TableFields<TField> fields) => File.Columns.ToDictionary(c => c.Header, c => ColumnChoice.Word(fields, c.Field), StringComparer.Ordinal);
}

/// <summary>Reads a file by the mapping a keeper chose, else by the one that is kept for its headings, else by the headings.</summary>
internal static class ColumnChoice
{
    public static async Task<ChosenFile<TField, TFile>> ReadAsync<TField, TFile>(
        string kind,
        TableFields<TField> fields,
        Func<IReadOnlyDictionary<int, TField>?, Task<TFile>> read,
        IReadOnlyDictionary<string, string?>? mapping,
        ImportMappings kept,
        CancellationToken cancel)
        where TField : struct, Enum
        where TFile : TableFile<TField>
    {
        var plain = await read(null);
        var problems = new List<AskedWrongly>();
        var known = plain.Columns.Count == 0 ? null : await kept.FindAsync(kind, plain.Columns.Select(c => c.Header), cancel);
        var chosen = new Dictionary<int, TField>();
        foreach (var (header, word) in known?.Fields ?? new Dictionary<string, string?>())
        {
            // A field of an earlier version may be gone; the heading then speaks for itself.
            if (Column(plain, header) is { } column && Field(fields, word) is { } field)
            {
                chosen[column.Index] = field;
            }
        }

        foreach (var (header, word) in mapping ?? new Dictionary<string, string?>())
        {
            if (Column(plain, header) is not { } column)
            {
                problems.Add(new("map", plain.Columns.Count == 0
                    ? $"The file has no column \"{header}\"."
                    : $"The file has no column \"{header}\". Its columns: {string.Join(", ", plain.Columns.Select(c => c.Header))}."));
            }
            else if (Field(fields, word) is not { } field)
            {
                problems.Add(new("map", $"\"{word}\" is no field. One of: {string.Join(", ", fields.Words.Select(f => f.Word))}."));
            }
            else
            {
                chosen[column.Index] = field;
            }
        }

        var file = chosen.Count == 0 ? plain : await read(chosen);
        return new(
            file,
            mapping is { Count: > 0 } ? null : known?.Since,
            file.Columns.Zip(plain.Columns).All(pair => EqualityComparer<TField>.Default.Equals(pair.First.Field, pair.Second.Field)),
            problems);
    }

    /// <summary>The word of a field; <c>null</c>: the column is kept as a note.</summary>
    public static string? Word<TField>(TableFields<TField> fields, TField field)
        where TField : struct, Enum =>
        EqualityComparer<TField>.Default.Equals(field, fields.KeptAsNote) ? null : fields.Words.First(f => EqualityComparer<TField>.Default.Equals(f.Field, field)).Word;

    private static ColumnMapping<TField>? Column<TField>(TableFile<TField> file, string header)
        where TField : struct, Enum =>
        file.Columns.FirstOrDefault(c => string.Equals(c.Header.Trim(), header.Trim(), StringComparison.OrdinalIgnoreCase));

    private static TField? Field<TField>(TableFields<TField> fields, string? word)
        where TField : struct, Enum
    {
        var asked = word?.Trim();
        return string.IsNullOrEmpty(asked)
            ? fields.KeptAsNote
            : fields.Words.Where(f => string.Equals(f.Word, asked, StringComparison.OrdinalIgnoreCase)).Select(f => (TField?)f.Field).FirstOrDefault();
    }
}
