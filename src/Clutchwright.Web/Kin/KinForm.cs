using System.Globalization;
using Clutchwright.Desk.Charts;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Kin;

/// <summary>What a keeper asks of the pedigree, as the address holds it.</summary>
public sealed record KinForm
{
    /// <summary>The word for no gene.</summary>
    public const string None = "none";

    public string? Animal { get; init; }

    public string? Up { get; init; }

    public string? Down { get; init; }

    public string? Show { get; init; }

    public IReadOnlyList<string> Genes { get; init; } = [];

    public string? Most { get; init; }

    public bool IsWhole => Show == "all";

    public static KinForm Read(IQueryCollection query) => new()
    {
        Animal = Text(query, "animal"),
        Up = Text(query, "up"),
        Down = Text(query, "down"),
        Show = Text(query, "show"),
        Genes = [.. query["gene"].OfType<string>().Select(g => g.Trim()).Where(g => g.Length > 0).Distinct(StringComparer.Ordinal).Take(ChartQuestion.MostGenes + 1)],
        Most = Text(query, "most"),
    };

    /// <summary>The address that asks this of a page.</summary>
    public string Link(string path) => Links.With(
        path, [("animal", Animal), ("up", Up), ("down", Down), ("show", Show), .. Genes.Select(g => ("gene", (string?)g)), ("most", Most)]);

    /// <summary>The question, without what in the address cannot be read.</summary>
    /// <param name="problems">Takes what cannot be read.</param>
    public ChartQuestion Question(List<AskedWrongly> problems)
    {
        var question = new ChartQuestion(Animal)
        {
            IsWhole = IsWhole,
            Genes = Genes.Count == 0 ? null : [.. Genes.Where(g => g != None)],
        };
        question = question with { Up = Whole(Up, "up", ChartQuestion.MostGenerations, problems) ?? question.Up };
        question = question with { Down = Whole(Down, "down", ChartQuestion.MostGenerations, problems) ?? question.Down };
        return question with { Most = Whole(Most, "most", ChartQuestion.MostAnimals, problems) ?? question.Most };
    }

    private static string? Text(IQueryCollection query, string name)
    {
        var text = query[name].ToString().Trim();
        return text.Length == 0 ? null : text;
    }

    private static int? Whole(string? text, string where, int most, List<AskedWrongly> problems)
    {
        if (text is null)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= most)
        {
            return number;
        }

        problems.Add(new AskedWrongly(where, $"Give a whole number up to {most}, not “{text}”."));
        return null;
    }
}
