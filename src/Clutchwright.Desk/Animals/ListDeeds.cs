using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class ListDeeds
{
    public Task<IReadOnlyList<DeedLine>> RunAsync(int skip, int take, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
