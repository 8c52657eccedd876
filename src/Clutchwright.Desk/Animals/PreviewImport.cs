using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class PreviewImport
{
    public Task<ImportPreview> RunAsync(ReadOnlyMemory<byte> file, IReadOnlyDictionary<string, string?>? mapping, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
