using System.Globalization;
using System.Numerics;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Stock.Import;

/// <summary>The cell of the sire: <c>A</c>, <c>A|B</c>, or with the chances of the possible sires <c>A:0.7|B:0.3</c>.</summary>
/// <param name="Tags">The tags, each once.</param>
/// <param name="Weights">The chances, in the order of the tags and in sum 1; empty where none are written.</param>
internal sealed record SireCell(IReadOnlyList<string> Tags, IReadOnlyList<Fraction> Weights)
{
    private const int MostDigits = 18;

    /// <summary>Reads a cell.</summary>
    /// <param name="text">The cell.</param>
    /// <param name="spelt">How a tag is written in its own row.</param>
    public static Outcome<SireCell> Read(string text, Func<string, string> spelt)
    {
        var parts = text.Split(Animals.Tags.Separator, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var weighed = Array.ConvertAll(parts, Part);
        if (parts.Length < 2 || weighed.All(w => w is null))
        {
            return new SireCell([.. parts.Select(spelt).Distinct(StringComparer.Ordinal)], []);
        }

        if (weighed.Any(w => w is null))
        {
            return new ImportProblem.SomeSiresWeighed(text);
        }

        var sires = weighed.GroupBy(w => spelt(w!.Value.Tag), w => w!.Value.Weight, StringComparer.Ordinal).ToList();
        var sum = weighed.Aggregate(Fraction.Zero, (total, w) => total + w!.Value.Weight);
        return sum.IsOne && weighed.All(w => !w!.Value.Weight.IsZero)
            ? new SireCell([.. sires.Select(s => s.Key)], sires.Count == 1 ? [] : [.. sires.Select(s => s.Aggregate((a, b) => a + b))])
            : new ImportProblem.SireWeightsNotOne(text, sum.ToString());
    }

    // A tag may hold a colon, so only what can be nothing but a chance is one: 0.7, 70% or 7/10, no whole number.
    private static (string Tag, Fraction Weight)? Part(string part)
    {
        var at = part.LastIndexOf(':');
        return at > 0 && Weight(part[(at + 1)..].Trim()) is { } weight ? (part[..at].Trim(), weight) : null;
    }

    private static Fraction? Weight(string text)
    {
        if (text.Split('/') is [var up, var down])
        {
            return Whole(up) is { } numerator && Whole(down) is { IsZero: false } denominator ? new Fraction(numerator, denominator) : null;
        }

        var percent = text.EndsWith('%');
        var digits = percent ? text[..^1].Trim() : text;
        var point = digits.IndexOf('.', StringComparison.Ordinal);
        if (point < 0 && !percent)
        {
            return null;
        }

        var decimals = point < 0 ? 0 : digits.Length - point - 1;
        return Whole(point < 0 ? digits : digits.Remove(point, 1)) is { } number
            ? new Fraction(number, BigInteger.Pow(10, decimals + (percent ? 2 : 0)))
            : null;
    }

    private static BigInteger? Whole(string text) => text.Trim() is { Length: > 0 and <= MostDigits } digits && digits.All(char.IsAsciiDigit)
        ? BigInteger.Parse(digits, CultureInfo.InvariantCulture)
        : null;
}
