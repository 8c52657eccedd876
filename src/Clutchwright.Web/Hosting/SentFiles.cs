using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Hosting;

/// <summary>Tells the page that a file is on its way: a form that is answered by a file leaves the page as it is, and would wait on.</summary>
internal static class SentFiles
{
    /// <summary>The cookie that the script sets when it sends a form, and that goes with the answer.</summary>
    public const string Waiting = "clutchwright-waiting";

    public static void UseSentFiles(this WebApplication app) => app.Use((context, next) =>
    {
        if (HttpMethods.IsPost(context.Request.Method) && context.Request.Cookies.ContainsKey(Waiting))
        {
            context.Response.OnStarting(() =>
            {
                if (context.Response.Headers.ContentDisposition.Count > 0)
                {
                    context.Response.Cookies.Delete(Waiting, new() { Path = "/", SameSite = SameSiteMode.Strict });
                }

                return Task.CompletedTask;
            });
        }

        return next(context);
    });
}
