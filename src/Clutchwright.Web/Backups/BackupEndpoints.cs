using Clutchwright.Desk.Backups;
using Clutchwright.Desk.Words;
using Clutchwright.Web.Deeds;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Backups;

/// <summary>Backups made, sent, taken in and restored.</summary>
internal static class BackupEndpoints
{
    /// <summary>The page of the book.</summary>
    public const string Place = "/book";

    private const long LargestBackup = 64L * 1024 * 1024 * 1024;

    public static void MapBackups(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapPost("/book/backup", async (BackUp backUp, [FromForm] string? to, HttpContext context, CancellationToken cancel) =>
        {
            var answer = await backUp.RunAsync(null, cancel);
            return answer.Value is not { } made ? (IResult)Refused(answer.Problems)
                : to == "download" ? Sent(made.File)
                : Results.LocalRedirect($"{Place}?made={Uri.EscapeDataString(Path.GetFileName(made.File))}");
        });
        endpoints.MapPost("/book/download", (BackupSettings settings, [FromForm] string name) =>
            InFolder(settings, name) is { } file ? Sent(file) : (IResult)Refused([new("file", "That backup is not there any more.")]));
        endpoints.MapPost("/book/upload", async (UploadedBackups uploads, TimeProvider clock, IFormFile? file, CancellationToken cancel) =>
            {
                if (file is not { Length: > 0 })
                {
                    return (IResult)Refused([new("file", "Choose the file of a backup.")]);
                }

                await using var sent = file.OpenReadStream();
                return Results.LocalRedirect($"{Place}/restore?upload={await uploads.TakeAsync(sent, clock.GetUtcNow(), cancel):N}");
            })
            .WithMetadata(new RequestSizeLimitAttribute(LargestBackup))
            .WithFormOptions(multipartBodyLengthLimit: LargestBackup);
        endpoints.MapPost("/book/restore", async (
            RestoreStock restore, UploadedBackups uploads, BackupSettings settings, [FromForm] string? upload, [FromForm] string? name, [FromForm] string mark, CancellationToken cancel) =>
        {
            if (Source(uploads, settings, upload, name) is not { } file)
            {
                return (IResult)Refused([new("file", "That backup is not there any more. Send it again.")]);
            }

            var answer = await restore.RunAsync(file, mark, cancel);
            if (answer.Value is not { } done)
            {
                return Refused(answer.Problems);
            }

            if (Guid.TryParse(upload, out var id))
            {
                uploads.Forget(id);
            }

            return Results.LocalRedirect(done.Before is null ? $"{Place}?restored=" : $"{Place}?restored={Uri.EscapeDataString(Path.GetFileName(done.Before.File))}");
        });
    }

    /// <summary>The file that is to be restored: one that was sent, or one of the folder; <c>null</c>: it is not there.</summary>
    public static string? Source(UploadedBackups uploads, BackupSettings settings, string? upload, string? name) =>
        Guid.TryParse(upload, out var id) ? uploads.Find(id) : name is null ? null : InFolder(settings, name);

    // Only a name, never a path, so that no other file of the machine can be asked for.
    private static string? InFolder(BackupSettings settings, string name)
    {
        var file = Path.Combine(settings.Folder, Path.GetFileName(name));
        return Path.GetFileName(name) == name && name.EndsWith(".clutchwright", StringComparison.Ordinal) && File.Exists(file) ? file : null;
    }

    private static IResult Sent(string file) =>
        Results.File(file, "application/vnd.sqlite3", Path.GetFileName(file));

    private static RazorComponentResult<RefusedDocument> Refused(IReadOnlyList<AskedWrongly> problems) =>
        new(new { Problems = problems, Back = Place }) { StatusCode = StatusCodes.Status409Conflict };
}
