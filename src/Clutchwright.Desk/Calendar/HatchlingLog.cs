using Clutchwright.Desk.Opened;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Calendar;

/// <summary>What the book tells of the first weeks of a hatchling.</summary>
/// <param name="Id">The hatchling.</param>
/// <param name="Tag">Its tag.</param>
/// <param name="Dam">Its dam; null: not known.</param>
/// <param name="Hatched">When it hatched.</param>
/// <param name="IsHere">Whether it is in the keeper's room.</param>
internal sealed record HatchlingLog(AnimalId Id, string Tag, string? Dam, DateRange Hatched, bool IsHere)
{
    public DateRange? FirstShed { get; init; }

    public DateRange? FirstMeal { get; init; }

    /// <summary>Gets with whom it is alike: its siblings of all years.</summary>
    public string Family => Dam ?? Tag;

    /// <summary>The hatchlings of a stock.</summary>
    public static List<HatchlingLog> Of(StockState state, IReadOnlyList<HappeningLine> lines, DateOnly on)
    {
        var tags = state.Animals.ToDictionary(a => a.Animal.AnimalId, a => a.Animal.Tag);
        var first = lines.Where(l => l.When.Earliest <= on && l.Kind is HappeningKind.Shed or HappeningKind.Fed)
            .GroupBy(l => (l.Tag, l.Kind)).ToDictionary(g => g.Key, g => g.OrderBy(l => l.When.Latest).Select(l => l.When).ToArray());
        var young = new List<HatchlingLog>();
        foreach (var animal in state.Animals.Where(a => a.Animal.Hatched is { } h && h.Earliest <= on))
        {
            var (tag, hatched) = (animal.Animal.Tag, animal.Animal.Hatched!);
            var shed = first.GetValueOrDefault((tag, HappeningKind.Shed))?.FirstOrDefault(w => w.Latest > hatched.Earliest && w.Latest.DayNumber - hatched.Earliest.DayNumber <= 40);
            var meal = first.GetValueOrDefault((tag, HappeningKind.Fed))?.FirstOrDefault(w => w.Latest > hatched.Earliest);
            if (shed is not null || meal is not null || on.DayNumber - hatched.Latest.DayNumber <= 120)
            {
                young.Add(new(animal.Animal.AnimalId, tag, animal.Animal.DamId is { } dam ? tags.GetValueOrDefault(dam) : null, hatched, animal.IsHere)
                {
                    FirstShed = shed,
                    FirstMeal = meal is not null && (shed is null || meal.Latest >= shed.Earliest) ? meal : null,
                });
            }
        }

        return young;
    }
}
