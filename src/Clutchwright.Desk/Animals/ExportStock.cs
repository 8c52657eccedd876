using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class ExportStock
{
    public Task<byte[]> RunAsync(CancellationToken cancel) => throw new NotSupportedException("To come.");
}
