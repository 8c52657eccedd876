using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Words;

/// <summary>Puts chances into words, in the reader's culture: the one place where a fraction becomes text.</summary>
/// <remarks>What is possible never reads as 0 %, and what is not certain never as 100 %.</remarks>
public static class OddsText
{
    /// <summary>The largest denominator that still says something to a reader.</summary>
    public const int LargestDenominator = 4096;

    /// <summary>The ratio as the trade says it: <c>3 in 16</c>, <c>all</c>, <c>none</c>; <c>null</c> where the chance is not an exact
    /// ratio or its denominator passes <see cref="LargestDenominator"/>.</summary>
    public static string? Ratio(Probability chance) => chance switch
    {
        { IsImpossible: true } => "none",
        { IsCertain: true } => "all",
        { Exact: { } exact } when exact.Denominator <= LargestDenominator => $"{exact.Numerator:N0} in {exact.Denominator:N0}",
        _ => null,
    };

    /// <summary>A percentage with as many digits as help: <c>25%</c>, <c>18.8%</c>, <c>0.049%</c>, <c>99.97%</c>.</summary>
    public static string Percent(Probability chance)
    {
        if (chance.IsImpossible || chance.IsCertain)
        {
            return chance.IsCertain ? "100%" : "0%";
        }

        // The complement is taken before rounding to a double, so that 1 - 2^-80 is still told from 1.
        var (percent, missing) = (chance.Value * 100.0, chance.Complement.Value * 100.0);
        if (percent < 0.0001)
        {
            return $"<{0.0001:0.0000}%";
        }

        if (missing < 0.0001)
        {
            return $">{99.9999:0.0000}%";
        }

        var decimals = Math.Min(percent, missing) switch
        {
            < 0.001 => 5,
            < 0.01 => 4,
            < 0.1 => 3,
            < 0.5 => 2,
            < 1.0 when percent < 1.0 => 2,
            _ => 1,
        };
        return percent.ToString("0." + new string('#', decimals)) + "%";
    }

    /// <summary>Ratio and percentage: <c>3 in 16 (18.8%)</c>; the percentage alone where there is no telling ratio.</summary>
    public static string RatioAndPercent(Probability chance) =>
        chance.IsImpossible || chance.IsCertain || Ratio(chance) is not { } ratio
            ? Percent(chance)
            : $"{ratio} ({Percent(chance)})";

    /// <summary>A natural frequency: <c>25 of 100 eggs</c>, <c>about 3 of 1,000 eggs</c>.</summary>
    /// <param name="chance">The chance of one.</param>
    /// <param name="things">What is counted, in the plural.</param>
    /// <remarks>Counted of 100, or of so many more that one at least is wanted and one at least is not.</remarks>
    public static string Frequency(Probability chance, string things)
    {
        var rarer = Math.Min(chance.Value, chance.Complement.Value);
        var number = 100L;
        while (rarer * number < 1.0 && number < 1_000_000_000L && !chance.IsImpossible && !chance.IsCertain)
        {
            number *= 10;
        }

        if (chance.Exact is { } exact && (number % exact.Denominator).IsZero)
        {
            return $"{exact.Numerator * number / exact.Denominator:N0} of {number:N0} {things}";
        }

        var count = (long)Math.Round(chance.Value * number);
        return count switch
        {
            0 => $"fewer than 1 of {number:N0} {things}",
            _ when count == number => $"all but fewer than 1 of {number:N0} {things}",
            _ => $"about {count:N0} of {number:N0} {things}",
        };
    }

    /// <summary>The standard error of a sampled chance, in points of a percentage: <c>0.4%</c>.</summary>
    public static string StandardError(double error) => Percent(Probability.From(Math.Clamp(error, 0.0, 1.0)));

    /// <summary>A mean number: <c>4.5</c>, <c>0.03</c>.</summary>
    public static string Mean(double number) => number switch
    {
        0.0 => "0",
        < 0.001 => $"<{0.001:0.000}",
        < 0.095 => number.ToString("0.0##"),
        _ => number.ToString("0.#"),
    };
}
