using System.Globalization;
using System.Text.RegularExpressions;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using CsCheck;

namespace Clutchwright.Desk.Tests.Words;

public sealed partial class OddsTextTests
{
    // From the likeliest to one in 2^400, exact and not.
    private static readonly Gen<Probability> Any = Gen.Frequency(
        (3, Gen.Select(Gen.Long[1, 4000], Gen.Long[1, 4000]).Select((a, b) => Probability.Ratio(Math.Min(a, b), Math.Max(a, b)))),
        (3, Gen.Double[1e-300, 1.0].Select(Probability.From)),
        (2, Gen.Double[-300.0, -1e-9].Select(x => Probability.From(Math.Pow(10.0, x)))),
        (2, Gen.Double[-15.0, -0.1].Select(x => Probability.From(1.0 - Math.Pow(10.0, x)))),
        (1, Gen.Int[1, 400].Select(n => Probability.Half.Power(n))),
        (1, Gen.Int[1, 400].Select(n => Probability.Half.Power(n).Complement)));

    [Fact]
    public void Percent_OfWhatIsPossibleAndNotCertain_IsNeitherZeroNorAll() => Any.Sample(
        chance =>
        {
            if (chance.IsImpossible || chance.IsCertain)
            {
                return;
            }

            var text = Invariant(() => OddsText.Percent(chance));
            var number = double.Parse(text.TrimStart('<', '>').TrimEnd('%'), CultureInfo.InvariantCulture);
            Assert.InRange(number, 0.0001, 99.9999);
            if (text[0] is not ('<' or '>'))
            {
                Assert.Equal(chance.Value * 100.0, number, 0.0500001);
            }
        },
        iter: 20_000);

    [Fact]
    public void Frequency_OfWhatIsPossibleAndNotCertain_IsNeitherNoneNorAll() => Any.Sample(
        chance =>
        {
            if (chance.IsImpossible || chance.IsCertain)
            {
                return;
            }

            var text = Invariant(() => OddsText.Frequency(chance, "eggs"));
            var numbers = Numbers().Matches(text).Select(m => long.Parse(m.Value, NumberStyles.AllowThousands, CultureInfo.InvariantCulture)).ToArray();
            Assert.Equal(2, numbers.Length);
            Assert.True(numbers[0] > 0 && numbers[0] < numbers[1], text);
        },
        iter: 20_000);

    [Theory]
    [InlineData(1, 4, "1 in 4 (25%)")]
    [InlineData(3, 16, "3 in 16 (18.8%)")]
    [InlineData(1, 1, "100%")]
    [InlineData(0, 1, "0%")]
    [InlineData(1, 262144, "0.00038%")]
    public void RatioAndPercent_OfARatio_IsShort(long numerator, long denominator, string expected) =>
        Assert.Equal(expected, Invariant(() => OddsText.RatioAndPercent(Probability.Ratio(numerator, denominator))));

    private static string Invariant(Func<string> words)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            return words();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [GeneratedRegex("[0-9][0-9,]*", RegexOptions.None, 1000)]
    private static partial Regex Numbers();
}
