using System.Globalization;

namespace Clutchwright.Web.Animals;

/// <summary>How sure someone is of a statement, as a form asks for it.</summary>
internal static class Sureness
{
    /// <summary>Gets what can be chosen: percent, with words.</summary>
    public static IReadOnlyList<(string Percent, string Words)> All { get; } =
        [("100", "sure"), ("95", "nearly sure"), ("80", "fairly sure"), ("60", "in doubt")];

    /// <summary>The confidence in [0, 1]; what cannot be read counts as sure, which is what the form offers first.</summary>
    public static double FromPercent(string? percent) =>
        double.TryParse(percent, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && number is > 0 and <= 100
            ? number / 100.0
            : 1.0;

    /// <summary>A share in percent, as a form holds it.</summary>
    public static string Percent(double share) => (share * 100.0).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A confidence in words.</summary>
    public static string Words(double confidence) => confidence switch
    {
        >= 1.0 => "sure",
        _ => $"{(confidence * 100.0).ToString("0", CultureInfo.CurrentCulture)}% sure",
    };
}
