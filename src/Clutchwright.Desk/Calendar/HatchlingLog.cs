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
    /// <summary>A shed later than that after hatching is not its first.</summary>
    public const int MostToShedDays = 40;

    public DateRange? FirstShed { get; init; }

    public DateRange? FirstMeal { get; init; }

    /// <summary>Gets with whom it is alike: its siblings of all years.</summary>
    public string Family => Dam ?? Tag;

    /// <summary>The hatchlings of a stock.</summary>
    public static List<HatchlingLog> Of(CalendarStock stock, IReadOnlyDictionary<AnimalId, AnimalFirsts> firsts, DateOnly on)
    {
        var young = new List<HatchlingLog>();
        foreach (var animal in stock.Animals.Where(a => a.Hatched is { } h && h.Earliest <= on))
        {
            var hatched = animal.Hatched!;
            var (shed, meal) = firsts.GetValueOrDefault(animal.AnimalId) is { } first ? (first.Shed, first.Meal) : (null, null);
            if (shed is not null || meal is not null || on.DayNumber - hatched.Latest.DayNumber <= 120)
            {
                young.Add(new(animal.AnimalId, animal.Tag, animal.DamId is { } dam ? stock.Find(dam)?.Tag : null, hatched, animal.Status.IsHere())
                {
                    FirstShed = shed,
                    FirstMeal = meal is not null && (shed is null || meal.Latest >= shed.Earliest) ? meal : null,
                });
            }
        }

        return young;
    }
}
