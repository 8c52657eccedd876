using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Web.Words;

namespace Clutchwright.Web.Routes;

/// <summary>Puts routes into sentences, in the reader's culture.</summary>
internal static class RouteText
{
    /// <summary>A chance of a whole programme as a natural frequency: <c>about 5 of 10 such programmes</c>.</summary>
    public static string Programmes(double chance)
    {
        var tenths = (int)Math.Round(chance * 10.0, MidpointRounding.AwayFromZero);
        return chance is >= 0.095 and <= 0.945 ? $"about {tenths} of 10 such programmes" : OddsText.Frequency(Probability.Rounded(chance), "such programmes");
    }

    /// <summary>A chance as a percentage.</summary>
    public static string Percent(double chance) => OddsText.Percent(Probability.Rounded(chance));

    /// <summary>A cost in the keeper's unit.</summary>
    public static string Cost(double cost) => cost.ToString("#,0.#");

    /// <summary>Who is held back: <c>a son</c>, <c>3 daughters</c>.</summary>
    public static string Young(RouteAnimalWords animal) => (animal.Sex, animal.Count) switch
    {
        (Sex.Male, 1) => "a son",
        (Sex.Male, var n) => $"{CountWords.Whole(n)} sons",
        (_, 1) => "a daughter",
        (_, var n) => $"{CountWords.Whole(n)} daughters",
    };

    /// <summary>An animal of a pairing by its name: <c>T-201</c>, <c>A</c>, <c>3 × B</c>.</summary>
    /// <param name="animal">The animal.</param>
    /// <param name="dams">How many equal females are paired; 1 for the sire.</param>
    public static string Name(RouteAnimalWords animal, int dams = 1)
    {
        var count = Math.Max(animal.FromStep is null ? dams : animal.Count, 1);
        var name = animal.FromStep is null && animal.Tags.Count == 0 ? "bought" : animal.Name;
        return count > 1 ? $"{CountWords.Whole(count)} × {name}" : name;
    }

    /// <summary>Two numbers as a span.</summary>
    public static string Span(double low, double high) =>
        OddsText.Mean(low) == OddsText.Mean(high) ? OddsText.Mean(low) : $"{OddsText.Mean(low)} to {OddsText.Mean(high)}";

    /// <summary>How the figures of a route come about.</summary>
    public static IReadOnlyList<WhyStep> Why(RoutesAnswer answer, RouteWords route) =>
    [
        new("Per egg: what the two animals of a pairing can give, by what is believed of them and by Mendel’s laws.", null),
        .. route.Steps.Select(s => new WhyStep(
            $"Season {s.Season}, {Name(route.Animals[s.Sire])} × {Name(route.Animals[s.Dam], s.Dams)}: the chance that one season of it gives "
            + (s.Keep.Count == 0 ? "the wanted, over clutches as they are laid." : "all that is to be held back, over clutches as they are laid, and that it is reared."),
            Probability.Rounded(s.Success))),
        new("A pairing that fails is tried again the next season; a held-back animal is paired once it is of age. All of it together within the seasons asked:", route.Chance),
        .. answer.Outlook is { } outlook
            ? new[] { new WhyStep($"Planned anew after every hatch, {CountWords.Whole(outlook.Tries)} programmes tried from counted seeds: the share that got there.", Probability.Rounded(outlook.Chance)) }
            : [],
        new("What the model takes for granted, its formulas and sources: docs/model/routes.md.", null),
    ];
}
