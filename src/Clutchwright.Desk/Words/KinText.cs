using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Words;

/// <summary>Puts coefficients of kinship and inbreeding into words, in the reader's culture.</summary>
public static class KinText
{
    /// <summary>The largest denominator that still says something to a reader.</summary>
    public const int LargestDenominator = 1024;

    /// <summary>A percentage of two decimals: <c>12.5%</c>, <c>0.39%</c>, <c>&lt;0.01%</c>; what is not nothing never reads as 0 %.</summary>
    public static string Percent(double coefficient) => coefficient switch
    {
        0.0 => "0%",
        < 0.0001 => $"<{0.01:0.00}%",
        _ => (coefficient * 100.0).ToString("0.##") + "%",
    };

    /// <summary>The percentage, with the fraction where it is a telling one: <c>18.75% (3/16)</c>.</summary>
    public static string PercentAndFraction(double coefficient, Fraction? exact) =>
        exact is { IsZero: false, IsOne: false } fraction && fraction.Denominator <= LargestDenominator
            ? $"{Percent(coefficient)} ({fraction})"
            : Percent(coefficient);
}
