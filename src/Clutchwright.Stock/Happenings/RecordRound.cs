using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Happenings;

/// <summary>One line of a round through the room.</summary>
/// <param name="Animal">The animal.</param>
/// <param name="Entry">What happened: a meal, food refused, a shed or a weighing.</param>
public sealed record RoundLine(AnimalId Animal, HappeningEntry Entry);

/// <summary>Writes down what one round through the room brought, of many animals in one deed: all of it or nothing.</summary>
public sealed class RecordRound(Book book)
{
    /// <returns>The deed that undoing takes back as a whole; <see cref="HappeningProblem.RoundRefused"/> with each line that is wrong.</returns>
    /// <exception cref="ArgumentException">There is no line, or a kind that no round writes down.</exception>
    public Task<Outcome<DeedLine>> RunAsync(IReadOnlyList<RoundLine> lines, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(lines);
        if (lines.Count == 0 || lines.Any(l => l.Entry.Kind is not (HappeningKind.Fed or HappeningKind.FoodRefused or HappeningKind.Shed or HappeningKind.Weighed)))
        {
            throw new ArgumentException("A round has lines, each of a meal, food refused, a shed or a weighing.", nameof(lines));
        }

        return book.WriteAsync<DeedLine>(
            async db =>
            {
                var animals = await AnimalsAsync(db, lines, cancellation);
                var today = DateOnly.FromDateTime(book.Now).AddDays(1);
                var refused = new List<RoundRefused>();
                for (var i = 0; i < lines.Count; i++)
                {
                    if (!animals.TryGetValue(lines[i].Animal, out var animal))
                    {
                        refused.Add(new RoundRefused(i, null, new AnimalProblem.NotFound(lines[i].Animal)));
                    }
                    else
                    {
                        refused.AddRange(HappeningRules.WhyNot(animal, null, null, lines[i].Entry, today).Select(problem => new RoundRefused(i, animal.Tag, problem)));
                    }
                }

                if (refused.Count > 0)
                {
                    return new HappeningProblem.RoundRefused(refused);
                }

                foreach (var line in lines)
                {
                    var happening = new Happening(HappeningId.New(), line.Animal, line.Entry);
                    if (line.Entry.Kind == HappeningKind.Weighed
                        && !await RecordHappening.HasLaterWeighingAsync(db, line.Animal, line.Entry.When.Latest, happening.HappeningId, cancellation))
                    {
                        animals[line.Animal].Weigh(line.Entry.Amount!.Value);
                    }

                    db.Happenings.Add(happening);
                }

                var deed = await db.RecordAsync(who, $"Wrote of a round: {Words(lines)}", book.Now, cancellation);
                return new DeedLine(deed!.DeedId, deed.When, deed.Who, deed.Words, deed.Changes.Count, null, null);
            },
            cancellation);
    }

    private static async Task<Dictionary<AnimalId, Animal>> AnimalsAsync(StockContext db, IReadOnlyList<RoundLine> lines, CancellationToken cancellation)
    {
        var animals = new Dictionary<AnimalId, Animal>();
        foreach (var ids in lines.Select(l => l.Animal).Distinct().Chunk(CurrentRecords.IdsAtOnce))
        {
            foreach (var animal in await db.Animals.Where(a => a.BinnedAt == null && ids.Contains(a.AnimalId)).ToListAsync(cancellation))
            {
                animals.Add(animal.AnimalId, animal);
            }
        }

        return animals;
    }

    private static string Words(IReadOnlyList<RoundLine> lines) => string.Join(", ", lines
        .GroupBy(l => l.Entry.Kind)
        .OrderBy(g => g.Key)
        .Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Count()} {HappeningRules.Words(g.Key)}")));
}
