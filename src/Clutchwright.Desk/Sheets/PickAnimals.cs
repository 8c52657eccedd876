using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Sheets;

/// <summary>Which animals to choose from.</summary>
/// <param name="Find">Text to look for; <c>null</c>: any.</param>
/// <param name="Status">The status as text; <c>null</c>: any.</param>
/// <param name="ClutchOf">The tag of an animal: it and its clutchmates; <c>null</c>: any.</param>
public sealed record PickQuestion(string? Find, string? Status, string? ClutchOf);

/// <summary>Animals to choose from.</summary>
/// <param name="Animals">The animals, by tag.</param>
/// <param name="Total">How many there are in all.</param>
public sealed record PickAnswer(IReadOnlyList<AnimalLine> Animals, int Total);

/// <summary>Of which animals could sheets be printed?</summary>
public sealed class PickAnimals
{
    /// <summary>The most animals listed at once.</summary>
    public const int Most = 200;

    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _beliefs;
    private readonly ListAnimals _list;

    internal PickAnimals(OpenCatalogue catalogue, StockBeliefs beliefs, ListAnimals list) => (_catalogue, _beliefs, _list) = (catalogue, beliefs, list);

    /// <summary>Lists them, or says what was asked wrongly.</summary>
    public async Task<Answer<PickAnswer>> RunAsync(PickQuestion question, CancellationToken cancel)
    {
        if (string.IsNullOrWhiteSpace(question.ClutchOf))
        {
            var page = await _list.RunAsync(new() { Find = question.Find, Status = question.Status, PageSize = Most }, cancel);
            return new PickAnswer(page.Animals, page.Total);
        }

        var state = await _beliefs.ReadAsync(cancel);
        if (state.Find(question.ClutchOf) is not { } one)
        {
            return new AskedWrongly(
                "clutch", $"The stock has no animal '{question.ClutchOf.Trim()}'.", DidYouMean: NearWords.Of(question.ClutchOf, state.Animals.Select(a => a.Animal.Tag)));
        }

        var (record, date) = (one.Animal, one.Animal.ClutchDate());
        var mates = state.Animals
            .Where(a => a == one || (record.ClutchId is not null && a.Animal.ClutchId == record.ClutchId) || (record.DamId is not null && a.Animal.DamId == record.DamId && a.Animal.SireId == record.SireId
                && a.Animal.PossibleSireIds.SequenceEqual(record.PossibleSireIds)
                && (a.Animal.ClutchDate() == date || (record.Hatched is { } own && a.Animal.Hatched is { } other && own.Earliest.Year == other.Earliest.Year && own.Latest.Year == other.Latest.Year))))
            .Where(a => question.Status is null || string.Equals(a.Animal.Status.ToString(), question.Status, StringComparison.OrdinalIgnoreCase))
            .ToArray();
        return new PickAnswer([.. mates.Take(Most).Select(a => AnimalWording.Line(_catalogue, a))], mates.Length);
    }
}
