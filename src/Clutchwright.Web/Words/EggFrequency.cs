using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Web.Words;

/// <summary>A chance as a number of eggs out of a number of eggs, small enough to be drawn and counted.</summary>
/// <remarks>People judge chances best as natural frequencies (Gigerenzer and Hoffrage 1995).</remarks>
/// <param name="Wanted">The eggs that are filled.</param>
/// <param name="Of">All eggs drawn.</param>
/// <param name="IsRounded">Whether the number was rounded.</param>
internal readonly record struct EggFrequency(int Wanted, int Of, bool IsRounded)
{
    /// <summary>The most eggs that are drawn for an exact ratio; others are told out of 100.</summary>
    public const int MostExact = 64;

    private const int Hundred = 100;
    private const int Thousand = 1000;

    /// <summary>Gets whether there is anything to count: the chance is neither too small nor too near 1 for a thousand eggs.</summary>
    public bool CanBeDrawn => Of > 0;

    /// <summary>Gets the eggs in a row, chosen so that they count easily.</summary>
    public int Columns => Of switch
    {
        <= 8 => Math.Max(Of, 1),
        Hundred => 20,
        Thousand => 50,
        _ when Of % 16 == 0 && Of > 32 => 16,
        _ when Of % 8 == 0 => 8,
        _ when Of % 10 == 0 => 10,
        _ when Of % 12 == 0 => 12,
        _ when Of % 6 == 0 => 6,
        _ when Of % 9 == 0 => 9,
        _ when Of % 7 == 0 => 7,
        _ when Of % 5 == 0 => 5,
        _ => 10,
    };

    /// <summary>Gets the frequency in words, for example <c>3 of 16 eggs</c>.</summary>
    public string Words => (Wanted, Of) switch
    {
        (0, 0) => $"fewer than 1 of {CountWords.Whole(Thousand)} eggs",
        (_, 0) => $"all but fewer than 1 of {CountWords.Whole(Thousand)} eggs",
        _ when Wanted == 0 => "no egg",
        _ when Wanted == Of => "every egg",
        _ => $"{(IsRounded ? "about " : string.Empty)}{Wanted} of {CountWords.Whole(Of)} eggs",
    };

    /// <summary>The frequency of a chance.</summary>
    public static EggFrequency From(Probability chance)
    {
        if (chance.Exact is { } exact && exact.Denominator <= MostExact)
        {
            return new((int)exact.Numerator, (int)exact.Denominator, IsRounded: false);
        }

        var value = chance.Value;
        return value switch
        {
            < 0.0005 => new(0, 0, IsRounded: true),
            > 0.9995 => new(1, 0, IsRounded: true),
            < 0.0095 or > 0.9905 => Rounded(chance, Thousand),
            _ => Rounded(chance, Hundred),
        };
    }

    private static EggFrequency Rounded(Probability chance, int of)
    {
        var wanted = (int)Math.Round(chance.Value * of, MidpointRounding.AwayFromZero);
        var isExact = chance.Exact is { } exact && (exact * of).Denominator.IsOne;
        return new(Math.Clamp(wanted, 1, of - 1), of, !isExact);
    }
}
