using Clutchwright.Catalogue;

namespace Clutchwright.Desk.Genes;

/// <summary>Is this species folder sound?</summary>
public static class CheckCatalogue
{
    /// <summary>Reads a folder, and says everything that is wrong in it, by file and place.</summary>
    public static CatalogueCheck Run(string folder)
    {
        var read = CatalogueFolder.Read(folder);
        return new(
            read.Problems.Select(p => new CatalogueProblemLine(p.File, p.Line, p.Column, p.Text)).ToArray(),
            read.Catalogue?.Species.Loci.Count ?? 0,
            read.Catalogue?.Alleles.Count() ?? 0,
            read.Catalogue?.Forms.Count() ?? 0,
            read.Catalogue?.Combinations.Count ?? 0,
            read.Catalogue?.Looks.Count ?? 0,
            read.Catalogue?.Species.Dangers.Count ?? 0);
    }
}

/// <summary>One thing that is wrong in a species folder.</summary>
/// <param name="File">The file, relative to the folder.</param>
/// <param name="Line">The line, from 1; 0: the whole file.</param>
/// <param name="Column">The column, from 1; 0: the whole file.</param>
/// <param name="Text">What is wrong, and what would be right.</param>
public sealed record CatalogueProblemLine(string File, int Line, int Column, string Text);

/// <summary>What came of a check.</summary>
/// <param name="Problems">Everything that is wrong; the counts are 0 then.</param>
/// <param name="Loci">Loci.</param>
/// <param name="Alleles">Mutant alleles.</param>
/// <param name="Forms">Visible forms.</param>
/// <param name="Combinations">Named combinations.</param>
/// <param name="Looks">Stated looks.</param>
/// <param name="Dangers">Dangers.</param>
public sealed record CatalogueCheck(
    IReadOnlyList<CatalogueProblemLine> Problems, int Loci, int Alleles, int Forms, int Combinations, int Looks, int Dangers);
