using Microsoft.AspNetCore.Builder;

namespace Clutchwright.Web.Hosting;

/// <summary>Asks the app for its first pages before a person does.</summary>
/// <remarks>What takes time on a first page is done once in the life of the program: its code is compiled, the stock is read, what the animals
/// may carry is reckoned.</remarks>
public static class FirstPages
{
    private static readonly string[] Paths = ["/", "/stock"];

    /// <summary>Asks for them, one after another. That one does not come is left for the person who opens it to see.</summary>
    /// <param name="app">The app, started.</param>
    /// <param name="cancel">Stops the asking.</param>
    public static async Task AskForFirstPagesAsync(this WebApplication app, CancellationToken cancel)
    {
        try
        {
            using var client = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
            foreach (var path in Paths)
            {
                using var page = await client.GetAsync(new Uri(path, UriKind.Relative), cancel);
            }
        }
        catch (Exception unanswered) when (unanswered is HttpRequestException or OperationCanceledException or UriFormatException)
        {
            // The app says itself what is wrong with it.
        }
    }
}
