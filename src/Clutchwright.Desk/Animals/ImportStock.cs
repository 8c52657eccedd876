using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class ImportStock
{
    public Task<Answer<ImportDone>> RunAsync(ReadOnlyMemory<byte> file, IReadOnlyDictionary<string, string?>? mapping, string fileName, string who, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
