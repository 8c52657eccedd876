using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Genes;

public sealed class ShowGene
{
    public GeneAnswer? Run(string id) => throw new NotSupportedException("To come.");
}
