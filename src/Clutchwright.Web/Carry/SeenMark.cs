using Clutchwright.Desk.Carry;
using Clutchwright.Web.Deeds;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Carry;

/// <summary>Up to where the keeper has looked through the beliefs, in this browser: the mark of a deed in a cookie.</summary>
/// <remarks>It moves on only when the keeper says so, so that nothing is lost by a page opened in passing.</remarks>
internal static class SeenMark
{
    public const string CookieName = "clutchwright-seen";
    private const int LongestMark = 64;

    /// <summary>What is new for this browser. In one that was never here nothing is, and from here on it is kept in mind.</summary>
    public static async Task<CarryNews> NewsAsync(ShowCarryNews showNews, HttpContext context)
    {
        var news = await showNews.RunAsync(context.Request.Cookies[CookieName], context.RequestAborted);
        if (news.Since is null && news.Mark.Length > 0 && !context.Response.HasStarted)
        {
            Keep(context, news.Mark);
        }

        return news;
    }

    public static void MapSeen(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapPost("/stock/seen", ([FromForm] string? mark, [FromForm] string? back, HttpContext context) =>
        {
            if (mark is { Length: > 0 and <= LongestMark })
            {
                Keep(context, mark);
            }

            return Results.LocalRedirect(DeedEndpoints.Local(back));
        });

    private static void Keep(HttpContext context, string mark) =>
        context.Response.Cookies.Append(CookieName, mark, new CookieOptions
        {
            HttpOnly = true,
            IsEssential = true,
            MaxAge = TimeSpan.FromDays(400),
            SameSite = SameSiteMode.Strict,
        });
}
