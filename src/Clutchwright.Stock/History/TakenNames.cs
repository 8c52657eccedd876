using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>Records that are brought back and whose name another record has had since. The ids of animals have rules of their own.</summary>
internal static class TakenNames
{
    /// <summary>The first one among the records of the context, with what it is called; null: none.</summary>
    public static async Task<(string Label, Problem Taken)?> OfAsync(StockContext db, CancellationToken cancellation)
    {
        foreach (var season in db.Seasons.Local)
        {
            if (await db.Seasons.AnyAsync(s => s.Year == season.Year && s.KeptSeasonId != season.KeptSeasonId, cancellation))
            {
                return (season.ToString(), new SeasonProblem.ChangedSince(season.Year));
            }
        }

        foreach (var clutch in db.Clutches.Local.Where(c => c.BinnedAt is null))
        {
            if (await db.Clutches.AnyAsync(c => c.TagKey == clutch.TagKey && c.BinnedAt == null && c.ClutchId != clutch.ClutchId, cancellation))
            {
                return (clutch.ToString(), new ClutchProblem.TagTaken(clutch.Tag));
            }
        }

        foreach (var setting in db.Settings.Local)
        {
            if (await db.Settings.AnyAsync(s => s.Name == setting.Name && s.SettingId != setting.SettingId, cancellation))
            {
                return (setting.ToString()!, new HistoryProblem.NameTaken(setting.Name));
            }
        }

        return null;
    }
}
