using System.Globalization;
using Clutchwright.Desk.Looks;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Looks;

/// <summary>A look that is looked for, as the address holds it: fields, words beside them, and the makings on the board.</summary>
public sealed record LooksForm
{
    /// <summary>The word for a colour of one's own.</summary>
    public const string OwnTone = "own";

    private static readonly HashSet<string> KnownPlaces = ["pattern", "ground", "eye", "any"];

    public string? Tone { get; init; }

    public string? Own { get; init; }

    public string? Place { get; init; }

    public string? Within { get; init; }

    public string? When { get; init; }

    public string? White { get; init; }

    public string? Words { get; init; }

    public string? Genes { get; init; }

    public bool FromStock { get; init; }

    public bool WithoutHarm { get; init; }

    public int Most { get; init; } = FirstMakings;

    public IReadOnlyList<string> Board { get; init; } = [];

    public const int FirstMakings = 20;
    public const int MostMakings = 100;
    public const int MostOnBoard = 12;

    /// <summary>Gets whether anything is asked.</summary>
    public bool IsAsked => Query.Length > 0;

    /// <summary>Gets the query in the words of the command line.</summary>
    public string Query
    {
        get
        {
            var tone = Tone == OwnTone ? Own : Tone;
            var phrases = new[]
            {
                tone is null ? null : $"{(Place is null or "any" || !KnownPlaces.Contains(Place) ? "" : $"{Place} ")}{tone}{(Within is null ? "" : $" within {Within}")}",
                White is null ? null : White switch { "some" => "some white", "none" => "no white", _ => $"white {White}" },
                Words,
                When,
            };
            var said = phrases.OfType<string>().ToArray();
            return said.Length == 0 || (said.Length == 1 && When is not null && When != "holds") ? "" : string.Join(", ", said);
        }
    }

    public LooksQuestion Question => new(Query)
    {
        Genes = Genes is "1" or "2" or "3" ? Genes[0] - '0' : null,
        FromStock = FromStock,
        WithoutHarm = WithoutHarm,
        Most = Most,
    };

    public static LooksForm Read(IQueryCollection query) => new()
    {
        Tone = Text(query, "tone"),
        Own = Text(query, OwnTone),
        Place = Text(query, "place"),
        Within = Text(query, "within"),
        When = Text(query, "when"),
        White = Text(query, "white"),
        Words = Text(query, "q"),
        Genes = Text(query, "genes"),
        FromStock = Text(query, "from") == "stock",
        WithoutHarm = Text(query, "harm") == "none",
        Most = Text(query, "most") == "more" ? MostMakings : FirstMakings,
        Board = Makings(query),
    };

    /// <summary>The makings of an address, each once.</summary>
    public static IReadOnlyList<string> Makings(IQueryCollection query) =>
        [.. query["m"].OfType<string>().Select(m => m.Trim()).Where(m => m.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase).Take(MostOnBoard)];

    /// <summary>The address that asks this, with a making put on the board or taken off it.</summary>
    public string LinkWith(string making, bool isOn)
    {
        var board = Board.Where(b => !b.Equals(making, StringComparison.OrdinalIgnoreCase));
        return (this with { Board = [.. isOn ? board.Append(making) : board] }).Link;
    }

    /// <summary>Gets the address that asks this.</summary>
    public string Link => Links.With(
        "/looks",
        [
            ("tone", Tone), ("own", Tone == OwnTone ? Own : null), ("place", Place), ("within", Within), ("when", When), ("white", White), ("q", Words),
            ("genes", Genes), ("from", FromStock ? "stock" : null), ("harm", WithoutHarm ? "none" : null), ("most", Most == MostMakings ? "more" : null),
            .. Board.Select(b => ("m", (string?)b)),
        ]);

    public bool IsOnBoard(string making) => Board.Contains(making, StringComparer.OrdinalIgnoreCase);

    public static string Number(double number) => number.ToString("0.0", CultureInfo.CurrentCulture);

    private static string? Text(IQueryCollection query, string name)
    {
        var text = query[name].ToString().Trim();
        return text.Length == 0 ? null : text;
    }
}
