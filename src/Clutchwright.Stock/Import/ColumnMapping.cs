using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Import;

/// <summary>What a column of a file is taken for.</summary>
/// <remarks><c>Index</c> counts from 0. <c>IsChosen</c> tells whether the keeper said so.</remarks>
public sealed record ColumnMapping(int Index, string Header, AnimalField Field, bool IsChosen);
