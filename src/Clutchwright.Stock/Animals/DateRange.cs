using System.Globalization;

namespace Clutchwright.Stock.Animals;

/// <summary>A day that may be known only roughly: it lies somewhere from <see cref="Earliest"/> to <see cref="Latest"/>, both
/// included, and <see cref="Words"/> is how the keeper put it. Equality compares all three.</summary>
public sealed record DateRange
{
    public const int MaxWordsLength = 200;

    public DateRange(DateOnly earliest, DateOnly latest, string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        if (latest < earliest)
        {
            throw new ArgumentOutOfRangeException(nameof(latest), latest, "A range of days ends no earlier than it begins.");
        }

        if (string.IsNullOrWhiteSpace(words) || words.Length > MaxWordsLength || !TextRules.IsPlainLine(words))
        {
            throw new ArgumentException($"The words of a date are one line of 1 to {MaxWordsLength} characters.", nameof(words));
        }

        Earliest = earliest;
        Latest = latest;
        Words = words.Trim();
    }

    public DateOnly Earliest { get; private init; }

    public DateOnly Latest { get; private init; }

    public string Words { get; private init; }

    public bool IsExact => Earliest == Latest;

    public static DateRange On(DateOnly day) => new(day, day, DateWords.Iso(day));

    /// <summary>Reads a date as a keeper writes it; the forms are those of <see cref="DateWords"/>.</summary>
    public static Outcome<DateRange> Read(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return DateWords.Read(words) is { } range ? range : new AnimalProblem.DateUnreadable(words);
    }

    /// <summary>Text that <see cref="Read"/> gives this very range for: the keeper's words where they say it all, else the two
    /// days with the words in brackets.</summary>
    public string ToText() => DateWords.Read(Words) == this
        ? Words
        : string.Create(CultureInfo.InvariantCulture, $"{DateWords.Iso(Earliest)} to {DateWords.Iso(Latest)} ({Words})");

    public override string ToString() => ToText();
}
