using Microsoft.Playwright;

namespace Clutchwright.Browser;

/// <summary>Looks for words that run together: the compiler of pages drops white space between the parts of a line where it stands alone.</summary>
internal static class WordSpaces
{
    /// <summary>Where two words of different parts of the page touch each other on one line.</summary>
    public static Task<string[]> MissingAsync(IPage page) => page.EvaluateAsync<string[]>(
        """
        () => {
          const found = new Set();
          const range = document.createRange();
          const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          const place = (node, at) => {
            range.setStart(node, at);
            range.setEnd(node, at + 1);
            return range.getClientRects()[0];
          };
          let before = null;
          while (walker.nextNode()) {
            const node = walker.currentNode;
            const text = node.data;
            const element = node.parentElement;
            if (!text.trim() || element.closest('svg, script, style, option, .unseen, [hidden]') || !element.checkVisibility()) {
              continue;
            }

            const first = place(node, text.search(/\S/));
            const last = place(node, text.trimEnd().length - 1);
            if (before && first && before.rect.bottom > first.top && before.rect.top < first.bottom && Math.abs(first.left - before.rect.right) < 1
                && /[\p{L}\p{N}.,;:%)]$/u.test(before.text) && /^[\p{L}\p{N}(·]/u.test(text.trimStart())) {
              found.add(`${before.text.slice(-20)}|${text.trim().slice(0, 20)}`);
            }

            before = last ? { text: text.trimEnd(), rect: last } : null;
          }

          return [...found];
        }
        """);
}
