using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;

namespace Clutchwright.Web.Hosting;

/// <summary>Holds the app to addresses that only this machine can reach.</summary>
internal static class ListenAddresses
{
    /// <summary>Takes the addresses that were asked for, by whatever setting, and refuses any that is open.</summary>
    /// <exception cref="OpenAddressException">An address can be reached from other machines.</exception>
    public static void ListenOnLoopbackOnly(this WebApplicationBuilder builder)
    {
        var urls = Asked(builder.Configuration).ToList();
        foreach (var url in urls)
        {
            if (!IsLoopback(url))
            {
                throw new OpenAddressException(url);
            }
        }

        if (urls.Count == 0)
        {
            builder.WebHost.UseUrls(ClutchwrightWeb.DefaultUrl);
        }
    }

    /// <summary>Says whether only this machine can reach an address.</summary>
    public static bool IsLoopback(string url)
    {
        var host = BindingAddress.Parse(url).Host;
        return string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase)
            || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));
    }

    private static IEnumerable<string> Asked(ConfigurationManager configuration)
    {
        foreach (var url in Split(configuration["urls"]))
        {
            yield return url;
        }

        // A port alone means every address of the machine.
        foreach (var scheme in new[] { "http", "https" })
        {
            foreach (var port in Split(configuration[$"{scheme}_ports"]))
            {
                yield return $"{scheme}://*:{port}";
            }
        }

        foreach (var endpoint in configuration.GetSection("Kestrel:Endpoints").GetChildren())
        {
            if (endpoint["Url"] is { } url)
            {
                yield return url;
            }
        }
    }

    private static string[] Split(string? text) =>
        (text ?? string.Empty).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
