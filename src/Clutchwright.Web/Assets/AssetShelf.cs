using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace Clutchwright.Web.Assets;

/// <summary>A file that pages ask for.</summary>
/// <param name="Bytes">Its content.</param>
/// <param name="Brotli">The same, compressed; <c>null</c> where that gains nothing.</param>
/// <param name="ContentType">Its media type.</param>
internal sealed record Asset(byte[] Bytes, byte[]? Brotli, string ContentType);

/// <summary>The fonts, styles and scripts of the pages, read from the assembly once.</summary>
/// <remarks>Every address holds a digest of them all, so that browsers may keep them for good and still never show an old one.</remarks>
internal sealed class AssetShelf
{
    /// <summary>All style sheets in one.</summary>
    public const string StyleName = "clutchwright.css";

    private const string AssetPrefix = "assets/";
    private const string SharedStylePrefix = "assets/styles/";
    private const string ComponentStylePrefix = "styles/";
    private readonly Dictionary<string, Asset> _assets = new(StringComparer.Ordinal);

    public AssetShelf()
    {
        var assembly = typeof(AssetShelf).Assembly;
        var names = assembly.GetManifestResourceNames().Order(StringComparer.Ordinal).ToList();
        var style = new StringBuilder();
        foreach (var name in names.Where(n => n.StartsWith(SharedStylePrefix, StringComparison.Ordinal))
            .Concat(names.Where(n => n.StartsWith(ComponentStylePrefix, StringComparison.Ordinal))))
        {
            style.Append(Encoding.UTF8.GetString(Read(assembly, name)).TrimStart('\uFEFF')).Append('\n');
        }

        Add(StyleName, Encoding.UTF8.GetBytes(style.ToString()));
        foreach (var name in names.Where(n => n.StartsWith(AssetPrefix, StringComparison.Ordinal)
            && !n.StartsWith(SharedStylePrefix, StringComparison.Ordinal)))
        {
            Add(name[AssetPrefix.Length..], Read(assembly, name));
        }

        using var digest = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var (name, asset) in _assets.OrderBy(a => a.Key, StringComparer.Ordinal))
        {
            digest.AppendData(Encoding.UTF8.GetBytes(name));
            digest.AppendData(asset.Bytes);
        }

        Digest = Convert.ToHexStringLower(digest.GetHashAndReset())[..12];
    }

    /// <summary>Gets the digest of everything on the shelf.</summary>
    public string Digest { get; }

    /// <summary>The address of an asset.</summary>
    public string UrlOf(string name) => $"/assets/{Digest}/{name}";

    /// <summary>The asset of a name, or <c>null</c>.</summary>
    public Asset? Find(string name) => _assets.GetValueOrDefault(name);

    private static byte[] Read(Assembly assembly, string name)
    {
        using var stream = assembly.GetManifestResourceStream(name)!;
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }

    private static byte[] Compress(byte[] bytes)
    {
        using var target = new MemoryStream();
        using (var brotli = new BrotliStream(target, CompressionLevel.Optimal))
        {
            brotli.Write(bytes);
        }

        return target.ToArray();
    }

    private void Add(string name, byte[] bytes)
    {
        var contentType = Path.GetExtension(name) switch
        {
            ".css" => "text/css; charset=utf-8",
            ".js" => "text/javascript; charset=utf-8",
            ".svg" => "image/svg+xml",
            ".png" => "image/png",
            ".woff2" => "font/woff2",
            ".webmanifest" => "application/manifest+json",
            _ => "text/plain; charset=utf-8",
        };
        var compressed = contentType is "font/woff2" or "image/png" ? null : Compress(bytes);
        _assets[name] = new(bytes, compressed, contentType);
    }
}
