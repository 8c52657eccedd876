using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Import;

/// <summary>What a file of clutches is held against.</summary>
/// <param name="Animals">Every animal, in the bin or not.</param>
/// <param name="Clutches">Every clutch out of the bin.</param>
/// <param name="Incubators">Every incubator, in use or not.</param>
/// <param name="Lost">By clutch, how many good eggs are written down as lost.</param>
internal sealed record ClutchesInBook(
    IReadOnlyDictionary<AnimalId, Animal> Animals, IReadOnlyList<Clutch> Clutches, IReadOnlyDictionary<IncubatorId, Incubator> Incubators, IReadOnlyDictionary<ClutchId, int> Lost)
{
    private readonly ILookup<ClutchId, Animal> _young =
        Animals.Values.Where(a => a.BinnedAt is null && a.ClutchId is not null).ToLookup(a => a.ClutchId!.Value);

    /// <summary>The animals out of the bin, by the keys of their ids.</summary>
    public IReadOnlyDictionary<string, Animal> ByTag { get; } = Animals.Values.Where(a => a.BinnedAt is null).ToDictionary(a => a.TagKey, StringComparer.Ordinal);

    public static async Task<ClutchesInBook> LoadAsync(StockContext db, CancellationToken cancellation)
    {
        var lost = await db.Happenings.AsNoTracking()
            .Where(h => h.WithdrawnAt == null && h.Kind == HappeningKind.EggsLost && h.ClutchId != null)
            .Select(h => new { h.ClutchId, h.Amount })
            .ToListAsync(cancellation);
        return new(
            await db.Animals.AsNoTracking().ToDictionaryAsync(a => a.AnimalId, cancellation),
            await db.Clutches.AsNoTracking().Where(c => c.BinnedAt == null).ToListAsync(cancellation),
            await db.Incubators.AsNoTracking().ToDictionaryAsync(i => i.IncubatorId, cancellation),
            lost.GroupBy(h => h.ClutchId!.Value).ToDictionary(same => same.Key, same => (int)same.Sum(h => h.Amount ?? 0.0)));
    }

    /// <summary>A clutch as a file would have it.</summary>
    public ClutchRow ToRow(Clutch clutch) => new()
    {
        Row = 0,
        Line = 0,
        Tag = clutch.Tag,
        Dam = Animals[clutch.DamId].Tag,
        Sires = [.. clutch.Sires.Select(id => Animals[id].Tag)],
        Laid = clutch.Laid,
        GoodEggs = clutch.GoodEggs,
        Slugs = clutch.Slugs,
        Lost = Lost.TryGetValue(clutch.ClutchId, out var lost) ? lost : null,
        MassGrams = clutch.MassGrams,
        Incubator = clutch.IncubatorId is { } incubator ? Incubators[incubator].Name : null,
        Hatched = clutch.Hatched,
        Counted = clutch.Counted,
        Young = [.. _young[clutch.ClutchId].Select(a => a.Tag)],
        Notes = clutch.Notes,
    };
}
