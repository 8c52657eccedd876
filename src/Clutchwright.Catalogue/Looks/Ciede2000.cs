namespace Clutchwright.Catalogue.Looks;

/// <summary>The CIEDE2000 colour difference with all weights 1: about 1 is the least difference seen side by side.</summary>
/// <remarks>
/// Symmetric, and 0 only between equal colours; it is no metric (the triangle inequality fails), and it was fitted to small differences:
/// above about 10 it orders colours but no longer counts steps. Source: docs/references.md [Sharma2005], whose way with hues is followed.
/// </remarks>
internal static class Ciede2000
{
    private const double TwentyFiveToSeven = 6103515625.0;
    private const double Degree = Math.PI / 180.0;

    public static double Between(CielabColour one, CielabColour other)
    {
        var meanChroma = (Math.Sqrt((one.A * one.A) + (one.B * one.B)) + Math.Sqrt((other.A * other.A) + (other.B * other.B))) / 2.0;
        var stretch = 1.5 - (0.5 * ChromaShare(meanChroma));
        var (a1, a2) = (one.A * stretch, other.A * stretch);
        var (c1, c2) = (Math.Sqrt((a1 * a1) + (one.B * one.B)), Math.Sqrt((a2 * a2) + (other.B * other.B)));
        var (h1, h2) = (Hue(a1, one.B), Hue(a2, other.B));

        // Of a grey the hue says nothing: the difference is 0 and the mean is the other's.
        var isGrey = c1 * c2 == 0.0;
        var apart = isGrey ? 0.0 : h2 - h1;
        var turn = apart > Math.PI ? apart - Math.Tau : apart < -Math.PI ? apart + Math.Tau : apart;
        var mean = isGrey ? h1 + h2
            : Math.Abs(apart) <= Math.PI ? (h1 + h2) / 2.0
            : h1 + h2 < Math.Tau ? (h1 + h2 + Math.Tau) / 2.0
            : (h1 + h2 - Math.Tau) / 2.0;

        var (lightness, chroma) = ((one.L + other.L) / 2.0, (c1 + c2) / 2.0);
        var t = 1.0
            - (0.17 * Math.Cos(mean - (30.0 * Degree)))
            + (0.24 * Math.Cos(2.0 * mean))
            + (0.32 * Math.Cos((3.0 * mean) + (6.0 * Degree)))
            - (0.20 * Math.Cos((4.0 * mean) - (63.0 * Degree)));
        var fromMiddle = (lightness - 50.0) * (lightness - 50.0);
        var inBlue = ((mean / Degree) - 275.0) / 25.0;
        var rotation = -2.0 * ChromaShare(chroma) * Math.Sin(60.0 * Degree * Math.Exp(-inBlue * inBlue));

        var l = (other.L - one.L) / (1.0 + (0.015 * fromMiddle / Math.Sqrt(20.0 + fromMiddle)));
        var c = (c2 - c1) / (1.0 + (0.045 * chroma));
        var h = 2.0 * Math.Sqrt(c1 * c2) * Math.Sin(turn / 2.0) / (1.0 + (0.015 * chroma * t));
        return Math.Sqrt(Math.Max(0.0, (l * l) + (c * c) + (h * h) + (rotation * c * h)));
    }

    // Near 0 for greys, near 1 for strong colours.
    private static double ChromaShare(double chroma)
    {
        var cube = chroma * chroma * chroma;
        var seventh = cube * cube * chroma;
        return Math.Sqrt(seventh / (seventh + TwentyFiveToSeven));
    }

    private static double Hue(double a, double b)
    {
        var angle = Math.Atan2(b, a);
        return angle < 0.0 ? angle + Math.Tau : angle;
    }
}
