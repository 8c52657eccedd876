using Clutchwright.Desk.Importing;

namespace Clutchwright.Desk.Animals;

/// <summary>Gives the whole stock back as a pedigree file.</summary>
public sealed class ExportStock
{
    private readonly ExportTable _export;

    internal ExportStock(ExportTable export) => _export = export;

    /// <summary>Writes the file: CSV, UTF-8, RFC 4180.</summary>
    public Task<byte[]> RunAsync(CancellationToken cancel) => _export.RunAsync(ImportKind.Animals, cancel);
}
