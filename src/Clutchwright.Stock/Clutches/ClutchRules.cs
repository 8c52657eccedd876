using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Clutches;

/// <summary>The rules that hold between a clutch and the rest of the book.</summary>
internal static class ClutchRules
{
    /// <summary>Everything that is wrong with a clutch as it is entered; empty: nothing.</summary>
    /// <param name="db">The book.</param>
    /// <param name="clutch">The clutch that is changed; null: a new one.</param>
    /// <param name="entry">What is entered.</param>
    /// <param name="check">Reads trade text.</param>
    /// <param name="now">UTC.</param>
    /// <param name="cancellation">Stops.</param>
    public static async Task<IReadOnlyList<Problem>> WhyNotAsync(
        StockContext db, Clutch? clutch, ClutchEntry entry, CheckTradeText check, DateTime now, CancellationToken cancellation)
    {
        AnimalId[] named = [entry.DamId, .. entry.Sires];
        var parents = await db.Animals.AsNoTracking().IgnoreAutoIncludes().Where(a => named.Contains(a.AnimalId)).ToDictionaryAsync(a => a.AnimalId, cancellation);
        var problems = WhyNot(clutch, entry, parents, check, now).ToList();
        var key = Tags.Key(entry.Tag);
        var known = clutch?.ClutchId ?? default;
        if (await db.Clutches.AnyAsync(c => c.TagKey == key && c.BinnedAt == null && c.ClutchId != known, cancellation))
        {
            problems.Add(new ClutchProblem.TagTaken(entry.Tag.Trim()));
        }

        // One that was put out of use since may stay named.
        if (entry.IncubatorId is { } incubator && clutch?.IncubatorId != incubator
            && !await db.Incubators.AnyAsync(i => i.IncubatorId == incubator && i.RetiredAt == null, cancellation))
        {
            problems.Add(new ClutchProblem.IncubatorNotFound());
        }

        return problems;
    }

    /// <summary>What is wrong with a clutch by itself, with its days and with its parents.</summary>
    /// <param name="clutch">The clutch that is changed; null: a new one.</param>
    /// <param name="entry">What is entered.</param>
    /// <param name="animals">At least every animal that is named and in the book, in the bin or not.</param>
    /// <param name="check">Reads trade text.</param>
    /// <param name="now">UTC.</param>
    public static IEnumerable<Problem> WhyNot(Clutch? clutch, ClutchEntry entry, IReadOnlyDictionary<AnimalId, Animal> animals, CheckTradeText check, DateTime now)
    {
        // The keeper may be where it is a day later already than in UTC.
        var today = DateOnly.FromDateTime(now).AddDays(1);
        return Clutch.WhyNot(entry)
            .Concat<Problem>(new[] { entry.Laid, entry.Hatched }.OfType<DateRange>().Where(day => day.Earliest > today).Select(day => new ClutchProblem.InTheFuture(day)))
            .Concat(entry.Counted.SelectMany(counted => Statement.WhyNot(new StatementEntry { Kind = StatementKind.Seen, Text = counted.Seen }, check)
                .Select(p => p.Problem is StatementProblem.TextUnreadable wrong ? new ClutchProblem.SeenUnreadable(counted.Seen, wrong.Trade) : p.Problem)))
            .Concat(WhyNotParents(clutch, entry, animals));
    }

    private static IEnumerable<Problem> WhyNotParents(Clutch? clutch, ClutchEntry entry, IReadOnlyDictionary<AnimalId, Animal> animals)
    {
        AnimalId[] named = [entry.DamId, .. entry.Sires];
        foreach (var (id, sex) in named.Select((id, i) => (id, i == 0 ? Sex.Female : Sex.Male)))
        {
            // A parent that went to the bin since may stay.
            var stays = clutch is not null && (sex == Sex.Female ? clutch.DamId == id : clutch.Sires.Contains(id));
            if (!animals.TryGetValue(id, out var parent) || (parent.BinnedAt is not null && !stays))
            {
                yield return sex == Sex.Female ? new ClutchProblem.DamNotFound() : new ClutchProblem.SireNotFound();
                continue;
            }

            if (parent.Sex is { } own && own != sex)
            {
                yield return sex == Sex.Female ? new ClutchProblem.DamIsMale(parent.Tag) : new ClutchProblem.SireIsFemale(parent.Tag);
            }

            if (parent.Hatched is { } hatched && hatched.Earliest >= entry.Laid.Latest)
            {
                yield return new ClutchProblem.ParentNotOlder(parent.Tag, hatched, entry.Laid);
            }
        }
    }
}
