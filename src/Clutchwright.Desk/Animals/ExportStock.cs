using Clutchwright.Desk.Opened;
using System.Text;
using Clutchwright.Stock.Export;

namespace Clutchwright.Desk.Animals;

/// <summary>Gives the whole stock back as a pedigree file.</summary>
public sealed class ExportStock
{
    private readonly OpenBook _book;

    internal ExportStock(OpenBook book) => _book = book;

    /// <summary>Writes the file: CSV, UTF-8, RFC 4180.</summary>
    public async Task<byte[]> RunAsync(CancellationToken cancel)
    {
        using var bytes = new MemoryStream();
        await using (var writer = new StreamWriter(bytes, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true))
        {
            (await new ExportAnimals(_book.Book).RunAsync(writer, cancel)).Expect();
        }

        return bytes.ToArray();
    }
}
