using System.Globalization;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Words;
using Clutchwright.Web.Layout;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Deeds;

/// <summary>Deeds of one press, and the file of the whole stock.</summary>
internal static class DeedEndpoints
{
    public static void MapDeeds(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapPost("/deeds/undo", async (UndoDeed undo, [FromForm] long id, [FromForm] string? back, CancellationToken cancel) =>
            Done(await undo.RunAsync(id, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/bin", async (BinAnimal bin, [FromForm] string tag, [FromForm] string? back, CancellationToken cancel) =>
            Done(await bin.RunAsync(tag, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/restore", async (RestoreAnimal restore, [FromForm] string tag, [FromForm] string? back, CancellationToken cancel) =>
            Done(await restore.RunAsync(tag, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/withdraw", async (WithdrawStatement withdraw, [FromForm] Guid id, [FromForm] string? back, CancellationToken cancel) =>
            Done(await withdraw.RunAsync(id, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/demo", async (LoadDemo demo, [FromForm] string? back, CancellationToken cancel) =>
        {
            var answer = await demo.RunAsync(Keeper.Name, cancel);
            return answer.Value is { } done ? Back(back, done.Deed) : Refused(answer.Problems, back);
        });
        endpoints.MapPost("/theme", ([FromForm] string? theme, [FromForm] string? back, HttpContext context) =>
        {
            context.Response.Cookies.Append(Theme.CookieName, Theme.Known(theme), new CookieOptions
            {
                HttpOnly = true,
                IsEssential = true,
                MaxAge = TimeSpan.FromDays(400),
                SameSite = SameSiteMode.Strict,
            });
            return Results.LocalRedirect(Local(back));
        });
        endpoints.MapGet("/stock/export.csv", async (ExportStock export, TimeProvider time, CancellationToken cancel) =>
            Results.File(
                await export.RunAsync(cancel),
                "text/csv; charset=utf-8",
                $"clutchwright-stock-{time.GetLocalNow():yyyy-MM-dd}.csv"));
    }

    private static IResult Done(Answer<DeedLine> answer, string? back) =>
        answer.Value is { } deed ? Back(back, deed.Id) : Refused(answer.Problems, back);

    private static IResult Back(string? back, long deed)
    {
        var path = Local(back);
        var query = path.IndexOf('?', StringComparison.Ordinal);
        var kept = query < 0
            ? []
            : path[(query + 1)..].Split('&').Where(p => !p.StartsWith("deed=", StringComparison.Ordinal) && !p.StartsWith("saved=", StringComparison.Ordinal));
        return Results.LocalRedirect($"{(query < 0 ? path : path[..query])}?{string.Join('&', [.. kept, string.Create(CultureInfo.InvariantCulture, $"deed={deed}")])}");
    }

    private static RazorComponentResult<RefusedDocument> Refused(IReadOnlyList<AskedWrongly> problems, string? back) =>
        new(new { Problems = problems, Back = Local(back) }) { StatusCode = StatusCodes.Status409Conflict };

    /// <summary>The place to go back to: only places within the app.</summary>
    public static string Local(string? back) =>
        back is ['/', not ('/' or '\\'), ..] or "/" ? back : "/";
}
