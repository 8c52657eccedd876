using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Sheets;

/// <summary>Which percentage a label gives for a chance: never more than is believed (docs/model/labels.md).</summary>
internal static class TradeFigure
{
    // What each of the trade's figures means exactly.
    private static readonly (int Figure, double Meaning)[] Steps = [(66, 2.0 / 3.0), (50, 0.5), (33, 1.0 / 3.0), (25, 0.25)];

    /// <summary>The figure in percent.</summary>
    /// <param name="chance">What is believed.</param>
    /// <returns>100 for what is certain and for nothing else; the highest of 66, 50, 33 and 25 that means no more than the chance; below that whole
    /// percents, rounded down; <c>null</c> below 1 %, which no label tells.</returns>
    public static int? Of(Probability chance)
    {
        if (chance.IsCertain)
        {
            return 100;
        }

        foreach (var (figure, meaning) in Steps)
        {
            if (chance.Value >= meaning - Probability.RoundingTolerance)
            {
                return figure;
            }
        }

        var whole = (int)Math.Floor((chance.Value * 100.0) + (100.0 * Probability.RoundingTolerance));
        return whole == 0 ? null : whole;
    }
}
