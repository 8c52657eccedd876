using Clutchwright.Catalogue.Looks;
using CsCheck;
using Xunit;

namespace Clutchwright.Catalogue.Tests.Looks;

public sealed class ColourTests
{
    private static readonly Gen<SrgbColour> AnySrgb = Gen.Select(Gen.Byte, Gen.Byte, Gen.Byte, (r, g, b) => new SrgbColour(r, g, b));

    private static readonly Gen<CielabColour> AnyLab = Gen.OneOf(
        Gen.Select(Gen.Double[0, 100], Gen.Double[-128, 128], Gen.Double[-128, 128], (l, a, b) => new CielabColour(l, a, b)),
        Gen.Select(Gen.Int[0, 100], Gen.Int[-3, 3], Gen.Int[-3, 3], (l, a, b) => new CielabColour(l, a, b)));

    // All pairs of table I of [Sharma2005] [recalled]: L*, a*, b* of both and the difference to four decimals.
    public static TheoryData<int, double[], double> PublishedPairs() => new()
    {
        { 1, [50, 2.6772, -79.7751, 50, 0, -82.7485], 2.0425 },
        { 2, [50, 3.1571, -77.2803, 50, 0, -82.7485], 2.8615 },
        { 3, [50, 2.8361, -74.0200, 50, 0, -82.7485], 3.4412 },
        { 4, [50, -1.3802, -84.2814, 50, 0, -82.7485], 1.0000 },
        { 5, [50, -1.1848, -84.8006, 50, 0, -82.7485], 1.0000 },
        { 6, [50, -0.9009, -85.5211, 50, 0, -82.7485], 1.0000 },
        { 7, [50, 0, 0, 50, -1, 2], 2.3669 },
        { 8, [50, -1, 2, 50, 0, 0], 2.3669 },
        { 9, [50, 2.4900, -0.0010, 50, -2.4900, 0.0009], 7.1792 },
        { 10, [50, 2.4900, -0.0010, 50, -2.4900, 0.0010], 7.1792 },
        { 11, [50, 2.4900, -0.0010, 50, -2.4900, 0.0011], 7.2195 },
        { 12, [50, 2.4900, -0.0010, 50, -2.4900, 0.0012], 7.2195 },
        { 13, [50, -0.0010, 2.4900, 50, 0.0009, -2.4900], 4.8045 },
        { 14, [50, -0.0010, 2.4900, 50, 0.0010, -2.4900], 4.8045 },
        { 15, [50, -0.0010, 2.4900, 50, 0.0011, -2.4900], 4.7461 },
        { 16, [50, 2.5, 0, 50, 0, -2.5], 4.3065 },
        { 17, [50, 2.5, 0, 73, 25, -18], 27.1492 },
        { 18, [50, 2.5, 0, 61, -5, 29], 22.8977 },
        { 19, [50, 2.5, 0, 56, -27, -3], 31.9030 },
        { 20, [50, 2.5, 0, 58, 24, 15], 19.4535 },
        { 21, [50, 2.5, 0, 50, 3.1736, 0.5854], 1.0000 },
        { 22, [50, 2.5, 0, 50, 3.2972, 0], 1.0000 },
        { 23, [50, 2.5, 0, 50, 1.8634, 0.5757], 1.0000 },
        { 24, [50, 2.5, 0, 50, 3.2592, 0.3350], 1.0000 },
        { 25, [60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387], 1.2644 },
        { 26, [63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864], 1.2630 },
        { 27, [61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620], 1.8731 },
        { 28, [35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901], 1.8645 },
        { 29, [22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619], 2.0373 },
        { 30, [36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231], 1.4146 },
        { 31, [90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447], 1.4441 },
        { 32, [90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239], 1.5381 },
        { 33, [6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286], 0.6377 },
        { 34, [2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514], 0.9082 },
    };

    [Theory]
    [MemberData(nameof(PublishedPairs))]
    public void DifferenceFrom_PublishedPair_IsAsPublished(int row, double[] pair, double published)
    {
        var (one, other) = (new CielabColour(pair[0], pair[1], pair[2]), new CielabColour(pair[3], pair[4], pair[5]));

        Assert.True(row > 0);
        Assert.Equal(published, one.DifferenceFrom(other), 0.00005);
        Assert.Equal(published, other.DifferenceFrom(one), 0.00005);
        Assert.Equal(published, SlowCiede2000.Between(one, other), 0.00005);
    }

