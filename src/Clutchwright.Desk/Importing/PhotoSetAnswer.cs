namespace Clutchwright.Desk.Importing;

/// <summary>A set of photos to take in.</summary>
/// <param name="Content">A ZIP file that can be read from any place; it is left open.</param>
/// <param name="Name">What it is called, for the history.</param>
/// <param name="Mapping">By header of its list, in any case: the word of a field, or <c>null</c>: keep as a note.</param>
public sealed record PhotoSet(Stream Content, string Name, IReadOnlyDictionary<string, string?>? Mapping = null);

/// <summary>Something wrong with a set of photos.</summary>
/// <param name="Where">The entry; of the list also its row and column.</param>
/// <param name="Text">What is wrong and what would be right.</param>
public sealed record PhotoSetProblem(string Where, string Text);

/// <summary>A picture of a set as it would be kept.</summary>
/// <param name="File">Its name in the set.</param>
/// <param name="Tag">The animal.</param>
/// <param name="Taken">When it was taken, in words; <c>null</c>: not known.</param>
/// <param name="Note">What is said of it.</param>
/// <param name="IsSkipped">Whether the animal has this very picture already.</param>
public sealed record SetPhotoWords(string File, string Tag, string? Taken, string Note, bool IsSkipped);

/// <summary>What a set would do, before anything is written.</summary>
/// <param name="Columns">How the columns of its list are read; empty: it has none.</param>
/// <param name="Fields">The fields a column may be given to.</param>
/// <param name="Photos">The pictures that can be taken.</param>
/// <param name="Problems">Everything wrong; the set is taken only if this is empty.</param>
/// <param name="MappedAsOn">The day since when columns of these headings are read so; <c>null</c>: they go by their names, or are mapped now.</param>
public sealed record PhotoSetPreviewed(
    IReadOnlyList<ImportColumn> Columns,
    IReadOnlyList<string> Fields,
    IReadOnlyList<SetPhotoWords> Photos,
    IReadOnlyList<PhotoSetProblem> Problems,
    DateOnly? MappedAsOn);
