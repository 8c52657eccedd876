using System.Text;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Importing;

/// <summary>A file that was sent for import: as a file, as pasted rows, or as the page sends it back while its mapping is confirmed.</summary>
/// <param name="FileName">As the sender called it.</param>
/// <param name="Bytes">The file.</param>
/// <param name="Mapping">Which field each column fills; <c>null</c>: not chosen yet.</param>
/// <param name="IsConfirmed">Whether it is to be written now.</param>
/// <param name="Problem">Why there is nothing to read; <c>null</c>: there is.</param>
internal sealed record ImportUpload(
    string FileName, byte[] Bytes, IReadOnlyDictionary<string, string?>? Mapping, bool IsConfirmed, AskedWrongly? Problem)
{
    /// <summary>The largest file that is taken.</summary>
    public const int MostBytes = 8 * 1024 * 1024;

    public static async Task<ImportUpload> ReadAsync(IFormCollection sent, CancellationToken cancel)
    {
        var step = sent["step"].ToString();
        if (sent["content"].ToString() is { Length: > 0 } content)
        {
            var bytes = new byte[content.Length];
            return Convert.TryFromBase64String(content, bytes, out var written)
                ? new(sent["fileName"].ToString(), bytes[..written], MappingOf(sent), step == "write", Problem: null)
                : None("The file came back damaged. Send it again.");
        }

        if (sent.Files["file"] is { Length: > 0 } file)
        {
            if (file.Length > MostBytes)
            {
                return None($"The file is larger than {MostBytes / 1024 / 1024} MB.");
            }

            using var copy = new MemoryStream();
            await file.CopyToAsync(copy, cancel);
            return new(Path.GetFileName(file.FileName), copy.ToArray(), Mapping: null, IsConfirmed: false, Problem: null);
        }

        return sent["pasted"].ToString() is { } pasted && !string.IsNullOrWhiteSpace(pasted)
            ? new("pasted rows", Encoding.UTF8.GetBytes(pasted), Mapping: null, IsConfirmed: false, Problem: null)
            : None("Choose a file, or paste its rows.");
    }

    /// <summary>Which field each column fills; <c>null</c>: not chosen yet.</summary>
    public static Dictionary<string, string?>? MappingOf(IFormCollection sent)
    {
        var (headers, fields) = (sent["header"], sent["field"]);
        if (headers.Count == 0 || headers.Count != fields.Count)
        {
            return null;
        }

        var mapping = new Dictionary<string, string?>(StringComparer.Ordinal);
        for (var i = 0; i < headers.Count; i++)
        {
            mapping[headers[i] ?? string.Empty] = string.IsNullOrEmpty(fields[i]) ? null : fields[i];
        }

        return mapping;
    }

    private static ImportUpload None(string why) => new(string.Empty, [], null, false, new AskedWrongly("file", why));
}
