using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Season;

/// <summary>A goal as it is written in a row of the form.</summary>
/// <param name="Want">What: trade text; for a proof <c>TAG: GENE</c>; for worths <c>KIND=WORTH; KIND=WORTH</c>.</param>
/// <param name="Count">How many at least.</param>
/// <param name="Weight">What it counts.</param>
public sealed record SeasonGoalRow(string Want, string? Count = null, string? Weight = null)
{
    private const string Usual = "want";

    /// <summary>The kinds of goal, as the goals file names them, in words.</summary>
    public static IReadOnlyList<(string Kind, string Words)> Kinds { get; } =
    [
        (Usual, "At least one hatches"), ("holdback", "Hold one back"), ("prove", "Settle a doubt"), ("expect", "Many of a kind"), ("value", "Worth, by kind"),
    ];

    /// <summary>Gets the kind, as the goals file names it.</summary>
    public string Kind { get; init; } = Usual;

    /// <summary>Gets the figure it must reach.</summary>
    public string? Floor { get; init; }

    /// <summary>Gets the adopted route that asks for it.</summary>
    public string? Route { get; init; }

    /// <summary>Gets what it is called; <c>null</c>: by what it wants.</summary>
    public string? Name { get; init; }

    /// <summary>Gets what it is called in the plan.</summary>
    public string Called => Name ?? (Count is null or "1" ? Want : $"{Count} {Want}");

    /// <summary>Reads <c>WANT</c>, <c>WANT*WEIGHT</c> or <c>WANT*WEIGHT*COUNT</c>, and what <see cref="ToString"/> puts behind; before the want may stand
    /// a kind and <c>|</c>.</summary>
    public static SeasonGoalRow Read(string text)
    {
        var bar = text.IndexOf('|', StringComparison.Ordinal);
        var kind = bar > 0 && Kinds.Any(k => k.Kind == text[..bar]) ? text[..bar] : null;
        var parts = (kind is null ? text : text[(bar + 1)..]).Split('*', StringSplitOptions.TrimEntries);
        return new(parts[0], Part(2), Part(1)) { Kind = kind ?? Usual, Floor = Part(3), Route = Part(4), Name = Part(5) };

        string? Part(int index) => parts.Length > index && parts[index].Length > 0 ? parts[index] : null;
    }

    /// <summary>Reads a row of the form; <c>null</c>: it is empty.</summary>
    public static SeasonGoalRow? Read(IQueryCollection query, string row)
    {
        return Text("want") is not { } want ? null : new(want, Text("count"), Text("weight"))
        {
            Kind = Text("kind") is { } kind && Kinds.Any(k => k.Kind == kind) ? kind : Usual,
            Floor = Text("floor"),
            Route = Text("by"),
            Name = Text("called"),
        };

        string? Text(string field) => SeasonForm.Text(query, field + row);
    }

    /// <summary>Writes it as <see cref="Read(string)"/> reads it.</summary>
    public override string ToString()
    {
        string?[] parts = [Want, Weight is "1" ? null : Weight, Count is "1" ? null : Count, Floor, Route, Name];
        var last = Array.FindLastIndex(parts, p => p is not null);
        return (Kind == Usual ? string.Empty : $"{Kind}|") + string.Join('*', parts[..(last + 1)]);
    }
}
