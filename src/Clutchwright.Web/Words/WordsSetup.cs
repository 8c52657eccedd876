using System.Text.Json.Serialization;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Web.Words;

/// <summary>Words for every page, and the completion of trade text as it is typed.</summary>
internal static class WordsSetup
{
    private const int LongestText = 400;

    public static void AddWords(this IServiceCollection services)
    {
        services.AddSingleton<DateWords>();
        services.ConfigureHttpJsonOptions(o => o.SerializerOptions.NumberHandling = JsonNumberHandling.Strict);
    }

    public static void MapCompletion(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet("/complete", (string? text, string? caret, CompleteText completeText) =>
        {
            text ??= string.Empty;
            if (text.Length > LongestText)
            {
                return Results.Json(Array.Empty<Completion>());
            }

            var at = int.TryParse(caret, out var given) ? Math.Clamp(given, 0, text.Length) : text.Length;
            return Results.Json(completeText.Run(text, at));
        });
}
