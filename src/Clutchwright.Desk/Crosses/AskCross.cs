using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Crosses;

public sealed class AskCross
{
    public Task<Answer<CrossAnswer>> RunAsync(CrossQuestion question, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
