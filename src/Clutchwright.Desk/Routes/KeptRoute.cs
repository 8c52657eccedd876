using System.Text.Json;
using Clutchwright.Desk.Crosses;
using Clutchwright.Stock.Routes;

namespace Clutchwright.Desk.Routes;

/// <summary>How an adopted route is written in the book. A new field must have a default, so that old books can still be read.</summary>
internal static class KeptRoute
{
    public static string Write(RoutesQuestion question) => JsonSerializer.Serialize(Asked.Of(question));

    public static string Write(RouteWords route) => JsonSerializer.Serialize(new Planned(
        route.Chance.Value, route.ChanceBySeason, [.. route.Steps.Select(s => Step(route, s))]));

    /// <summary>The question of an adopted route, for the seasons that are left.</summary>
    public static RoutesQuestion Question(AdoptedRoute route, int seasons) => JsonSerializer.Deserialize<Asked>(route.Asked)!.ToQuestion(route.Want, seasons);

    public static AdoptedRouteLine Line(AdoptedRoute route, TimeZoneInfo zone)
    {
        var planned = JsonSerializer.Deserialize<Planned>(route.Steps)!;
        return new(
            route.AdoptedRouteId.Value,
            route.Want,
            route.FirstYear,
            route.LastYear,
            DateOnly.FromDateTime(TimeZoneInfo.ConvertTimeFromUtc(route.AdoptedAt, zone)),
            planned.Chance,
            planned.ChanceBySeason,
            planned.Steps,
            route.Ending switch
            {
                RouteEnding.Reached => "reached",
                RouteEnding.GivenUp => "given up",
                null => null,
            });
    }

    /// <summary>How many pairings two plans have in common: of animals that are the same at the genes that count, for the same young.</summary>
    public static int InCommon(IReadOnlyList<AdoptedStep> planned, RouteWords route)
    {
        var left = planned.Select(Sign).ToList();
        return route.Steps.Count(s => left.Remove(Sign(Step(route, s))));

        static string Sign(AdoptedStep step) => $"{step.Sire.Genotype} x {step.Dam.Genotype}: {string.Join(" and ", step.Keep)}";
    }

    private static AdoptedStep Step(RouteWords route, RouteStepWords step) => new(
        step.Season, Parent(route.Animals[step.Sire]), Parent(route.Animals[step.Dam]), [.. step.Keep.Select(k => Genotype(route.Animals[k]))]);

    private static AdoptedParent Parent(RouteAnimalWords animal) => new(animal.Tags.Count == 0 ? null : animal.Tags[0], Genotype(animal));

    private static string Genotype(RouteAnimalWords animal) => $"{(animal.Sex == Genetics.Loci.Sex.Male ? "1.0" : "0.1")} {animal.Words.Text}";

    private sealed record Planned(double Chance, IReadOnlyList<double> ChanceBySeason, IReadOnlyList<AdoptedStep> Steps);

    private sealed record Asked(
        IReadOnlyList<string> Buy,
        double Rearing,
        int? MostRaised,
        int MostDams,
        double? MostInbreeding,
        double ClutchCost,
        double AnimalCost,
        double BoughtCost,
        IReadOnlyList<string> Lifted,
        int? Eggs,
        int? Laid,
        double? Fertility,
        double? HatchRate,
        IReadOnlyDictionary<string, double> Recombination)
    {
        public static Asked Of(RoutesQuestion question) => new(
            question.Buy,
            question.Rearing,
            question.MostRaised,
            question.MostDams,
            question.MostInbreeding,
            question.Costs.Clutch,
            question.Costs.Animal,
            question.Costs.Bought,
            question.Lifted,
            question.Clutch.Eggs,
            question.Clutch.Laid,
            question.Clutch.Fertility,
            question.Clutch.HatchRate,
            question.Recombination);

        public RoutesQuestion ToQuestion(string want, int seasons) => new(want)
        {
            Seasons = seasons,
            Buy = Buy,
            Rearing = Rearing,
            MostRaised = MostRaised,
            MostDams = MostDams,
            MostInbreeding = MostInbreeding,
            Costs = (ClutchCost, AnimalCost, BoughtCost),
            Lifted = Lifted,
            Clutch = new ClutchSetting(Eggs, Fertility, HatchRate) { Laid = Laid },
            Recombination = Recombination,
        };
    }
}
