using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Genes;

public sealed class ListGenes
{
    public IReadOnlyList<GeneLine> Run(string? find, string? kind) => throw new NotSupportedException("To come.");
}
