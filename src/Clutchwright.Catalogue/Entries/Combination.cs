using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.Entries;

/// <summary>A trade name for visible forms of several loci together.</summary>
/// <param name="Name">The name.</param>
/// <param name="Also">Other names.</param>
/// <param name="Of">Its makings as trade text.</param>
/// <param name="Expressions">The forms it stands for, one a locus, in the catalogue's order.</param>
/// <param name="Text">A description, or <c>null</c>.</param>
/// <param name="Evidence">On what grounds.</param>
public sealed record Combination(
    string Name,
    IReadOnlyList<string> Also,
    string Of,
    IReadOnlyList<Expression> Expressions,
    string? Text,
    Evidence Evidence);
