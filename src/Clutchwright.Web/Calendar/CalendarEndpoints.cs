using System.Net;
using System.Text;
using Clutchwright.Desk.Calendar;
using Clutchwright.Web.Deeds;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Calendar;

/// <summary>The calendar for other programs. On this machine its plain address answers; elsewhere only the secret one does, since a calendar program
/// cannot log in.</summary>
internal static class CalendarEndpoints
{
    public const string PlainPath = "/calendar.ics";

    public static void MapCalendar(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapGet(PlainPath, async (HttpContext context, CalendarFeed feed, CancellationToken cancel) =>
            IsHere(context) ? await FileAsync(context, feed, cancel) : Results.NotFound());
        endpoints.MapGet("/calendar/{token}.ics", async (string token, HttpContext context, CalendarFeed feed, CancellationToken cancel) =>
            await feed.IsOpenToAsync(token, cancel) ? await FileAsync(context, feed, cancel) : Results.NotFound());
        endpoints.MapPost("/deeds/calendar-feed", async (CalendarFeed feed, CancellationToken cancel) =>
            Back((await feed.RenewAsync(Keeper.Name, cancel)).Id));
        endpoints.MapPost("/deeds/calendar-feed-close", async (CalendarFeed feed, CancellationToken cancel) =>
            Back((await feed.CloseAsync(Keeper.Name, cancel)).Id));
    }

    /// <summary>The secret address of a token.</summary>
    public static string PathOf(string token) => $"/calendar/{token}.ics";

    // Behind a proxy the connection is of this machine, but the name asked for is not.
    private static bool IsHere(HttpContext context) =>
        context.Connection.RemoteIpAddress is { } from && IPAddress.IsLoopback(from)
        && (context.Request.Host.Host is "localhost" or "127.0.0.1" or "[::1]" or "::1");

    private static IResult Back(long deed) => Results.LocalRedirect(Links.With("/calendar", ("deed", Links.Number(deed))) + "#feed");

    private static async Task<IResult> FileAsync(HttpContext context, CalendarFeed feed, CancellationToken cancel)
    {
        var answer = await feed.RunAsync(cancel);
        if (answer.Value is not { } file)
        {
            return Results.Problem(answer.Problems[0].Text, statusCode: StatusCodes.Status503ServiceUnavailable);
        }

        context.Response.Headers.CacheControl = "no-store";
        return Results.File(Encoding.UTF8.GetBytes(file), CalendarFile.MediaType, "clutchwright.ics");
    }
}
