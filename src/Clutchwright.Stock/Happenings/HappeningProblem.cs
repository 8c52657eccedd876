using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Happenings;

/// <summary>Why something that happened cannot be written down.</summary>
public abstract record HappeningProblem : Problem
{
    private HappeningProblem()
    {
    }

    public sealed record KindUnknown(string Kind) : HappeningProblem;

    public sealed record InTheFuture(DateRange When) : HappeningProblem;

    public sealed record BeforeItHatched(string Tag, DateRange Hatched, DateRange When) : HappeningProblem;

    /// <summary>The amount is missing where the kind asks for one, is out of range, or is not asked for.</summary>
    public sealed record AmountNotFitting(HappeningKind Kind, double? Amount, string? Unit, double Most) : HappeningProblem;

    /// <summary>The other animal is missing where the kind is about a pair, or named where it is not.</summary>
    public sealed record MateNotFitting(HappeningKind Kind) : HappeningProblem;

    /// <summary>The clutch is missing where the kind is about one, or named where it is not.</summary>
    public sealed record ClutchNotFitting(HappeningKind Kind) : HappeningProblem;

    /// <summary>The animal has no such clutch.</summary>
    public sealed record ClutchNotFound : HappeningProblem;

    /// <summary>What was laid is written down as a clutch.</summary>
    public sealed record WrittenAsClutch : HappeningProblem;

    public sealed record BeforeItWasLaid(string Clutch, DateRange Laid, DateRange When) : HappeningProblem;

    public sealed record MateNotFound : HappeningProblem;

    public sealed record NoPair(string Tag, string Mate) : HappeningProblem;

    public sealed record NotOfAMale(string Tag, HappeningKind Kind) : HappeningProblem;

    /// <summary>The text is missing where the kind asks for one, or cannot be kept.</summary>
    public sealed record TextNotFitting(HappeningKind Kind, int MaxLength) : HappeningProblem;

    /// <summary>Everything that is wrong.</summary>
    public sealed record Refused(IReadOnlyList<HappeningProblem> Problems) : HappeningProblem;

    /// <summary>Each line of a round that is wrong.</summary>
    public sealed record RoundRefused(IReadOnlyList<Happenings.RoundRefused> Lines) : HappeningProblem;

    public sealed record NotFound(HappeningId Happening) : HappeningProblem;

    public sealed record AlreadyWithdrawn(HappeningId Happening) : HappeningProblem;

    /// <summary>Somebody else changed it meanwhile.</summary>
    public sealed record ChangedSince(HappeningId Happening) : HappeningProblem;
}
