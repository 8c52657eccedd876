using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class LoadDemo
{
    public Task<Answer<ImportDone>> RunAsync(string who, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
