using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Happenings;

/// <summary>What happened, to one animal or to all?</summary>
public sealed class ListHappenings
{
    private readonly OpenBook _book;

    internal ListHappenings(OpenBook book) => _book = book;

    /// <summary>Gets everything that can be written down, in the order of a year.</summary>
    public static IReadOnlyList<HappeningKindWords> Kinds { get; } =
        [.. Enum.GetValues<HappeningKind>().Select(k => new HappeningKindWords(k.ToString(), HappeningRules.Words(k), HappeningRules.Unit(k), HappeningRules.IsOfAPair(k)))];

    /// <summary>Lists it, the latest first.</summary>
    /// <param name="tag">The animal, also as the other of a pair; <c>null</c>: all.</param>
    /// <param name="kinds">Only these, by name; empty: all.</param>
    /// <param name="most">How many at most.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<Answer<IReadOnlyList<HappeningWords>>> RunAsync(string? tag, IReadOnlyList<string> kinds, int most, CancellationToken cancel)
    {
        AnimalId? animal = null;
        if (tag is not null)
        {
            var found = await Find.ByTagAsync(_book, tag, cancel);
            if (found.Value is not { } record)
            {
                return found.Problems.ToArray();
            }

            animal = record.Animal.AnimalId;
        }

        var problems = new List<AskedWrongly>();
        HappeningKind[] asked = [.. kinds.Select(k => Kind(k, problems)).OfType<HappeningKind>()];
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var lines = (await new Stock.Happenings.ListHappenings(_book.Book).RunAsync(animal, asked, Math.Max(1, most), cancel)).Expect();
        var clutches = animal is { } parent && (asked.Length == 0 || asked.Contains(HappeningKind.Laid))
            ? (await new Stock.Clutches.ListClutches(_book.Book).OfParentAsync(parent, cancel)).Expect().Where(c => c.Clutch.DamId == parent).SelectMany(OfClutch)
            : [];
        return Answer.Of<IReadOnlyList<HappeningWords>>([.. lines.Select(Words).Concat(clutches).OrderByDescending(l => l.Day).Take(Math.Max(1, most))]);
    }

    internal static HappeningWords Words(HappeningLine line) => new(
        line.HappeningId.Value,
        line.Version,
        line.Tag,
        line.Mate,
        line.Clutch,
        line.Kind.ToString(),
        HappeningRules.Words(line.Kind, line.Amount, string.Empty),
        line.When.ToText(),
        line.When.Latest,
        line.Amount,
        HappeningRules.Unit(line.Kind),
        line.Text);

    // What was laid and hatched stands in its clutch.
    private static IEnumerable<HappeningWords> OfClutch(Stock.Clutches.ClutchLine line)
    {
        var clutch = line.Clutch;
        yield return Line("Laid", HappeningRules.Words(HappeningKind.Laid, clutch.GoodEggs is > 0 and var good ? good : null, string.Empty), clutch.Laid, clutch.GoodEggs, "eggs");
        if (clutch.Hatched is { } hatched)
        {
            yield return Line("Hatched", $"{line.HatchedCount} hatched", hatched, line.HatchedCount, null);
        }

        HappeningWords Line(string kind, string what, DateRange day, double? amount, string? unit) =>
            new(Guid.Empty, Guid.Empty, line.Dam, null, clutch.Tag, kind, what, day.ToText(), day.Latest, amount, unit, string.Empty);
    }

    /// <summary>Reads a kind, by its name, its words or the trade's, any case.</summary>
    internal static HappeningKind? Kind(string text, List<AskedWrongly> problems)
    {
        var asked = text.Trim();
        if (KindText.Read(asked) is { } kind)
        {
            return kind;
        }

        problems.Add(new("kind", $"\"{asked}\" is nothing that can be written down. One of: {string.Join(", ", Enum.GetValues<HappeningKind>().Select(HappeningRules.Words))}.",
            DidYouMean: NearWords.Of(asked, Enum.GetValues<HappeningKind>().Select(HappeningRules.Words))));
        return null;
    }
}
