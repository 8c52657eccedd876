using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Seasons;

/// <summary>Why a season cannot be kept.</summary>
public abstract record SeasonProblem : Problem
{
    private SeasonProblem()
    {
    }

    public sealed record YearOutOfRange(int Year) : SeasonProblem;

    /// <summary>The goals are no JSON object, or longer than the book takes.</summary>
    public sealed record GoalsInvalid(int MaxLength) : SeasonProblem;

    /// <summary>An animal that is named is not in the book, or is in the bin.</summary>
    public sealed record AnimalNotFound(string Name, AnimalId Animal) : SeasonProblem;

    /// <summary>Somebody else changed the season meanwhile.</summary>
    public sealed record ChangedSince(int Year) : SeasonProblem;
}
