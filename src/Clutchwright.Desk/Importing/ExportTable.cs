using System.Text;
using Clutchwright.Desk.Opened;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Import;

namespace Clutchwright.Desk.Importing;

/// <summary>Gives the animals, the clutches or the log back as a file that an import reads to the same.</summary>
public sealed class ExportTable
{
    private readonly OpenBook _book;

    internal ExportTable(OpenBook book) => _book = book;

    /// <summary>Writes the file: CSV, UTF-8, RFC 4180.</summary>
    public async Task<byte[]> RunAsync(ImportKind kind, CancellationToken cancel)
    {
        using var bytes = new MemoryStream();
        await using (var writer = new StreamWriter(bytes, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true))
        {
            (await (kind switch
            {
                ImportKind.Clutches => new ExportClutches(_book.Book).RunAsync(writer, cancel),
                ImportKind.Log => new ExportLog(_book.Book).RunAsync(writer, cancel),
                _ => new ExportAnimals(_book.Book).RunAsync(writer, cancel),
            })).Expect();
        }

        return bytes.ToArray();
    }
}
