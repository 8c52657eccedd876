using System.Globalization;

namespace Clutchwright.Catalogue.Looks;

/// <summary>A colour in CIE L*a*b* (D65), where equal distances look about equally far.</summary>
/// <remarks>Source: CIE 15; the sRGB transfer function and matrix of IEC 61966-2-1.</remarks>
internal readonly record struct CielabColour(double L, double A, double B)
{
    public static CielabColour FromSrgb(string hex)
    {
        var (r, g, b) = (Channel(hex, 1), Channel(hex, 3), Channel(hex, 5));
        var x = Curve(((0.4124 * r) + (0.3576 * g) + (0.1805 * b)) / 0.95047);
        var y = Curve((0.2126 * r) + (0.7152 * g) + (0.0722 * b));
        var z = Curve(((0.0193 * r) + (0.1192 * g) + (0.9505 * b)) / 1.08883);
        return new((116.0 * y) - 16.0, 500.0 * (x - y), 200.0 * (y - z));
    }

    public double DistanceTo(CielabColour other) =>
        Math.Sqrt(((L - other.L) * (L - other.L)) + ((A - other.A) * (A - other.A)) + ((B - other.B) * (B - other.B)));

    /// <summary>The colour a share of the way to another.</summary>
    public CielabColour Towards(CielabColour other, double share) =>
        new(L + ((other.L - L) * share), A + ((other.A - A) * share), B + ((other.B - B) * share));

    private static double Channel(string hex, int start)
    {
        var value = int.Parse(hex.AsSpan(start, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }

    private static double Curve(double t) =>
        t > 216.0 / 24389.0 ? Math.Cbrt(t) : ((24389.0 / 27.0 * t) + 16.0) / 116.0;
}
