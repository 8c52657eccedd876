namespace Clutchwright.Stock.Import;

/// <summary>The fields that a column of a kind of file can be taken for, under their names.</summary>
/// <typeparam name="TField">The fields.</typeparam>
public sealed class TableFields<TField>
    where TField : struct, Enum
{
    private const string NoteWord = "note";
    private const string LeftOutWord = "leave out";

    private readonly Dictionary<string, TField> _known;
    private readonly Dictionary<TField, string> _names;

    internal TableFields(
        IReadOnlyList<(TField Field, string Name)> written,
        IReadOnlyList<(TField Field, string Name)> alsoRead,
        IReadOnlyList<(string Name, TField Field)> alsoCalled,
        (TField KeptAsNote, TField LeftOut) apart,
        IReadOnlyList<TField> needed,
        int mostRows = int.MaxValue)
    {
        MostRows = mostRows;
        Written = written;
        Needed = needed;
        (KeptAsNote, LeftOut) = apart;
        _names = written.Concat(alsoRead).ToDictionary(column => column.Field, column => column.Name);
        Words = [.. _names.Select(column => (column.Value, column.Key)), (NoteWord, KeptAsNote), (LeftOutWord, LeftOut)];
        _known = _names.Select(column => (Name: column.Value, Field: column.Key)).Concat(alsoCalled).ToDictionary(pair => Key(pair.Name), pair => pair.Field, StringComparer.Ordinal);
    }

    /// <summary>Every field that a column may be given to, by its word; at the end that it is kept as a note, and that it is left out.</summary>
    public IReadOnlyList<(string Word, TField Field)> Words { get; }

    /// <summary>What a column is taken for whose header says nothing.</summary>
    public TField KeptAsNote { get; }

    /// <summary>What a column is taken for that the keeper does not want.</summary>
    public TField LeftOut { get; }

    /// <summary>The columns as they are written, in this order.</summary>
    internal IReadOnlyList<(TField Field, string Name)> Written { get; }

    /// <summary>The fields without which no row can be read.</summary>
    internal IReadOnlyList<TField> Needed { get; }

    /// <summary>How many rows are taken at once.</summary>
    internal int MostRows { get; }

    internal string NameOf(TField field) => _names.GetValueOrDefault(field, "");

    internal TField FieldOf(string header) => _known.GetValueOrDefault(Key(header), KeptAsNote);

    /// <summary>Whether a field has one column at most: the others stand for nothing of their own.</summary>
    internal bool IsOwn(TField field) => _names.ContainsKey(field);

    /// <summary>Case, spaces, hyphens and brackets do not count: <c>Mass (g)</c> is <c>mass_g</c>.</summary>
    private static string Key(string header) => string.Concat(header.ToUpperInvariant().Where(char.IsLetterOrDigit));
}
