using System.Globalization;
using System.IO.Compression;
using Clutchwright.Desk.Leaving;
using Clutchwright.Desk.Words;
using Clutchwright.Web.Backups;
using Clutchwright.Web.Deeds;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Leaving;

/// <summary>The whole book sent as a file, taken in again, and put in the place of what is there.</summary>
internal static class LeavingEndpoints
{
    /// <summary>The page on which it is looked at before it comes back.</summary>
    public const string Place = "/book/return";

    private const long LargestFile = 64L * 1024 * 1024 * 1024;

    public static void MapLeaving(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapPost("/book/leave", async (LeaveBook leave, LeavingFiles files, TimeProvider clock, HttpContext context, [FromForm] string? what, CancellationToken cancel) =>
            await SendAsync(leave, files, clock, context, what, cancel));
        endpoints.MapPost("/book/return/upload", async (UploadedBackups uploads, TimeProvider clock, IFormFile? file, [FromForm] string? photos, CancellationToken cancel) =>
            {
                if (file is not { Length: > 0 })
                {
                    return (IResult)Refused([new("file", "Choose the ZIP or JSON file of a whole book.")]);
                }

                await using var sent = file.OpenReadStream();
                var id = await uploads.TakeAsync(sent, clock.GetUtcNow(), cancel);
                return Results.LocalRedirect(Links.With(Place, ("upload", $"{id:N}"), ("called", Path.GetFileName(file.FileName)), ("photos", photos)));
            })
            .WithMetadata(new RequestSizeLimitAttribute(LargestFile))
            .WithFormOptions(multipartBodyLengthLimit: LargestFile);
        endpoints.MapPost(Place, async (
            ReturnBook come, UploadedBackups uploads, [FromForm] string? upload, [FromForm] string? called, [FromForm] string? photos, [FromForm] string mark, [FromForm] string? replace, CancellationToken cancel) =>
        {
            if (Source(uploads, upload, called, photos) is not { } file)
            {
                return (IResult)Refused([new("file", "That file is not there any more. Send it again.")]);
            }

            var answer = await come.RunAsync(file, mark, replace == "yes", Keeper.Name, cancel);
            if (answer.Value is not { } done)
            {
                return Refused(answer.Problems);
            }

            uploads.Forget(Guid.Parse(upload!, CultureInfo.InvariantCulture));
            return Results.LocalRedirect(Links.With(Place, ("done", "1"), ("before", done.Before is null ? null : Path.GetFileName(done.Before.File))));
        });
    }

    /// <summary>The file that was sent; <c>null</c>: it is gone.</summary>
    public static ReturningFile? Source(UploadedBackups uploads, string? upload, string? called, string? photos) =>
        Guid.TryParse(upload, out var id) && uploads.Find(id) is { } path ? new(path, string.IsNullOrWhiteSpace(called) ? "the file" : called, photos == "without") : null;

    private static async Task<IResult> SendAsync(LeaveBook leave, LeavingFiles files, TimeProvider clock, HttpContext context, string? what, CancellationToken cancel)
    {
        var (ending, name, type) = what switch
        {
            "json" => (".json", "clutchwright", "application/json"),
            "ped" => (".ped", "clutchwright-pedigree", "application/zip"),
            _ => (".zip", "clutchwright", "application/zip"),
        };
        var folder = files.NewFolder(clock.GetUtcNow());
        context.Response.OnCompleted(() =>
        {
            LeavingFiles.TakeAway(folder);
            return Task.CompletedTask;
        });
        var packed = Directory.CreateDirectory(Path.Combine(folder, "packed")).FullName;
        var left = await leave.RunAsync(Path.Combine(packed, $"{(ending == ".ped" ? "pedigree" : "book")}{ending}"), cancel);
        if (left.Value is not { } written)
        {
            return Refused(left.Problems);
        }

        // Four files that belong together are sent as one.
        var file = written.Files[0];
        if (ending == ".ped")
        {
            (file, ending) = (Path.Combine(folder, "pedigree.zip"), ".zip");
            await ZipFile.CreateFromDirectoryAsync(packed, file, cancel);
        }

        return Results.File(file, type, $"{name}-{clock.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}{ending}");
    }

    private static RazorComponentResult<RefusedDocument> Refused(IReadOnlyList<AskedWrongly> problems) =>
        new(new { Problems = problems, Back = BackupEndpoints.Place }) { StatusCode = StatusCodes.Status409Conflict };
}
