namespace Clutchwright.Sheets.Papers;

/// <summary>The size of a page in millimetres, as it is held. Compared by both numbers; the default is no paper.</summary>
/// <param name="WidthMm">From left to right.</param>
/// <param name="HeightMm">From top to bottom.</param>
public readonly record struct PaperSize(double WidthMm, double HeightMm)
{
    /// <summary>Points of a PDF in a millimetre.</summary>
    public const double PointsPerMm = 72.0 / 25.4;

    /// <summary>Gets A4 of ISO 216, 210 x 297 mm.</summary>
    public static PaperSize A4 => new(210, 297);

    /// <summary>Gets US Letter, 8.5 x 11 in.</summary>
    public static PaperSize Letter => new(215.9, 279.4);

    /// <summary>The same paper turned.</summary>
    public PaperSize Turned() => new(HeightMm, WidthMm);
}
