using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Expectations;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Calendar;

/// <summary>Something that tells of a female's season, from the log or from a clutch.</summary>
/// <param name="Female">The female.</param>
/// <param name="Mate">The male; null: it is about none.</param>
/// <param name="Kind">What the log calls it.</param>
/// <param name="When">When.</param>
/// <param name="What">In words.</param>
internal sealed record SeasonEvent(Animal Female, string? Mate, HappeningKind Kind, DateRange When, string What)
{
    /// <summary>What of the log tells of a season.</summary>
    public static HappeningKind[] Kinds { get; } =
    [
        HappeningKind.Introduced, HappeningKind.Locked, HappeningKind.Separated, HappeningKind.FolliclesMeasured, HappeningKind.Ovulated, HappeningKind.PreLayShed,
        HappeningKind.Laid,
    ];

    /// <summary>Gets the clutch it tells of; null: none.</summary>
    public ClutchLine? Clutch { get; private init; }

    /// <summary>Gets the step that it is; null: none by itself.</summary>
    public YearStep? Step => Kind switch
    {
        HappeningKind.Introduced or HappeningKind.Locked => YearStep.Paired,
        HappeningKind.Ovulated => YearStep.Ovulation,
        HappeningKind.PreLayShed => YearStep.PreLayShed,
        HappeningKind.Laid => YearStep.Eggs,
        _ => null,
    };

    /// <summary>Everything that tells of a season.</summary>
    /// <param name="stock">The stock.</param>
    /// <param name="lines">The log, of <see cref="Kinds"/>.</param>
    /// <param name="clutches">The clutches.</param>
    public static IEnumerable<SeasonEvent> Of(CalendarStock stock, IReadOnlyList<HappeningLine> lines, IReadOnlyList<ClutchLine> clutches)
    {
        foreach (var line in lines)
        {
            if (FemaleOf(stock, line) is { } female)
            {
                var mate = string.Equals(line.Tag, female.Tag, StringComparison.OrdinalIgnoreCase) ? line.Mate : line.Tag;
                yield return new(female, mate, line.Kind, line.When, HappeningRules.Words(line.Kind, line.Amount, line.Text) + (mate is null ? string.Empty : $" with {mate}"));
            }
        }

        foreach (var clutch in clutches)
        {
            if (stock.Find(clutch.Clutch.DamId) is { } dam)
            {
                var eggs = clutch.Clutch.GoodEggs is { } good ? $" {good} good eggs" : string.Empty;
                yield return new(dam, null, HappeningKind.Laid, clutch.Clutch.Laid, $"laid clutch {clutch.Clutch.Tag}{eggs}") { Clutch = clutch };
            }
        }
    }

    // The female of a pair, on whosever page it was written.
    private static Animal? FemaleOf(CalendarStock stock, HappeningLine line)
    {
        var (animal, mate) = (stock.Find(line.Tag), line.Mate is null ? null : stock.Find(line.Mate));
        return animal?.Sex == Sex.Female ? animal
            : mate?.Sex == Sex.Female ? mate
            : animal?.Sex is null ? animal
            : mate?.Sex is null ? mate
            : null;
    }
}
