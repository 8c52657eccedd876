using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Clutchwright.Browser;

/// <summary>The judge of accessibility, run inside the page with every rule it has.</summary>
/// <remarks>It hands back what is wrong and nothing else: the list of all that is right is most of its work on a long page.</remarks>
internal static class Axe
{
    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    /// <summary>What is wrong with the page as it now stands: for each broken rule its id, what would be right, and the first places.</summary>
    public static async Task<string[]> ViolationsAsync(IPage page)
    {
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window"))
        {
            await page.EvaluateAsync(Script);
        }

        return await page.EvaluateAsync<string[]>(
            """
            async () => (await axe.run(document, { resultTypes: ['violations'] })).violations
              .map(v => `${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map(n => n.html).join(' | ')}`)
            """);
    }
}
