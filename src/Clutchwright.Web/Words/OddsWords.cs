using System.Globalization;
using System.Numerics;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Web.Words;

/// <summary>Puts odds into words, in the reader's culture.</summary>
/// <remarks>What can happen is never written as 0%, and what is not certain never as 100%.</remarks>
internal static class OddsWords
{
    /// <summary>A ratio with a larger denominator is no longer read at a glance, unless it is one in so many.</summary>
    public const int LargestDenominator = 1024;

    private const long LargestOneIn = 1_000_000_000;
    private const string NoBreakSpace = "\u00A0";

    /// <summary>The percentage, with as many figures as tell something.</summary>
    public static string Percent(Probability chance)
    {
        if (chance.IsImpossible)
        {
            return "0%";
        }

        if (chance.IsCertain)
        {
            return "100%";
        }

        var percent = chance.Value * 100.0;
        return percent switch
        {
            < 0.01 => $"under {Number(0.01, "0.##")}%",
            < 1.0 => Number(percent, percent < 0.1 ? "0.###" : "0.##") + "%",
            <= 99.0 => Number(percent, "0.#") + "%",
            <= 99.94 => Number(percent, "0.#") + "%",
            <= 99.994 => Number(percent, "0.##") + "%",
            _ => $"over {Number(99.99, "0.##")}%",
        };
    }

    /// <summary>The exact ratio as <c>3 in 16</c>; <c>null</c> where it is not exact, not readable, never or always.</summary>
    public static string? Ratio(Probability chance)
    {
        if (chance.Exact is not { } exact || exact.IsZero || exact.IsOne)
        {
            return null;
        }

        var readable = exact.Denominator <= LargestDenominator || (exact.Numerator.IsOne && exact.Denominator <= LargestOneIn);
        return readable ? $"{Number(exact.Numerator)}{NoBreakSpace}in{NoBreakSpace}{Number(exact.Denominator)}" : null;
    }

    /// <summary>The ratio with the percentage behind it, or the percentage alone.</summary>
    public static string InLine(Probability chance) =>
        Ratio(chance) is { } ratio ? $"{ratio} ({Percent(chance)})" : Percent(chance);

    /// <summary>How many of a kind a clutch holds: where nine clutches in ten lie, and the mean.</summary>
    public static string Count(double mean, int low, int high)
    {
        var range = low == high ? Number(low, "0") : $"{Number(low, "0")} to {Number(high, "0")}";
        return $"{range}, mean {Mean(mean)}";
    }

    /// <summary>A mean number of eggs or young.</summary>
    public static string Mean(double mean) => mean switch
    {
        0.0 => "0",
        < 0.05 => $"under {Number(0.05, "0.##")}",
        _ => Number(mean, "0.#"),
    };

    /// <summary>A whole number with the culture's grouping.</summary>
    public static string Whole(long number) => Number(number, "N0");

    private static string Number(double number, string format) => number.ToString(format, CultureInfo.CurrentCulture);

    private static string Number(BigInteger number) => number.ToString("N0", CultureInfo.CurrentCulture);
}
