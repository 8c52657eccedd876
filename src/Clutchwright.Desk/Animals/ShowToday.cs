using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class ShowToday
{
    public Task<TodayAnswer> RunAsync(CancellationToken cancel) => throw new NotSupportedException("To come.");
}
