using System.Text;

namespace Clutchwright.Stock.Import;

/// <summary>The text of a file: UTF-8 with or without a byte order mark, or UTF-16 with one.</summary>
internal static class CsvText
{
    /// <summary>Reads a file to its end, but no further than a file may be long.</summary>
    /// <returns>Its text, or the one thing that is wrong with it.</returns>
    public static async Task<(string Text, RowProblem? Problem)> ReadAsync(Stream stream, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var bytes = new MemoryStream();
        var buffer = new byte[64 * 1024];
        int read;
        while ((read = await stream.ReadAsync(buffer, cancellation)) > 0)
        {
            if (bytes.Length + read > AnimalFile.MaxBytes)
            {
                return ("", new RowProblem(0, 0, null, null, new ImportProblem.TooLarge(AnimalFile.MaxBytes)));
            }

            bytes.Write(buffer, 0, read);
        }

        return Decode(bytes.GetBuffer().AsSpan(0, (int)bytes.Length), out var text, out var line)
            ? (text, null)
            : ("", new RowProblem(0, line, null, null, new ImportProblem.NotUtf8()));
    }

    /// <summary>Takes bytes for text; where they are none, says in which line.</summary>
    public static bool Decode(ReadOnlySpan<byte> bytes, out string text, out int badLine)
    {
        var encoding = bytes switch
        {
            [0xFF, 0xFE, ..] => new UnicodeEncoding(bigEndian: false, byteOrderMark: true, throwOnInvalidBytes: true),
            [0xFE, 0xFF, ..] => new UnicodeEncoding(bigEndian: true, byteOrderMark: true, throwOnInvalidBytes: true),
            _ => (Encoding)new UTF8Encoding(encoderShouldEmitUTF8Identifier: true, throwOnInvalidBytes: true),
        };
        var body = bytes.StartsWith(encoding.Preamble) ? bytes[encoding.Preamble.Length..] : bytes;
        try
        {
            text = encoding.GetString(body);
            badLine = 0;
            return true;
        }
        catch (DecoderFallbackException exception)
        {
            var before = body[..Math.Clamp(exception.Index, 0, body.Length)];
            text = "";
            badLine = 1 + before.Count((byte)'\n');
            return false;
        }
    }
}
