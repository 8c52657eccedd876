namespace Clutchwright.Desk.Condition;

/// <summary>Whose gaps between meals a rhythm is made of.</summary>
public enum RhythmBasis
{
    /// <summary>The animal's own.</summary>
    Own = 1,

    /// <summary>Those of all animals of its age here.</summary>
    Stock,

    /// <summary>What is usual among keepers.</summary>
    Practice,
}

/// <summary>The gaps between meals, in days.</summary>
/// <param name="UsualDays">Half of the gaps are no longer.</param>
/// <param name="LongDays">Nine in ten of the gaps are no longer.</param>
/// <param name="RefusalsUsual">Nine in ten of the gaps held no more refusals.</param>
/// <param name="Gaps">How many gaps there are; 0 by practice.</param>
/// <param name="Basis">Whose they are.</param>
public sealed record FeedingRhythm(int UsualDays, int LongDays, int RefusalsUsual, int Gaps, RhythmBasis Basis)
{
    /// <summary>From so many gaps on an animal has a rhythm of its own.</summary>
    public const int OwnGaps = 8;

    /// <summary>From so many gaps on the stock has a rhythm.</summary>
    public const int StockGaps = 40;

    /// <summary>So many of the last gaps count.</summary>
    public const int MostGaps = 30;

    /// <summary>Gets from how many days without a meal on it is long: twice the gap that nine in ten do not pass.</summary>
    public int WatchDays => 2 * LongDays;

    /// <summary>The rhythm of gaps; <c>null</c>: too few.</summary>
    /// <param name="gaps">Days between meals, and refusals in between.</param>
    /// <param name="least">How many are needed.</param>
    /// <param name="basis">Whose they are.</param>
    internal static FeedingRhythm? Of(IReadOnlyCollection<FeedingGap> gaps, int least, RhythmBasis basis) => gaps.Count < least
        ? null
        : new(
            Share([.. gaps.Select(g => g.Days)], 0.5),
            Share([.. gaps.Select(g => g.Days)], 0.9),
            Share([.. gaps.Select(g => g.Refusals)], 0.9),
            gaps.Count,
            basis);

    /// <summary>The smallest of the numbers that at least this share of them does not pass.</summary>
    internal static int Share(int[] numbers, double share)
    {
        Array.Sort(numbers);
        return numbers[Math.Max(0, (int)Math.Ceiling((share * numbers.Length) - 1e-9) - 1)];
    }
}

/// <summary>The time from one meal to the next.</summary>
/// <param name="Days">At least 1.</param>
/// <param name="Refusals">Food refused in between, not counting shortly before a shed.</param>
internal readonly record struct FeedingGap(int Days, int Refusals);
