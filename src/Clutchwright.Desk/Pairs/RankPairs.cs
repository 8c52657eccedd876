using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Pairs;

public sealed class RankPairs
{
    public Task<Answer<PairsAnswer>> RunAsync(PairsQuestion question, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
