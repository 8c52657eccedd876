namespace Clutchwright.Catalogue.Looks;

/// <summary>A colour in CIE L*a*b* under D65.</summary>
/// <remarks>
/// Equal when all three numbers are; no order. <c>default</c> is black. White is the white of sRGB, so that every grey has a* and b* of 0.
/// Source: docs/references.md [CIE2004], [IEC1999].
/// </remarks>
/// <param name="L">Lightness, 0 to 100.</param>
/// <param name="A">From green (negative) to red.</param>
/// <param name="B">From blue (negative) to yellow.</param>
public readonly record struct CielabColour(double L, double A, double B)
{
    // Rows of the matrix of IEC 61966-2-1 add up to the white.
    private const double WhiteX = 0.4124 + 0.3576 + 0.1805;
    private const double WhiteZ = 0.0193 + 0.1192 + 0.9505;
    private const double Bend = 216.0 / 24389.0;
    private const double Slope = 24389.0 / 27.0;

    private static readonly double[,] Inverse = InverseOf(new[,]
    {
        { 0.4124, 0.3576, 0.1805 }, { 0.2126, 0.7152, 0.0722 }, { 0.0193, 0.1192, 0.9505 },
    });

    /// <summary>The colour of a screen in L*a*b*.</summary>
    public static CielabColour FromSrgb(SrgbColour colour)
    {
        var (r, g, b) = (Linear(colour.Red), Linear(colour.Green), Linear(colour.Blue));
        var x = Curve(((0.4124 * r) + (0.3576 * g) + (0.1805 * b)) / WhiteX);
        var y = Curve((0.2126 * r) + (0.7152 * g) + (0.0722 * b));
        var z = Curve(((0.0193 * r) + (0.1192 * g) + (0.9505 * b)) / WhiteZ);
        return new((116.0 * y) - 16.0, 500.0 * (x - y), 200.0 * (y - z));
    }

    /// <summary>The colour of a screen that comes nearest; <c>null</c> where no screen of sRGB can show it (some channel would lie
    /// more than half a step outside).</summary>
    public SrgbColour? ToSrgb()
    {
        var fy = (L + 16.0) / 116.0;
        var (x, y, z) = (WhiteX * Uncurve(fy + (A / 500.0)), Uncurve(fy), WhiteZ * Uncurve(fy - (B / 200.0)));
        return Channel(0, x, y, z) is { } r && Channel(1, x, y, z) is { } g && Channel(2, x, y, z) is { } b ? new(r, g, b) : null;
    }

    /// <summary>The straight distance in L*a*b*, that of CIE 1976.</summary>
    public double StraightDistanceTo(CielabColour other) =>
        Math.Sqrt(((L - other.L) * (L - other.L)) + ((A - other.A) * (A - other.A)) + ((B - other.B) * (B - other.B)));

    /// <summary>How different two colours look, by CIEDE2000.</summary>
    public double DifferenceFrom(CielabColour other) => Ciede2000.Between(this, other);

    /// <summary>The colour a share of the straight way to another.</summary>
    public CielabColour Towards(CielabColour other, double share) =>
        new(L + ((other.L - L) * share), A + ((other.A - A) * share), B + ((other.B - B) * share));

    private static double Linear(byte channel)
    {
        var value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }

    private static byte? Channel(int row, double x, double y, double z)
    {
        var linear = (Inverse[row, 0] * x) + (Inverse[row, 1] * y) + (Inverse[row, 2] * z);
        var value = linear <= 0.0031308 ? 12.92 * linear : (1.055 * Math.Pow(linear, 1.0 / 2.4)) - 0.055;
        return value * 255.0 is >= -0.5 and < 255.5 and var code ? (byte)Math.Round(Math.Max(code, 0.0)) : null;
    }

    private static double Curve(double t) => t > Bend ? Math.Cbrt(t) : ((Slope * t) + 16.0) / 116.0;

    private static double Uncurve(double f) => f * f * f is > Bend and var t ? t : ((116.0 * f) - 16.0) / Slope;

    // By cofactors.
    private static double[,] InverseOf(double[,] m)
    {
        var result = new double[3, 3];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                var (a, b, c, d) = ((i + 1) % 3, (i + 2) % 3, (j + 1) % 3, (j + 2) % 3);
                result[j, i] = (m[a, c] * m[b, d]) - (m[a, d] * m[b, c]);
            }
        }

        var determinant = (m[0, 0] * result[0, 0]) + (m[0, 1] * result[1, 0]) + (m[0, 2] * result[2, 0]);
        for (var i = 0; i < 9; i++)
        {
            result[i / 3, i % 3] /= determinant;
        }

        return result;
    }
}
