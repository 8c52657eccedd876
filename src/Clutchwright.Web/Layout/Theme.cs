using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Layout;

/// <summary>Light, dark, or as the system has it: kept in a cookie, so that the page comes right from the start.</summary>
internal static class Theme
{
    public const string CookieName = "clutchwright-theme";

    /// <summary>Gets the themes with their words; the first is taken where none was chosen.</summary>
    public static IReadOnlyList<(string Value, string Words)> All { get; } =
        [("system", "As the system"), ("light", "Light"), ("dark", "Dark")];

    /// <summary>The theme chosen in this browser.</summary>
    public static string Chosen(HttpContext? context) => Known(context?.Request.Cookies[CookieName]);

    /// <summary>A theme's value, whatever was sent.</summary>
    public static string Known(string? value) => All.Any(t => t.Value == value) ? value! : All[0].Value;
}
