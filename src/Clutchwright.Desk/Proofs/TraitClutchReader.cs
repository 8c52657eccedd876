using System.Globalization;
using Clutchwright.Desk.Words;
using Clutchwright.Proofs.Modes;

namespace Clutchwright.Desk.Proofs;

/// <summary>Reads a clutch as a keeper writes it: <c>Rex shows x Ada normal: sons 5 shows 4 normal, daughters 3 shows 1 super</c>.</summary>
internal static class TraitClutchReader
{
    /// <summary>How a clutch is written, for messages.</summary>
    public const string Shape = "Write the parents and what they show, a colon, and the young: 'Rex shows x Ada normal: sons 5 shows 4 normal, daughters 3 shows 6 normal, unsexed 1 super'";

    public static TraitClutch? Read(string where, string text, int number, List<AskedWrongly> problems)
    {
        var colon = text.LastIndexOf(':');
        if (colon < 0)
        {
            return Refuse(where, $"'{text}' has no colon between parents and young. {Shape}.", problems);
        }

        var parents = text[..colon].Split([" x ", " X ", " × "], StringSplitOptions.TrimEntries);
        if (parents.Length != 2 || Parent(parents[0], $"sire of clutch {number}") is not { } sire || Parent(parents[1], $"dam of clutch {number}") is not { } dam)
        {
            return Refuse(where, $"'{text[..colon].Trim()}' does not name two parents and what each shows. {Shape}.", problems);
        }

        var counts = new Dictionary<string, TraitCounts>(StringComparer.Ordinal);
        foreach (var group in text[(colon + 1)..].Split([',', ';'], StringSplitOptions.TrimEntries))
        {
            if (Group(group) is not { } read)
            {
                return Refuse(where, $"'{group}' does not say young of one sex. {Shape}.", problems);
            }

            if (!counts.TryAdd(read.Sex, read.Counts))
            {
                return Refuse(where, $"The {read.Sex} are given twice in '{text}'. Write them once.", problems);
            }
        }

        return new(sire.Name, sire.Look, dam.Name, dam.Look, counts.GetValueOrDefault("sons"), counts.GetValueOrDefault("daughters"), counts.GetValueOrDefault("unsexed"));
    }

    private static TraitClutch? Refuse(string where, string text, List<AskedWrongly> problems)
    {
        problems.Add(new(where, text));
        return null;
    }

    private static (string Name, TraitLook Look)? Parent(string text, string unnamed)
    {
        var space = text.LastIndexOf(' ');
        return Look(text[(space + 1)..]) is { } look ? (space < 0 ? unnamed : text[..space].Trim(), look) : null;
    }

    private static (string Sex, TraitCounts Counts)? Group(string text)
    {
        var words = text.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var sex = words.FirstOrDefault() switch
        {
            "sons" or "son" or "males" or "male" => "sons",
            "daughters" or "daughter" or "females" or "female" => "daughters",
            "unsexed" or "young" => "unsexed",
            _ => null,
        };
        if (sex is null || words.Length < 3 || words.Length % 2 == 0)
        {
            return null;
        }

        var counts = new int[3];
        for (var i = 1; i < words.Length; i += 2)
        {
            if (!int.TryParse(words[i], NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number > 10_000 || Look(words[i + 1]) is not { } look || counts[(int)look] > 0)
            {
                return null;
            }

            counts[(int)look] = number;
        }

        return (sex, new(counts[0], counts[1], counts[2]));
    }

    private static TraitLook? Look(string word) => word.ToLowerInvariant() switch
    {
        "normal" or "normals" => TraitLook.Normal,
        "shows" or "show" or "showing" or "visual" or "visuals" => TraitLook.Shows,
        "super" or "supers" => TraitLook.Super,
        _ => null,
    };
}
