namespace Clutchwright.Desk.Genes;

/// <summary>What came of reading a species folder.</summary>
/// <param name="Folder">The folder.</param>
/// <param name="Problems">Everything wrong; empty: the folder can be used.</param>
/// <param name="Loci">How many loci it describes; 0 where there are problems.</param>
/// <param name="Alleles">How many mutant alleles.</param>
/// <param name="Combinations">How many named combinations.</param>
/// <param name="Looks">How many looks.</param>
public sealed record CatalogueCheck(
    string Folder, IReadOnlyList<CatalogueFault> Problems, int Loci, int Alleles, int Combinations, int Looks);

/// <summary>One thing wrong in a species folder.</summary>
/// <param name="File">The file, relative to the folder.</param>
/// <param name="Line">The line, from 1; 0: the whole file.</param>
/// <param name="Column">The column, from 1; 0: the whole file.</param>
/// <param name="Text">What is wrong, and what would be right.</param>
public sealed record CatalogueFault(string File, int Line, int Column, string Text)
{
    /// <summary>Writes <c>file:line:column: text</c>.</summary>
    public override string ToString() => Line > 0 ? $"{File}:{Line}:{Column}: {Text}" : $"{File}: {Text}";
}

/// <summary>Reads a species folder and lists every problem.</summary>
public static class CheckCatalogue
{
    /// <summary>Reads the folder.</summary>
    public static CatalogueCheck Run(string folder) => throw new NotSupportedException("To come.");
}
