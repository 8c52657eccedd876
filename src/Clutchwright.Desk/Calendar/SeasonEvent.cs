using Clutchwright.Desk.Opened;
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
internal sealed record SeasonEvent(StockAnimal Female, string? Mate, HappeningKind Kind, DateRange When, string What)
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
    /// <param name="state">The stock.</param>
    /// <param name="lines">The log, of <see cref="Kinds"/>.</param>
    /// <param name="clutches">The clutches.</param>
    public static IEnumerable<SeasonEvent> Of(StockState state, IReadOnlyList<HappeningLine> lines, IReadOnlyList<ClutchLine> clutches)
    {
        foreach (var line in lines)
        {
            if (FemaleOf(state, line) is { } female)
            {
                var mate = string.Equals(line.Tag, female.Animal.Tag, StringComparison.OrdinalIgnoreCase) ? line.Mate : line.Tag;
                yield return new(female, mate, line.Kind, line.When, HappeningRules.Words(line.Kind, line.Amount, line.Text) + (mate is null ? string.Empty : $" with {mate}"));
            }
        }

        foreach (var clutch in clutches)
        {
            if (state.Find(clutch.Clutch.DamId) is { } dam)
            {
                var eggs = clutch.Clutch.GoodEggs is { } good ? $" {good} good eggs" : string.Empty;
                yield return new(dam, null, HappeningKind.Laid, clutch.Clutch.Laid, $"laid clutch {clutch.Clutch.Tag}{eggs}") { Clutch = clutch };
            }
        }
    }

    // The female of a pair, on whosever page it was written.
    private static StockAnimal? FemaleOf(StockState state, HappeningLine line)
    {
        var (animal, mate) = (state.Find(line.Tag), line.Mate is null ? null : state.Find(line.Mate));
        return animal?.Animal.Sex == Sex.Female ? animal
            : mate?.Animal.Sex == Sex.Female ? mate
            : animal?.Animal.Sex is null ? animal
            : mate?.Animal.Sex is null ? mate
            : null;
    }
}
