using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Clutches;

/// <summary>Why a clutch cannot be as it was entered.</summary>
public abstract record ClutchProblem : Problem
{
    private ClutchProblem()
    {
    }

    public sealed record TagInvalid(string Tag) : ClutchProblem;

    public sealed record TagTaken(string Tag) : ClutchProblem;

    public sealed record EggsOutOfRange(int Number, int Most) : ClutchProblem;

    public sealed record MassOutOfRange(double MassGrams, double Most) : ClutchProblem;

    public sealed record HatchedBeforeLaid(DateRange Laid, DateRange Hatched) : ClutchProblem;

    public sealed record InTheFuture(DateRange When) : ClutchProblem;

    public sealed record SireTwice : ClutchProblem;

    public sealed record SireIsDam : ClutchProblem;

    public sealed record CountOutOfRange(string Seen, int Count, int Most) : ClutchProblem;

    /// <summary>What counted young show cannot be read.</summary>
    public sealed record SeenUnreadable(string Seen, TradeTextProblem Trade) : ClutchProblem;

    public sealed record NotesInvalid(int MaxLength) : ClutchProblem;

    public sealed record DamNotFound : ClutchProblem;

    public sealed record SireNotFound : ClutchProblem;

    public sealed record DamIsMale(string Tag) : ClutchProblem;

    public sealed record SireIsFemale(string Tag) : ClutchProblem;

    /// <summary>A parent hatched after the clutch was laid.</summary>
    public sealed record ParentNotOlder(string Parent, DateRange Hatched, DateRange Laid) : ClutchProblem;

    public sealed record IncubatorNotFound : ClutchProblem;

    /// <summary>No such clutch is in the book, or it is in the bin.</summary>
    public sealed record NotFound(string Clutch) : ClutchProblem;

    /// <summary>Young of it are in the book, so it cannot go to the bin.</summary>
    public sealed record HasYoung(string Tag) : ClutchProblem
    {
        public required IReadOnlyList<string> Young { get; init; }
    }

    public sealed record AlreadyBinned(string Tag) : ClutchProblem;

    public sealed record NotBinned(string Tag) : ClutchProblem;

    /// <summary>Somebody else changed it meanwhile.</summary>
    public sealed record ChangedSince(string Tag) : ClutchProblem;

    /// <summary>More young than good eggs: twins happen, slips of the pen more often. Said again it is taken.</summary>
    public sealed record MoreThanLaid(string Tag, int GoodEggs, int Young) : ClutchProblem;

    /// <summary>What is wrong with the young as an animal.</summary>
    public sealed record YoungRefused(IReadOnlyList<FieldProblem> Problems) : ClutchProblem;

    /// <summary>Everything that is wrong.</summary>
    public sealed record Refused(IReadOnlyList<Problem> Problems) : ClutchProblem;
}
