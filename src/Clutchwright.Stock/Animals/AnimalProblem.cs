using Clutchwright.Genetics.Loci;

namespace Clutchwright.Stock.Animals;

/// <summary>A problem with one field of what was entered; the field is null where none is to blame alone.</summary>
public sealed record FieldProblem(AnimalField? Field, Problem Problem);

/// <summary>Why an animal cannot be as it was entered.</summary>
public abstract record AnimalProblem : Problem
{
    private AnimalProblem()
    {
    }

    public sealed record TagInvalid(string Tag) : AnimalProblem;

    public sealed record TagTaken(string Tag) : AnimalProblem;

    public sealed record TextInvalid(int MaxLength, bool OneLine) : AnimalProblem;

    public sealed record DateUnreadable(string Words) : AnimalProblem;

    public sealed record MassOutOfRange(double MassGrams) : AnimalProblem;

    public sealed record MassUnreadable(string Text) : AnimalProblem;

    public sealed record StatusUnknown(string Text) : AnimalProblem;

    public sealed record SexUnknown(string Text) : AnimalProblem;

    /// <summary>Possible sires together with a certain one, or fewer than two of them.</summary>
    public sealed record PossibleSiresNotSeveral : AnimalProblem;

    /// <summary>No animal of this id is in the book, or it is in the bin.</summary>
    public sealed record NotFound(AnimalId Animal) : AnimalProblem;

    /// <summary>No animal of this tag is in the book.</summary>
    public sealed record NoSuchTag(string Tag, string? Nearest) : AnimalProblem;

    /// <summary>The sire or dam is in the bin or was never in the book.</summary>
    public sealed record ParentNotFound(AnimalId Parent) : AnimalProblem;

    public sealed record ParentOfWrongSex(string Parent, Sex Sex) : AnimalProblem;

    /// <summary>An unsexed animal recorded as a sire here and as a dam there.</summary>
    public sealed record BothSireAndDam(string Parent) : AnimalProblem;

    /// <summary>The sex does not fit the offspring that the animal is recorded as a sire or dam of.</summary>
    public sealed record SexContradictsOffspring(Sex Sex, string Offspring) : AnimalProblem;

    public sealed record ParentNotOlder(string Parent, DateRange ParentHatched, string Offspring, DateRange OffspringHatched) : AnimalProblem;

    /// <summary>Each is the offspring of the next, and the last is the offspring of the first.</summary>
    public sealed record OwnAncestor : AnimalProblem
    {
        public OwnAncestor(IReadOnlyList<string> loop) => Loop = loop;

        public IReadOnlyList<string> Loop { get; }
    }

    /// <summary>Someone else changed the record since it was read.</summary>
    public sealed record ChangedSince(string Tag) : AnimalProblem;

    /// <summary>A parent of animals in the book cannot go to the bin.</summary>
    public sealed record HasOffspring(string Tag) : AnimalProblem
    {
        public required IReadOnlyList<string> Offspring { get; init; }
    }

    public sealed record AlreadyBinned(string Tag) : AnimalProblem;

    public sealed record NotBinned(string Tag) : AnimalProblem;

    /// <summary>Everything that is wrong with what was entered.</summary>
    public sealed record Refused : AnimalProblem
    {
        public Refused(IReadOnlyList<FieldProblem> problems) => Problems = problems;

        public IReadOnlyList<FieldProblem> Problems { get; }

        public override string ToString() => $"Refused: {string.Join("; ", Problems)}";
    }
}
