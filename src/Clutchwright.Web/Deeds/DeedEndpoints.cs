using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Clutches;
using Clutchwright.Desk.Happenings;
using Clutchwright.Desk.Photos;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Words;
using Clutchwright.Web.Layout;
using Clutchwright.Web.Routes;
using Clutchwright.Web.Season;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.WebUtilities;

namespace Clutchwright.Web.Deeds;

/// <summary>Deeds of one press, and the file of the whole stock.</summary>
internal static class DeedEndpoints
{
    public static void MapDeeds(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapPost("/deeds/undo", async (UndoDeed undo, [FromForm] string id, [FromForm] string? back, CancellationToken cancel) =>
        {
            var done = await undo.RunAsync(Links.DeedsOf(id), Keeper.Name, cancel);
            return done.Value is { } deeds ? Back(back, deeds) : Refused(done.Problems, back);
        });
        endpoints.MapPost("/deeds/bin", async (BinAnimal bin, [FromForm] string tag, [FromForm] string? back, CancellationToken cancel) =>
            Done(await bin.RunAsync(tag, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/restore", async (RestoreAnimal restore, [FromForm] string tag, [FromForm] string? back, CancellationToken cancel) =>
            Done(await restore.RunAsync(tag, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/withdraw", async (WithdrawStatement withdraw, [FromForm] Guid id, [FromForm] string? back, CancellationToken cancel) =>
            Done(await withdraw.RunAsync(id, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/demo", async (LoadDemo demo, [FromForm] string? back, CancellationToken cancel) =>
        {
            var answer = await demo.RunAsync(Keeper.Name, cancel);
            return answer.Value is { } done ? Back(back, done.Deeds) : Refused(answer.Problems, back);
        });
        endpoints.MapPost("/deeds/happening-back", async (WriteHappening write, [FromForm] Guid id, [FromForm] string? back, CancellationToken cancel) =>
            Done(await write.WithdrawAsync(id, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/photo", async (
            AnimalPhotos photos, [FromForm] Guid id, [FromForm] Guid version, [FromForm] string? taken, [FromForm] string? caption, [FromForm] string? back, CancellationToken cancel) =>
            Done(await photos.DescribeAsync(id, version, taken, caption, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/photo-back", async (AnimalPhotos photos, [FromForm] Guid id, [FromForm] string? back, CancellationToken cancel) =>
            Done(await photos.WithdrawAsync(id, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/photo-restore", async (AnimalPhotos photos, [FromForm] Guid id, [FromForm] string? back, CancellationToken cancel) =>
            Done(await photos.RestoreAsync(id, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/clutch-bin", async (WriteClutch write, [FromForm] string tag, [FromForm] string? back, CancellationToken cancel) =>
            Done(await write.BinAsync(tag, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/clutch-restore", async (WriteClutch write, [FromForm] Guid id, [FromForm] string? back, CancellationToken cancel) =>
            Done(await write.RestoreAsync(id, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/season", async (
            KeepSeason keep, [FromForm] string draft, [FromForm] int year, [FromForm] string? from, [FromForm] string? back, CancellationToken cancel) =>
            Done(
                await keep.RunAsync(
                    year, Guid.TryParse(from, out var version) ? version : null, SeasonGoals.Write(SeasonForm.Read(QueryOf(draft))), Keeper.Name, cancel),
                back));
        endpoints.MapPost("/deeds/adopt", async (
            RouteAnswers answers, AdoptedRoutes routes, [FromForm] string question, [FromForm] int route, CancellationToken cancel) =>
        {
            var form = RouteForm.Read(QueryOf(question));
            var problems = new List<AskedWrongly>();
            var asked = form.ToQuestion(problems);
            if (problems.Count > 0)
            {
                return Refused(problems, question);
            }

            var answer = await answers.AskAsync(form, asked, cancel);
            return answer.Value?.Routes.FirstOrDefault(r => r.Number == route) is { } chosen
                ? Done(await routes.AdoptAsync(asked, chosen, Keeper.Name, cancel), "/season")
                : Refused(answer.Problems.Count > 0 ? answer.Problems : [new("route", "The stock has changed, and this route is not found any more. Ask for the routes again.")], question);
        });
        endpoints.MapPost("/deeds/route-goals", async (
            RouteAnswers answers, AdoptedRoutes routes, [FromForm] Guid id, [FromForm] int route, CancellationToken cancel) =>
        {
            if (await routes.QuestionAsync(id, cancel) is not { } asked)
            {
                return Refused([new("route", "This route is over, or there is none such in the book.")], "/route");
            }

            var answer = await answers.AskAsync(RouteForm.Of(id, asked), asked, cancel);
            return answer.Value is { } found
                ? Done(await routes.AskOfSeasonAsync(id, found, route, Keeper.Name, cancel), "/season")
                : Refused(answer.Problems, "/route");
        });
        endpoints.MapPost("/deeds/route-end", async (AdoptedRoutes routes, [FromForm] Guid id, [FromForm] string ending, CancellationToken cancel) =>
            Done(await routes.EndAsync(id, ending == "reached", Keeper.Name, cancel), "/route"));
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

    // A form that is sent on holds the address of the page that it was made on.
    private static QueryCollection QueryOf(string address) =>
        new(QueryHelpers.ParseQuery(address.IndexOf('?', StringComparison.Ordinal) is >= 0 and var at ? address[at..] : string.Empty));

    /// <summary>Goes back to where the deed was done from, or says why it was refused.</summary>
    public static IResult Done(Answer<DeedLine> answer, string? back) =>
        answer.Value is { } deed ? Back(back, deed.Id) : Refused(answer.Problems, back);

    private static IResult Done(Answer<WrittenClutch> answer, string? back) =>
        answer.Value is { } written ? Back(back, written.Deed.Id) : Refused(answer.Problems, back);

    private static IResult Back(string? back, params IReadOnlyList<long> deeds)
    {
        var path = Local(back);
        var query = path.IndexOf('?', StringComparison.Ordinal);
        var kept = query < 0
            ? []
            : path[(query + 1)..].Split('&').Where(p => !p.StartsWith("deed=", StringComparison.Ordinal) && !p.StartsWith("saved=", StringComparison.Ordinal));
        return Results.LocalRedirect($"{(query < 0 ? path : path[..query])}?{string.Join('&', [.. kept, $"deed={Links.Deeds(deeds)}"])}");
    }

    private static RazorComponentResult<RefusedDocument> Refused(IReadOnlyList<AskedWrongly> problems, string? back) =>
        new(new { Problems = problems, Back = Local(back) }) { StatusCode = StatusCodes.Status409Conflict };

    /// <summary>The place to go back to: only places within the app.</summary>
    public static string Local(string? back) =>
        back is ['/', not ('/' or '\\'), ..] or "/" ? back : "/";
}
