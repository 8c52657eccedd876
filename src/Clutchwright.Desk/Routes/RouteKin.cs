using Clutchwright.Planning.Routes;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Routes;

/// <summary>How related the animals of a route are: by the recorded pedigree, and by the route itself.</summary>
internal sealed class RouteKin
{
    private readonly Kin.KinStock _kin;
    private readonly RouteStock _stock;
    private readonly Dictionary<AnimalId, int> _positions = [];

    public RouteKin(IReadOnlyList<Animal> animals, RouteStock stock)
    {
        _kin = new Kin.KinStock(animals);
        _stock = stock;
        for (var i = 0; i < animals.Count; i++)
        {
            _positions.Add(animals[i].AnimalId, _kin.PositionOf(i));
        }
    }

    /// <summary>The inbreeding expected of young of two animals of the problem.</summary>
    public double Between(int first, int second) => Place(first) is { } a && Place(second) is { } b ? _kin.Reckoner.Between(a, b) : 0.0;

    /// <summary>The expected inbreeding of the young of each step; of animals that are alike the first is taken.</summary>
    public IReadOnlyList<double> Of(Route route)
    {
        var count = route.Roles.Count;
        var kinship = new double[count, count];
        for (var i = 0; i < count; i++)
        {
            var role = route.Roles[i];
            for (var j = 0; j <= i; j++)
            {
                kinship[i, j] = kinship[j, i] = role.FromStep is { } from
                    ? i == j
                        ? 0.5 * (1.0 + kinship[route.Steps[from].Sire, route.Steps[from].Dam])
                        : 0.5 * (kinship[route.Steps[from].Sire, j] + kinship[route.Steps[from].Dam, j])
                    : route.Roles[j].FromStep is null
                        ? i == j && Place(role.Animals[0]) is { } self ? 0.5 * (1.0 + _kin.Reckoner.Inbreeding[self])
                            : i == j ? 0.5
                            : Between(role.Animals[0], route.Roles[j].Animals[0])
                        : 0.5 * (kinship[route.Steps[route.Roles[j].FromStep!.Value].Sire, i] + kinship[route.Steps[route.Roles[j].FromStep!.Value].Dam, i]);
            }
        }

        return [.. route.Steps.Select(s => kinship[s.Sire, s.Dam])];
    }

    private int? Place(int animal) => _stock.Kept(animal) is { } kept ? _positions[kept.Animal.AnimalId] : null;
}
