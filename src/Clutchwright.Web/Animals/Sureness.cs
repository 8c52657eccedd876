using System.Globalization;

namespace Clutchwright.Web.Animals;

/// <summary>How sure someone is of a statement, as a form asks for it.</summary>
internal static class Sureness
{
    /// <summary>Gets what can be chosen: percent, with words.</summary>
    public static IReadOnlyList<(string Percent, string Words)> All { get; } =
        [("100", "sure"), ("95", "nearly sure"), ("80", "fairly sure"), ("60", "in doubt")];

    /// <summary>The share that a percentage is, above 0 and up to 1; <c>null</c> where it cannot be read.</summary>
    public static double? FromPercent(string? percent) =>
        double.TryParse(percent?.TrimEnd('%', ' ').Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            && number is > 0 and <= 100
                ? number / 100.0
                : null;

    /// <summary>A share in percent, as a form holds it.</summary>
    public static string Percent(double share) => (share * 100.0).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A confidence in words.</summary>
    public static string Words(double confidence) => confidence switch
    {
        >= 1.0 => "sure",
        _ => $"{(confidence * 100.0).ToString("0", CultureInfo.CurrentCulture)}% sure",
    };
}
