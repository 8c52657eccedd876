using System.Globalization;
using System.IO.Compression;
using Clutchwright.Web.Layout;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Localization;
using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Logging;

namespace Clutchwright.Web.Hosting;

/// <summary>What stands around the pages: limits, compression, form protection, headers, the reader's culture.</summary>
internal static class HostingSetup
{
    /// <summary>The largest body the app takes: a stock file, and again as text while its mapping is confirmed.</summary>
    public const int LargestBodyBytes = 32 * 1024 * 1024;

    public static void AddHosting(this IServiceCollection services, string dataFolder)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.AddHttpContextAccessor();
        services.AddResponseCompression(o => o.EnableForHttps = true);
        services.Configure<BrotliCompressionProviderOptions>(o => o.Level = CompressionLevel.Fastest);
        services.Configure<GzipCompressionProviderOptions>(o => o.Level = CompressionLevel.Fastest);
        services.Configure<KestrelServerOptions>(o =>
        {
            o.AddServerHeader = false;
            o.Limits.MaxRequestBodySize = LargestBodyBytes;
        });
        services.Configure<FormOptions>(o => o.ValueLengthLimit = LargestBodyBytes);

        // Without accounts the address is the lock: a page elsewhere must not reach the app under a name of its own.
        services.AddHostFiltering(o => o.AllowedHosts = ["localhost", "127.0.0.1", "[::1]"]);
        services.AddAntiforgery(o =>
        {
            o.Cookie.Name = "clutchwright-form";
            o.Cookie.SameSite = SameSiteMode.Strict;
        });

        // Keys beside the book: a form that was open over a restart can still be sent.
        services.AddDataProtection()
            .SetApplicationName("Clutchwright")
            .PersistKeysToFileSystem(Directory.CreateDirectory(Path.Combine(dataFolder, "keys")));
        services.Configure<RequestLocalizationOptions>(o =>
        {
            o.DefaultRequestCulture = new RequestCulture("en");
            o.SupportedCultures = [.. CultureInfo.GetCultures(CultureTypes.SpecificCultures | CultureTypes.NeutralCultures)];
            o.SupportedUICultures = [CultureInfo.GetCultureInfo("en")];
            o.RequestCultureProviders = [new AcceptLanguageHeaderRequestCultureProvider()];
        });
        services.AddHealthChecks().AddCheck<BookHealth>("book");
        services.AddLogging(l => l
            .AddFilter("Microsoft.AspNetCore", LogLevel.Warning)
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error));
    }

    public static void UseHosting(this WebApplication app)
    {
        app.UseExceptionHandler(ProblemPage.Path, createScopeForErrors: true);
        app.UseHostFiltering();
        app.UseResponseCompression();
        app.UseSecurityHeaders();
        app.UseSentFiles();
        app.UseRequestLocalization();
        app.UseStatusCodePagesWithReExecute(StatusPage.Path + "/{0}", createScopeForStatusCodePages: true);

        // The page that tells of a failure only shows something: the form that failed is not sent to it again.
        app.Use((context, next) =>
        {
            if (context.Features.Get<IExceptionHandlerFeature>() is not null || context.Features.Get<IStatusCodeReExecuteFeature>() is not null)
            {
                context.Request.Method = HttpMethods.Get;
            }

            return next(context);
        });
        app.UseRouting();
        app.UseAntiforgery();

        // A form that is not ours goes no further, whichever endpoint it was sent to.
        app.Use((context, next) =>
        {
            if (context.Features.Get<IAntiforgeryValidationFeature>() is { IsValid: false }
                && context.Features.Get<IStatusCodeReExecuteFeature>() is null)
            {
                context.Response.StatusCode = StatusCodes.Status400BadRequest;
                return Task.CompletedTask;
            }

            return next(context);
        });
    }
}
