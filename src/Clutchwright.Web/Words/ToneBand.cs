using System.Globalization;
using Clutchwright.Desk.Words;

namespace Clutchwright.Web.Words;

/// <summary>One stop of the ground's colour along the band.</summary>
/// <param name="Offset">From 0 at the left to 1.</param>
/// <param name="Srgb">As <c>#RRGGBB</c>.</param>
internal readonly record struct ToneStop(double Offset, string Srgb);

/// <summary>A saddle of pattern, drawn on the band.</summary>
internal readonly record struct ToneMark(double X, double Y, double RadiusX, double RadiusY, string Srgb);

/// <summary>The drawing behind a tone strip: a band that grows from hatchling to adult, ground with saddles of pattern on it.</summary>
internal sealed class ToneBand
{
    public const double Width = 480;
    public const double Height = 56;
    private const double HatchlingHalf = 15;
    private const double AdultHalf = 27;
    private const double Middle = Height / 2;

    private readonly int _saddles;

    private ToneBand(IReadOnlyList<StageWords> stages, int saddles)
    {
        _saddles = saddles;
        Stages = stages;
        Ground = Stops(stages, s => s.Ground);
        Pattern = Stops(stages, s => s.Pattern);
        Marks = Pattern.Count == 0 ? [] : [.. Enumerable.Range(0, saddles).Select(Saddle)];
    }

    /// <summary>Gets the stages, youngest first.</summary>
    public IReadOnlyList<StageWords> Stages { get; }

    /// <summary>Gets the colours of the ground from left to right; empty where none is known.</summary>
    public IReadOnlyList<ToneStop> Ground { get; }

    /// <summary>Gets the colours of the pattern from left to right.</summary>
    public IReadOnlyList<ToneStop> Pattern { get; }

    /// <summary>Gets the saddles of pattern.</summary>
    public IReadOnlyList<ToneMark> Marks { get; }

    /// <summary>Gets the outline of the band as path data.</summary>
    public static string Outline { get; } = string.Create(
        CultureInfo.InvariantCulture,
        $"M0.5 {Middle - HatchlingHalf}L{Width - 0.5} {Middle - AdultHalf}V{Middle + AdultHalf}L0.5 {Middle + HatchlingHalf}Z");

    /// <summary>Draws the band of a look; <c>null</c> where no colour of it is known.</summary>
    /// <param name="stages">The look's stages, youngest first.</param>
    /// <param name="saddles">How many marks of pattern to draw.</param>
    public static ToneBand? Of(IReadOnlyList<StageWords> stages, int saddles = 24)
    {
        var known = stages.Where(s => s.Ground is not null || s.Pattern is not null || s.Eye is not null).ToList();
        return known.Count == 0 ? null : new ToneBand(known, saddles);
    }

    /// <summary>The age at which a stage begins, in words.</summary>
    public static string Age(int fromMonths) => fromMonths switch
    {
        0 => "on hatch day",
        < 24 => $"from {fromMonths} months",
        _ when fromMonths % 12 == 0 => $"from {fromMonths / 12} years",
        _ => $"from {fromMonths} months",
    };

    /// <summary>The whole band as a sentence, for those who do not see it.</summary>
    public static string Describe(string name, IReadOnlyList<StageWords> stages)
    {
        var told = stages.Select(s => (s.Stage, Words: Tones(s))).Where(s => s.Words.Length > 0)
            .Select(s => $"as {Article(s.Stage)} {s.Stage} {s.Words}").ToList();
        return told.Count == 0 ? $"{name}: no colours recorded" : $"{name}: {string.Join("; ", told)}";
    }

    private static string Article(string stage) => stage.StartsWith('a') ? "an" : "a";

    private static string Tones(StageWords stage) => string.Join(", ", new[]
    {
        stage.Ground is { } ground ? $"{ground.Name} ground" : null,
        stage.Pattern is { } pattern ? $"{pattern.Name} pattern" : null,
        stage.Eye is { } eye ? $"{eye.Name} eye" : null,
    }.OfType<string>());

    private static List<ToneStop> Stops(IReadOnlyList<StageWords> stages, Func<StageWords, ToneWords?> tone)
    {
        var stops = new List<ToneStop>();
        for (var i = 0; i < stages.Count; i++)
        {
            if (tone(stages[i]) is { } known)
            {
                stops.Add(new(Offset(i, stages.Count), known.Srgb));
            }
        }

        return stops;
    }

    // A stage stands in the middle of its share of the band, so that each colour has room of its own.
    private static double Offset(int index, int count) => (index + 0.5) / count;

    private static double HalfAt(double share) => HatchlingHalf + ((AdultHalf - HatchlingHalf) * share);

    private static string ColourAt(IReadOnlyList<ToneStop> stops, double share)
    {
        var after = 0;
        while (after < stops.Count && stops[after].Offset < share)
        {
            after++;
        }

        return after == 0 ? stops[0].Srgb
            : after == stops.Count ? stops[^1].Srgb
            : Hues.Between(
                stops[after - 1].Srgb,
                stops[after].Srgb,
                (share - stops[after - 1].Offset) / (stops[after].Offset - stops[after - 1].Offset));
    }

    private ToneMark Saddle(int index)
    {
        var share = (index + 0.5) / _saddles;
        var half = HalfAt(share);

        // _saddles hang from the back, and blotches rise from the belly between them: a drawing of a pattern, not of this one.
        var fromBack = index % 2 == 0;
        var edge = fromBack ? Middle - half : Middle + half;
        return new(share * Width, edge, half * (fromBack ? 0.55 : 0.42), half * (fromBack ? 1.0 : 0.6), ColourAt(Pattern, share));
    }
}
