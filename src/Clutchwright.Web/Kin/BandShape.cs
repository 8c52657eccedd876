using System.Globalization;
using Clutchwright.Desk.Charts;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Web.Kin;

/// <summary>The filled part of a band of a symbol as the path of an SVG.</summary>
internal static class BandShape
{
    /// <summary>The outline of the part; see <see cref="BandOutline.Of"/>.</summary>
    public static string Of(Sex? sex, double x, double y, double half, double top, double bottom, double share) =>
        "M" + string.Join('L', BandOutline.Of(sex, x, y, half, top, bottom, share)
            .Select(p => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(p.X, 2):0.##} {Math.Round(p.Y, 2):0.##}"))) + "Z";
}
