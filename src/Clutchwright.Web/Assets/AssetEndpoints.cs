using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Assets;

/// <summary>Hands out what lies on the shelf.</summary>
internal static class AssetEndpoints
{
    public static void MapAssets(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet("/assets/{digest}/{**name}", (string digest, string name, AssetShelf shelf, HttpContext context) =>
        {
            if (shelf.Find(name) is not { } asset)
            {
                return Results.NotFound();
            }

            // An address from before an update still answers, but is not kept.
            context.Response.Headers.CacheControl = string.Equals(digest, shelf.Digest, StringComparison.Ordinal)
                ? "public, max-age=31536000, immutable"
                : "no-cache";
            context.Response.Headers.Vary = "Accept-Encoding";
            if (asset.Brotli is { } brotli && AcceptsBrotli(context.Request))
            {
                context.Response.Headers.ContentEncoding = "br";
                return Results.Bytes(brotli, asset.ContentType);
            }

            return Results.Bytes(asset.Bytes, asset.ContentType);
        });

    private static bool AcceptsBrotli(HttpRequest request) =>
        request.GetTypedHeaders().AcceptEncoding.Any(e => e.Value == "br" && e.Quality is null or > 0);
}
