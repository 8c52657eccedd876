using Clutchwright.Stock.Clutches;

namespace Clutchwright.Desk.Clutches;

/// <summary>Puts clutches into words.</summary>
internal static class ClutchWording
{
    public static ClutchWords Words(ClutchLine line, DateOnly today)
    {
        var clutch = line.Clutch;
        int? left = clutch.GoodEggs is { } good ? Math.Max(0, good - line.Lost - line.HatchedCount) : null;
        return new(
            clutch.ClutchId.Value,
            clutch.Version,
            clutch.Tag,
            line.Dam,
            line.Sires,
            clutch.Laid.ToText(),
            clutch.Laid.Latest,
            clutch.GoodEggs,
            clutch.Slugs,
            clutch.MassGrams,
            line.Incubator,
            line.Lost,
            line.Pipped?.ToText(),
            clutch.Hatched?.ToText(),
            line.HatchedCount,
            left,
            left == 0 || (left is null && clutch.Hatched is not null) ? ClutchStage.Over
            : line.Pipped is not null || clutch.Hatched is not null ? ClutchStage.Hatching
            : ClutchStage.Eggs)
        {
            Days = Math.Max(0, today.DayNumber - clutch.Laid.Latest.DayNumber),
            IsInBin = clutch.BinnedAt is not null,
            Notes = clutch.Notes,
        };
    }
}
