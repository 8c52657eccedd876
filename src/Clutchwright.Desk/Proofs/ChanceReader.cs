using System.Globalization;
using System.Numerics;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Proofs;

/// <summary>Reads chances, ratios and counts as a keeper writes them.</summary>
internal static class ChanceReader
{
    /// <summary>How a chance is written, for messages.</summary>
    public const string Shape = "Write a ratio such as 2/3, a percentage such as 66% (which means 2/3, as the trade writes it) or a number from 0 to 1";

    /// <summary>A chance: <c>2/3</c>, <c>66%</c> or <c>0.5</c>, kept exact; <c>null</c>, and a problem, where it is none.</summary>
    public static Probability? Read(string where, string? text, List<AskedWrongly> problems)
    {
        var read = Read(text);
        if (read is null)
        {
            problems.Add(new(where, $"'{text}' is no chance. {Shape}."));
        }

        return read;
    }

    /// <summary>A chance, or <c>null</c>.</summary>
    public static Probability? Read(string? text)
    {
        text = text?.Trim() ?? string.Empty;
        if (text.EndsWith('%'))
        {
            var digits = text[..^1].Trim();
            return digits is "0" ? Probability.Impossible : Percentages.Read(digits);
        }

        return ReadNumber(text) is { } number && number >= Fraction.Zero && number <= Fraction.One ? Probability.From(number) : null;
    }

    /// <summary>A ratio such as <c>9:3:3:1</c>; each number may be a fraction or have decimals, and is above 0.</summary>
    public static IReadOnlyList<Fraction>? ReadRatio(string where, string? text, List<AskedWrongly> problems)
    {
        var parts = (text ?? string.Empty).Split(':', StringSplitOptions.TrimEntries);
        var numbers = parts.Select(ReadNumber).OfType<Fraction>().Where(n => n > Fraction.Zero).ToArray();
        if (numbers.Length == parts.Length && parts.Length > 1)
        {
            return numbers;
        }

        problems.Add(new(where, $"'{text}' is no ratio. Write numbers above 0 with colons between, for example 9:3:3:1."));
        return null;
    }

    /// <summary>Counts with names, <c>a=315, b=101</c>, or without.</summary>
    public static IReadOnlyList<(string? Name, int Count)>? ReadCounts(string where, string? text, List<AskedWrongly> problems)
    {
        var result = new List<(string? Name, int Count)>();
        foreach (var part in (text ?? string.Empty).Split([',', ';'], StringSplitOptions.TrimEntries))
        {
            var at = part.LastIndexOf('=');
            var name = at < 0 ? null : part[..at].Trim();
            if (name is "" || !int.TryParse(part[(at + 1)..].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count > 1_000_000)
            {
                problems.Add(new(where, $"'{part}' is no count. Write a name and a whole number for each class, for example round=315,wrinkled=101."));
                return null;
            }

            if (name is not null && result.Any(r => string.Equals(r.Name, name, StringComparison.OrdinalIgnoreCase)))
            {
                problems.Add(new(where, $"The class '{name}' is given twice in '{text}'. Write each class once."));
                return null;
            }

            result.Add((name, count));
        }

        if (result.Any(r => r.Name is null) && result.Any(r => r.Name is not null))
        {
            problems.Add(new(where, $"In '{text}' some classes have names and some have none. Name all of them or none."));
            return null;
        }

        return result;
    }

    private static Fraction? ReadNumber(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        if (slash >= 0)
        {
            return Whole(text[..slash].Trim()) is { } up && Whole(text[(slash + 1)..].Trim()) is { IsZero: false } down ? new Fraction(up, down) : null;
        }

        var point = text.IndexOf('.', StringComparison.Ordinal);
        var decimals = point < 0 ? 0 : text.Length - point - 1;
        return text.Length is > 0 and <= 18 && text.Count(c => c == '.') <= 1 && text.Any(char.IsAsciiDigit)
            && Whole(text.Replace(".", string.Empty, StringComparison.Ordinal)) is { } digits
            ? new Fraction(digits, BigInteger.Pow(10, decimals))
            : null;
    }

    private static BigInteger? Whole(string text) =>
        text.Length is > 0 and <= 18 && text.All(char.IsAsciiDigit) ? BigInteger.Parse(text, CultureInfo.InvariantCulture) : null;
}