    [Fact]
    public void DifferenceFrom_AnyPair_AgreesWithTheSlowTwinAndItself() =>
        Gen.Select(AnyLab, AnyLab).Sample(
            (one, other) =>
            {
                var difference = one.DifferenceFrom(other);

                // Hues exactly opposite have two means, and rounding decides between them: the paper names that break.
                var isOpposite = Math.Abs((one.A * other.B) - (one.B * other.A)) < 1e-6;
                // A difference far below what a number keeps beside the others is lost in it.
                var isSame = Math.Abs(one.L - other.L) + Math.Abs(one.A - other.A) + Math.Abs(one.B - other.B) < 1e-9;
                return (isOpposite || Math.Abs(difference - SlowCiede2000.Between(one, other)) < 1e-9)
                    && Math.Abs(difference - other.DifferenceFrom(one)) < 1e-9
                    && difference >= 0.0
                    && one.DifferenceFrom(one) == 0.0
                    && (difference > 0.0 || isSame);
            },
            iter: 20_000);

    // L*a*b* of the corners of sRGB under D65 [recalled]: to two digits in any table of colour conversions.
    [Theory]
    [InlineData("#FFFFFF", 100, 0, 0)]
    [InlineData("#000000", 0, 0, 0)]
    [InlineData("#FF0000", 53.2, 80.1, 67.2)]
    [InlineData("#00FF00", 87.7, -86.2, 83.2)]
    [InlineData("#0000FF", 32.3, 79.2, -107.9)]
    [InlineData("#777777", 50.0, 0, 0)]
    public void FromSrgb_Corner_HasThePublishedLab(string srgb, double l, double a, double b)
    {
        var lab = CielabColour.FromSrgb(SrgbColour.Parse(srgb));

        Assert.Equal(l, lab.L, 0.1);
        Assert.Equal(a, lab.A, 0.1);
        Assert.Equal(b, lab.B, 0.1);
    }

    [Fact]
    public void ToSrgb_OfAnySrgb_ComesBack() =>
        AnySrgb.Sample(colour => CielabColour.FromSrgb(colour).ToSrgb() == colour && SrgbColour.Parse(colour.ToString()) == colour, iter: 20_000);

    [Fact]
    public void FromSrgb_AnyGrey_HasNoHue() =>
        Gen.Byte.Sample(grey =>
        {
            var lab = CielabColour.FromSrgb(new(grey, grey, grey));
            return Math.Abs(lab.A) < 1e-9 && Math.Abs(lab.B) < 1e-9 && lab.L is >= 0.0 and <= 100.0000001;
        });

    [Fact]
    public void ToSrgb_NoScreenShowsIt_IsNull() => Assert.Null(new CielabColour(50, -120, 0).ToSrgb());

    [Theory]
    [InlineData("#1A2b3C", "#1A2B3C")]
    [InlineData("1a2b3c", "#1A2B3C")]
    [InlineData("#1A2B3", null)]
    [InlineData("#1A2B3G", null)]
    [InlineData("", null)]
    [InlineData("+12345", null)]
    public void TryParse_Text_ReadsWhatIsAColour(string text, string? expected) =>
        Assert.Equal(expected, SrgbColour.TryParse(text, out var colour) ? colour.ToString() : null);

    [Fact]
    public void TryParse_AnyText_DoesNotThrow() => Gen.String.Sample(text =>
    {
        _ = SrgbColour.TryParse(text, out _);
    });

    [Fact]
    public void Tones_OfTheShippedTable_AreAllOfTheSystem()
    {
        var tones = ShippedTones.All;

        // 267 names, each once, numbered 1 to 267 [KellyJudd1976].
        Assert.Equal(Enumerable.Range(1, 267), tones.Select(t => t.Number).Order());
        Assert.Equal(267, tones.Select(t => t.Name).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(267, tones.Select(t => t.Srgb).Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    private static class ShippedTones
    {
        public static readonly IReadOnlyList<Tone> All =
            CatalogueFolder.Read(Path.Combine(AppContext.BaseDirectory, "catalogue", "python-regius")).Catalogue!.Tones;
    }
}
