using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Routes;
using Clutchwright.Planning.Schemes;

namespace Clutchwright.Desk.Routes;

/// <summary>Puts a route into the keeper's words.</summary>
internal sealed class RouteWording(OpenCatalogue catalogue, RouteProblem problem, RouteStock stock, RouteKin kin)
{
    private static readonly Probability NineInTen = Probability.Ratio(9, 10);

    public RouteWords Of(int number, Route route)
    {
        var insight = RouteInsight.Of(problem, route);
        var inbreeding = kin.Of(route);
        var names = Names(route);
        RouteAnimalWords[] animals = [.. route.Roles.Select((r, i) => Animal(r, names[i], insight.WithSecond[i]))];
        var shares = RiskShares.LeastOfFailures([.. route.Steps.Select(s => Math.Clamp(1.0 - s.Success, 0.0, 1.0))], NineInTen.Value).Tries;
        RouteStepWords[] steps = [.. route.Steps.Select((s, i) => Step(route, s, inbreeding[i], shares[i], animals))];
        return new(
            number,
            route.FirstSeason,
            Probability.Rounded(route.Chance),
            [.. route.ChanceBySeason.Skip(1)],
            route.Clutches,
            route.Raised,
            route.Price,
            route.Cost,
            inbreeding[^1],
            steps,
            animals,
            insight.Weakest is { } weakest ? (weakest, insight.IfCertain[weakest]) : null,
            [.. Goals(route)])
        {
            Reaches = problem.Want.Alternatives.Count > 1 ? Reached(problem.Want.Alternatives[route.Alternative]) : null,
        };
    }

    // The least that will do of the alternative: the fewest mutant alleles at each locus.
    private string Reached(WantedGenotype wanted)
    {
        var sex = wanted.Sex ?? Sex.Female;
        var genotype = Genotype.Wild(catalogue.Species, sex);
        foreach (var condition in wanted.Loci)
        {
            var ordered = condition.Locus.Group.IsSex && sex == catalogue.Species.SexSystem.Heterogametic();
            var (first, second) = condition.Locus.Alleles
                .SelectMany(a => condition.Locus.Alleles.Select(b => (First: a.Index, Second: b.Index)))
                .Where(p => condition.Allows(p.First, p.Second, ordered))
                .MinBy(p => (p.First == 0 ? 0 : 1) + (p.Second == 0 ? 0 : 1));
            genotype = genotype.With(condition.Locus, first, second);
        }

        var text = catalogue.Catalogue.Trade.Write(genotype);
        return wanted.Sex is not null || !text.StartsWith("0.1 ", StringComparison.Ordinal) ? text : text[4..];
    }

    private static string[] Names(Route route)
    {
        var names = new string[route.Roles.Count];
        var letter = 0;
        for (var i = 0; i < names.Length; i++)
        {
            names[i] = route.Roles[i].FromStep is null ? string.Empty : Letter(letter++);
        }

        return names;

        static string Letter(int index) => index < 26 ? ((char)('A' + index)).ToString() : $"{(char)('A' + (index % 26))}{index / 26}";
    }

    private RouteAnimalWords Animal(RouteRole role, string letter, double? second)
    {
        string[] tags = [.. role.Animals.Where(a => stock.Kept(a) is not null).Select(stock.Text)];
        var price = role.FromStep is null && tags.Length == 0 ? problem.Animals[role.Animals[0]].Price : null;
        var name = role.FromStep is not null ? letter : tags.Length > 0 ? tags[0] : stock.Text(role.Animals[0]);
        return new(
            name, tags, role.Sex, catalogue.Wording.Animal(GenotypeBelief.Certain(role.Genotype)), price, role.FromStep, role.Count, role.Trust, second, role.Ready);
    }

    private static RouteStepWords Step(Route route, RouteStep step, double inbreeding, int seasons, RouteAnimalWords[] animals)
    {
        var eggs = step.Seen.Select(seen => SharedChance.Certain(Probability.Rounded(seen)).EggsFor(NineInTen)).ToArray();
        return new(
            step.Season, step.Sire, step.Dam, step.Dams, step.Keep, step.Seen, step.Success,
            eggs.Any(e => e is null) ? null : eggs.Max(), inbreeding, seasons, Why(route, step, animals));
    }

    private static string Why(Route route, RouteStep step, RouteAnimalWords[] animals)
    {
        if (step.Keep.Count == 0)
        {
            return "Here the wanted hatches.";
        }

        var kept = animals[step.Keep[0]];
        var use = route.Steps.First(s => s.Sire == step.Keep[0] || s.Dam == step.Keep[0]);
        var mate = animals[use.Sire == step.Keep[0] ? use.Dam : use.Sire];
        var who = step.Keep.Count == 2
            ? $"A brother and a sister, {kept.Words.Text}, are kept for each other"
            : $"{(kept.Count > 1 ? $"{kept.Count} {(kept.Sex == Sex.Male ? "sons" : "daughters")}" : kept.Sex == Sex.Male ? "A son" : "A daughter")}, {kept.Words.Text}, {(kept.Count > 1 ? "are" : "is")} kept for {mate.Name}";
        return kept.Trust < 1.0 - 1e-9
            ? $"{who}; of those that look so, {OddsText.Percent(Probability.Rounded(kept.Trust))} are."
            : $"{who}.";
    }

    // What the first season has to give for the route.
    private IEnumerable<RouteGoal> Goals(Route route)
    {
        foreach (var step in route.Steps.Where(s => s.Season == 1))
        {
            var (sire, dam) = (route.Roles[step.Sire], route.Roles[step.Dam]);
            if (step.Keep.Count == 0)
            {
                yield return new(Tag(sire), Tag(dam), string.Empty, 1);
            }

            foreach (var keep in step.Keep)
            {
                var role = route.Roles[keep];
                yield return new(Tag(sire), Tag(dam), catalogue.Catalogue.Trade.Write(role.Genotype), role.Count);
            }
        }

        string Tag(RouteRole role) => stock.Text(role.Animals[0]);
    }
}
