using Clutchwright.Web.Backups;
using Clutchwright.Web.Deeds;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Importing;

/// <summary>Takes a set of photos in, to be looked at.</summary>
internal static class ImportEndpoints
{
    public const string Upload = "/stock/import/photos/upload";

    /// <summary>The largest set that is taken.</summary>
    private const long LargestSet = 4L * 1024 * 1024 * 1024;

    private const int MostName = 100;

    public static void MapImporting(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapPost(Upload, async (UploadedBackups uploads, TimeProvider clock, IFormFile? file, CancellationToken cancel) =>
            {
                if (file is not { Length: > 0 })
                {
                    return (IResult)new RazorComponentResult<RefusedDocument>(new { Problems = new Desk.Words.AskedWrongly[] { new("file", "Choose a ZIP file of pictures.") }, Back = ImportPhotosPage.Path })
                    {
                        StatusCode = StatusCodes.Status409Conflict,
                    };
                }

                await using var sent = file.OpenReadStream();
                var id = await uploads.TakeAsync(sent, clock.GetUtcNow(), cancel);
                var name = Path.GetFileName(file.FileName);
                return Results.LocalRedirect(Links.With(ImportPhotosPage.Path, ("upload", id.ToString("N")), ("name", name.Length > MostName ? name[..MostName] : name)));
            })
            .WithMetadata(new RequestSizeLimitAttribute(LargestSet))
            .WithFormOptions(multipartBodyLengthLimit: LargestSet);
}
