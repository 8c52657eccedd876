using System.Diagnostics.CodeAnalysis;

namespace Clutchwright.Catalogue;

/// <summary>One thing that is wrong in a species folder.</summary>
/// <param name="File">The file, relative to the folder and with forward slashes.</param>
/// <param name="Line">The line, from 1; 0 where the whole file or folder is meant.</param>
/// <param name="Column">The column, from 1; 0 where the whole file or folder is meant.</param>
/// <param name="Text">What is wrong, and what would be right.</param>
public sealed record CatalogueProblem(string File, int Line, int Column, string Text)
{
    /// <summary>Writes <c>file:line:column: text</c>, as compilers do.</summary>
    public override string ToString() => Line > 0 ? $"{File}:{Line}:{Column}: {Text}" : $"{File}: {Text}";
}

/// <summary>What came of reading a species folder: the catalogue, or everything that is wrong.</summary>
public sealed class CatalogueOutcome
{
    internal CatalogueOutcome(SpeciesCatalogue? catalogue, IReadOnlyList<CatalogueProblem> problems)
    {
        Catalogue = catalogue;
        Problems = problems;
    }

    /// <summary>Gets whether the folder was read without a problem.</summary>
    [MemberNotNullWhen(true, nameof(Catalogue))]
    public bool IsRead => Catalogue is not null;

    /// <summary>Gets the catalogue; <c>null</c> if there are problems.</summary>
    public SpeciesCatalogue? Catalogue { get; }

    /// <summary>Gets all problems, by file and place.</summary>
    public IReadOnlyList<CatalogueProblem> Problems { get; }
}
