using System.Globalization;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>Percentages as the trade writes them: 66 and 67 mean two thirds, 33 one third, all others themselves.</summary>
public static class Percentages
{
    /// <summary>The exact probability a written number means; <c>null</c> if it is not more than 0 and at most 100.</summary>
    /// <param name="digits">Digits with at most one point, without the sign.</param>
    public static Probability? Read(string digits)
    {
        if (digits is "66" or "67" or "66.6" or "66.7" or "66.66" or "66.67")
        {
            return Probability.Ratio(2, 3);
        }

        if (digits is "33" or "33.3" or "33.33")
        {
            return Probability.Ratio(1, 3);
        }

        if (digits.Length > 12 || !decimal.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
        {
            return null;
        }

        var scale = 1L;
        while (number != decimal.Truncate(number))
        {
            number *= 10;
            scale *= 10;
        }

        var fraction = new Fraction((long)number, scale * 100);
        return fraction > Fraction.Zero && fraction <= Fraction.One ? Probability.From(fraction) : null;
    }

    /// <summary>Writes a chance that is neither 0 nor 1, never as 0 or 100, and never as a number that means another.</summary>
    public static string Write(Probability chance)
    {
        if (IsNear(chance, 2.0 / 3.0))
        {
            return "66";
        }

        if (IsNear(chance, 1.0 / 3.0))
        {
            return "33";
        }

        var percent = (decimal)chance.Value * 100m;
        for (var decimals = 0; decimals <= 6; decimals++)
        {
            var text = Math.Round(percent, decimals, MidpointRounding.AwayFromZero)
                .ToString("F" + decimals, CultureInfo.InvariantCulture);
            if (Read(text) is { IsCertain: false } meant && Math.Abs(meant.Value - chance.Value) <= 0.0051)
            {
                return text;
            }
        }

        return chance.Value < 0.5 ? "0.000001" : "99.999999";
    }

    private static bool IsNear(Probability chance, double value) => Math.Abs(chance.Value - value) <= 1e-9;
}
