using Deque.AxeCore.Commons;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Playwright;

namespace Clutchwright.Browser;

/// <summary>The judge of accessibility, run inside the page with every rule it has.</summary>
/// <remarks>The room hands its script out, so that the browser keeps it, and it hands back what is wrong and nothing else: the list of all that
/// is right is most of its work on a long page.</remarks>
internal static class Axe
{
    private const string Path = "/axe.js";
    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    /// <summary>Puts the judge's script beside the pages of a room.</summary>
    public static void MapAxe(this WebApplication room) => room.MapGet(Path, (HttpContext context) =>
    {
        context.Response.Headers.CacheControl = "public, max-age=31536000, immutable";
        return Results.Text(Script, "text/javascript; charset=utf-8");
    });

    /// <summary>What is wrong with the page as it now stands: for each broken rule its id, what would be right, and the first places.</summary>
    public static Task<string[]> ViolationsAsync(IPage page) => page.EvaluateAsync<string[]>(
        """
        async path => {
          if (!('axe' in window)) {
            await new Promise((loaded, failed) => {
              const script = Object.assign(document.createElement('script'), { src: path, onload: loaded, onerror: failed });
              document.head.append(script);
            });
          }

          return (await axe.run(document, { resultTypes: ['violations'] })).violations
            .map(v => `${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map(n => n.html).join(' | ')}`);
        }
        """,
        Path);
}
