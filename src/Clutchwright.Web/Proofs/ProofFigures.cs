using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Segregations;

namespace Clutchwright.Web.Proofs;

/// <summary>How the figures of a proof are set on a page.</summary>
internal static class ProofFigures
{
    /// <summary>A p value.</summary>
    public static string P(double value) => value switch
    {
        0.0 => "0",
        < 0.0001 => "< 0.0001",
        _ => value.ToString("0.####"),
    };

    /// <summary>A p value with its error where it was drawn.</summary>
    public static string P(ExactChance exact) => exact.IsExact ? P(exact.Value) : $"{P(exact.Value)} ± {P(exact.StandardError)}";

    /// <summary>An interval.</summary>
    public static string Range(ShareInterval interval) => $"{interval.Low:0.###} to {interval.High:0.###}";

    /// <summary>A number of eggs, or never.</summary>
    public static string Eggs(int? eggs) => eggs is { } n ? n.ToString("N0") : "never";

    /// <summary>What something multiplies odds by.</summary>
    public static string Factor(double? factor) => factor switch
    {
        null or double.PositiveInfinity or 0.0 => "settles it",
        { } f when f is >= 0.001 and < 100_000.0 => $"× {f:0.###}",
        { } f when f >= 100_000.0 => "× more than 100,000",
        _ => "× less than 0.001",
    };

    /// <summary>A chance given as a double.</summary>
    public static string Percent(double chance) => OddsText.Percent(Probability.Rounded(chance));
}
