using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Desk.Crosses;

/// <summary>Understands what a keeper wants.</summary>
internal static class WantReader
{
    public static IReadOnlyList<(string Text, Want Want)> Read(
        OpenCatalogue catalogue, IReadOnlyList<string> texts, List<AskedWrongly> problems)
    {
        var wants = new List<(string Text, Want Want)>();
        for (var i = 0; i < texts.Count; i++)
        {
            var read = catalogue.Catalogue.Trade.ReadWant(texts[i]);
            if (read.IsRead)
            {
                wants.Add((texts[i].Trim(), read.Value));
            }
            else
            {
                problems.Add(ParentReader.Problem(texts.Count == 1 ? "want" : $"want {i + 1}", read.Problem));
            }
        }

        return wants;
    }
}
