using System.Globalization;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Web.Season;

/// <summary>The figures of a season in words.</summary>
internal static class SeasonText
{
    /// <summary>A figure of a goal with its unit.</summary>
    public static string Figure(SeasonFigureKind kind, double figure) => kind switch
    {
        SeasonFigureKind.Chance => OddsText.Percent(Probability.Rounded(Math.Clamp(figure, 0.0, 1.0))),
        SeasonFigureKind.Bits => $"{figure.ToString("0.00", CultureInfo.CurrentCulture)} bits",
        _ => OddsText.Mean(figure),
    };
}
