using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class UndoDeed
{
    public Task<Answer<DeedLine>> RunAsync(long deed, string who, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
