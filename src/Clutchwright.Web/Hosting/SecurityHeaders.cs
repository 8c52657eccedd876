using Microsoft.AspNetCore.Builder;

namespace Clutchwright.Web.Hosting;

/// <summary>Tells the browser to take nothing from anywhere else.</summary>
internal static class SecurityHeaders
{
    public const string ContentSecurityPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public static void UseSecurityHeaders(this IApplicationBuilder app) =>
        app.Use((context, next) =>
        {
            var headers = context.Response.Headers;
            headers.ContentSecurityPolicy = ContentSecurityPolicy;
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "same-origin";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=()";

            // Pages show the book as it is now, unless something says otherwise for itself.
            context.Response.OnStarting(() =>
            {
                if (headers.CacheControl.Count == 0)
                {
                    headers.CacheControl = "no-cache";
                }

                return Task.CompletedTask;
            });
            return next(context);
        });
}
