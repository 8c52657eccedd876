namespace Clutchwright.Stock.Import;

/// <summary>What a column of a file is taken for.</summary>
/// <typeparam name="TField">The fields of the kind of record that the file holds.</typeparam>
/// <remarks><c>Index</c> counts from 0. <c>Header</c> is as in the file; a later one of the same text bears its number in brackets, an empty one its place.
/// <c>IsChosen</c> tells whether the keeper said so.</remarks>
public sealed record ColumnMapping<TField>(int Index, string Header, TField Field, bool IsChosen)
    where TField : struct, Enum;
