using Microsoft.Playwright;
using Xunit;

namespace Clutchwright.Browser;

/// <summary>One browser page on one room, and what it did that it should not.</summary>
public sealed class Visit : IAsyncDisposable
{
    private readonly IBrowserContext _context;
    private readonly List<string> _foreign = [];
    private readonly List<string> _errors = [];

    private Visit(IBrowserContext context, IPage page)
    {
        _context = context;
        Page = page;
    }

    public IPage Page { get; }

    public static async Task<Visit> OpenAsync(IBrowserContext context, string url)
    {
        var visit = new Visit(context, await context.NewPageAsync());
        visit.Page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(url, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                visit._foreign.Add(request.Url);
            }
        };

        // What the policy of the page forbids is told on the console too.
        visit.Page.Console += (_, message) =>
        {
            if (message.Type == "error" && !message.Text.Contains("404", StringComparison.Ordinal))
            {
                visit._errors.Add(message.Text);
            }
        };
        visit.Page.PageError += (_, error) => visit._errors.Add(error);
        return visit;
    }

    /// <summary>Goes to an address and waits for the fonts.</summary>
    public async Task GoAsync(string path)
    {
        await Page.GotoAsync(path);
        await Page.EvaluateAsync("() => document.fonts.ready.then(() => true)");
    }

    /// <summary>Shows the same page in another light or on another screen.</summary>
    public async Task ShowAsync(ColorScheme scheme, int width)
    {
        await Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });
        await Page.SetViewportSizeAsync(width, width < 600 ? 844 : 960);
    }

    /// <summary>Begins anew: what went wrong before is another page's.</summary>
    public void Forget()
    {
        _foreign.Clear();
        _errors.Clear();
    }

    /// <summary>Nothing was fetched from elsewhere, no script failed, and the policy forbade nothing.</summary>
    public void AssertClean()
    {
        Assert.Empty(_foreign);
        Assert.Empty(_errors);
    }

    public async ValueTask DisposeAsync() => await _context.DisposeAsync();
}
