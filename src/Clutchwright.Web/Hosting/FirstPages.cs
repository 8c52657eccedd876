using Clutchwright.Desk;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Clutches;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Web.Hosting;

/// <summary>Asks the app for its first pages before a person does.</summary>
/// <remarks>What takes time on a first page is done once in the life of the program: its code is compiled, the stock is read, what the animals
/// may carry is reckoned.</remarks>
public static class FirstPages
{
    /// <summary>Asks for them, one after another. That one does not come is left for the person who opens it to see.</summary>
    /// <param name="app">The app, started.</param>
    /// <param name="cancel">Stops the asking.</param>
    public static async Task AskForFirstPagesAsync(this WebApplication app, CancellationToken cancel)
    {
        try
        {
            using var client = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
            foreach (var path in new[] { "/", "/stock" })
            {
                await AskAsync(client, path, cancel);
            }

            // Then what is kept of one animal: that of the clutch that is likely looked at next, if there is one.
            var clutch = await app.Services.GetRequiredService<ListClutches>().OpenAsync(cancel) is [var open, ..] ? open : null;
            var tag = clutch?.Dam ?? ((await app.Services.GetRequiredService<ListAnimals>().RunAsync(new(), cancel)).Animals is [var first, ..] ? first.Tag : null);
            foreach (var path in tag is null ? [] : new[] { Links.Animal(tag), Links.Labels([tag]) }.Concat(clutch is null ? [] : [Links.Clutch(clutch.Tag)]))
            {
                await AskAsync(client, path, cancel);
            }
        }
        catch (Exception unanswered) when (unanswered is HttpRequestException or OperationCanceledException or UriFormatException or DeskClosedException)
        {
            // The app says itself what is wrong with it.
        }
    }

    private static async Task AskAsync(HttpClient client, string path, CancellationToken cancel)
    {
        using var page = await client.GetAsync(new Uri(path, UriKind.Relative), cancel);
    }
}
