namespace Clutchwright.Desk.Importing;

/// <summary>What the rows of a file are.</summary>
public enum ImportKind
{
    /// <summary>Animals with what is said of them.</summary>
    Animals = 1,

    /// <summary>What females laid and what became of it.</summary>
    Clutches,

    /// <summary>What happened to animals.</summary>
    Log,
}

/// <summary>A file to take in.</summary>
/// <param name="Content">Its bytes.</param>
/// <param name="Name">What it is called, for the history.</param>
/// <param name="Mapping">By header, in any case: the word of a field, or <c>null</c>: keep as a note. Headers left out are read as the last time, or by their names.</param>
public sealed record ImportFile(ReadOnlyMemory<byte> Content, string Name, IReadOnlyDictionary<string, string?>? Mapping = null);

/// <summary>One column of a file and where it goes.</summary>
/// <param name="Header">As in the file; the second of one text bears a number.</param>
/// <param name="Field">The field it fills, or <c>null</c>: kept as a note.</param>
/// <param name="Sample">The first value that is not empty.</param>
public sealed record ImportColumn(string Header, string? Field, string? Sample);

/// <summary>Something wrong with a file.</summary>
/// <param name="Row">The row as a spreadsheet counts, the header being 1; 0: the file as a whole.</param>
/// <param name="Column">The column's header, or <c>null</c>.</param>
/// <param name="Text">What is wrong and what would be right.</param>
public sealed record ImportProblem(int Row, string? Column, string Text)
{
    /// <summary>Where it is, for a person; <c>null</c>: the file as a whole, of which the text speaks.</summary>
    public string? Where => (Row, Column) switch
    {
        (0, null) => null,
        (0, { } column) => $"column {column}",
        ({ } row, null) => $"row {row}",
        ({ } row, { } column) => $"row {row}, {column}",
    };
}

/// <summary>A row as it would be written.</summary>
/// <param name="Row">The row as a spreadsheet counts.</param>
/// <param name="Tag">The id of the animal or clutch; empty: the next free one.</param>
/// <param name="Text">What the row says, in one line.</param>
/// <param name="IsSkipped">Whether the book already holds the very same.</param>
public sealed record ImportRow(int Row, string Tag, string Text, bool IsSkipped);

/// <summary>What a file would do, before anything is written.</summary>
/// <param name="Kind">What the rows are.</param>
/// <param name="Columns">The mapping.</param>
/// <param name="Fields">The fields a column may be given to.</param>
/// <param name="Rows">The rows that can be read.</param>
/// <param name="Problems">Everything wrong; the file is taken only if this is empty.</param>
/// <param name="MappedAsOn">The day since when columns of these headings are read so, because they were taken so then; <c>null</c>: they go by their names, or are mapped now.</param>
public sealed record ImportPreview(
    ImportKind Kind,
    IReadOnlyList<ImportColumn> Columns,
    IReadOnlyList<string> Fields,
    IReadOnlyList<ImportRow> Rows,
    IReadOnlyList<ImportProblem> Problems,
    DateOnly? MappedAsOn);

/// <summary>What was written.</summary>
/// <param name="Added">How many records.</param>
/// <param name="Skipped">How many rows were there already.</param>
/// <param name="Deed">For undoing it.</param>
public sealed record ImportDone(int Added, int Skipped, long Deed);
