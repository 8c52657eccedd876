using Clutchwright.Desk.Photos;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Photos;

/// <summary>The pictures themselves. One address is one picture for ever.</summary>
internal static class PhotoEndpoints
{
    public static void MapPhotos(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapGet("/photos/{digest}.jpg", (AnimalPhotos photos, string digest, HttpContext context) => SendAsync(photos, digest, isSmall: false, context));
        endpoints.MapGet("/photos/{digest}/small.jpg", (AnimalPhotos photos, string digest, HttpContext context) => SendAsync(photos, digest, isSmall: true, context));
    }

    private static async Task<IResult> SendAsync(AnimalPhotos photos, string digest, bool isSmall, HttpContext context)
    {
        if (await photos.PictureAsync(digest, isSmall, context.RequestAborted) is not { } picture)
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        return Results.Bytes(picture, "image/jpeg");
    }
}
