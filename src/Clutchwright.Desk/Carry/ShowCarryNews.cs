using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.History;

namespace Clutchwright.Desk.Carry;

/// <summary>Which beliefs of the stock moved since a keeper last looked through them, and which records cannot all be true?</summary>
/// <remarks>The stock as it was is reckoned back from the history and believed with the catalogue of today, so that only what was recorded
/// since counts as a move. What was reckoned last is kept.</remarks>
public sealed class ShowCarryNews : IDisposable
{
    /// <summary>A chance that moved by less is not told.</summary>
    private const double LeastMove = 0.005;

    private readonly OpenBook _book;
    private readonly StockBeliefs _beliefs;
    private readonly SemaphoreSlim _turn = new(1, 1);
    private Reckoned? _last;

    internal ShowCarryNews(OpenBook book, StockBeliefs beliefs)
    {
        _book = book;
        _beliefs = beliefs;
    }

    /// <summary>Tells what is new.</summary>
    /// <param name="mark">The mark kept when the keeper last looked; <c>null</c>, or one of another book: nothing counts as new.</param>
    /// <param name="cancel">Stops the work.</param>
    public async Task<CarryNews> RunAsync(string? mark, CancellationToken cancel)
    {
        var state = await _beliefs.ReadAsync(cancel);
        var latest = await DeedAsync(state.Latest, cancel);
        var since = await FindAsync(mark, state.Latest, cancel);
        return new(
            state.Beliefs.Clashes.Count,
            since is null || since.DeedId == state.Latest ? [] : await MovesAsync(since.DeedId, state, cancel),
            since is null ? null : new DateTimeOffset(since.When, TimeSpan.Zero),
            latest is null ? string.Empty : Mark(latest));
    }

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();

    // The time beside the number: another book has other deeds under the same numbers.
    private static string Mark(DeedLine deed) =>
        string.Create(CultureInfo.InvariantCulture, $"{deed.DeedId.Number}-{new DateTimeOffset(deed.When, TimeSpan.Zero).ToUnixTimeMilliseconds()}");

    private async Task<DeedLine?> FindAsync(string? mark, DeedId latest, CancellationToken cancel)
    {
        if (!long.TryParse(mark?.Split('-')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            || number < 1 || number > latest.Number
            || await DeedAsync(new(number), cancel) is not { } deed)
        {
            return null;
        }

        return string.Equals(Mark(deed), mark, StringComparison.Ordinal) ? deed : null;
    }

    private async Task<DeedLine?> DeedAsync(DeedId id, CancellationToken cancel) =>
        id.Number < 1 ? null
            : (await new ListDeeds(_book.Book).RunAsync(1, new DeedId(id.Number + 1), cancel)).Expect() is [{ } deed] && deed.DeedId == id ? deed : null;

    private async Task<IReadOnlyList<CarryMove>> MovesAsync(DeedId since, StockState now, CancellationToken cancel)
    {
        if (Known(since, now) is { } known)
        {
            return known;
        }

        await _turn.WaitAsync(cancel);
        try
        {
            if (Known(since, now) is { } meanwhile)
            {
                return meanwhile;
            }

            var animals = (await new AnimalsAfter(_book.Book).RunAsync(since, cancel)).Expect();
            var clutches = (await new AllClutches(_book.Book).AfterAsync(since, cancel)).Expect();
            var then = new StockState(since, StockRecord.Of(now.Record.Catalogue, animals, clutches, now), null, now, cancel);
            var moves = Compare(then, now);
            _last = new(since, now, moves);
            return moves;
        }
        finally
        {
            _turn.Release();
        }
    }

    private IReadOnlyList<CarryMove>? Known(DeedId since, StockState now) =>
        _last is { } last && last.Since == since && ReferenceEquals(last.Now, now) ? last.Moves : null;

    private static CarryMove[] Compare(StockState then, StockState now)
    {
        var loci = then.Beliefs.LociInPlay.Union(now.Beliefs.LociInPlay).OrderBy(l => l.Index).ToArray();
        return [.. now.Animals
            .Select(a => (Now: a, Then: then.Find(a.Animal.AnimalId)))
            .Where(a => a.Then is not null)
            .SelectMany(a => loci.Select(l => Move(now.Record.Catalogue, a.Then!, a.Now, l)))
            .OfType<CarryMove>()
            .OrderByDescending(m => Math.Abs(m.Now.Value - m.Was.Value))
            .ThenBy(m => m.Tag, StringComparer.Ordinal)];
    }

    private static CarryMove? Move(OpenCatalogue catalogue, StockAnimal then, StockAnimal now, Locus locus)
    {
        var (before, after) = (then.Belief.Genotype, now.Belief.Genotype);
        var isOrdered = locus.Group.IsSex && before.IsHeterogametic && after.IsHeterogametic;
        var (was, isNow) = (before.PairsAt(locus, isOrdered), after.PairsAt(locus, isOrdered));
        var moves = was.Select(p => p.Value).Union(isNow.Select(p => p.Value))
            .Select(p => (Pair: p, Was: ChanceOf(was, p), Now: ChanceOf(isNow, p)))
            .Where(p => Math.Abs(p.Now.Value - p.Was.Value) >= LeastMove)
            .OrderByDescending(p => Math.Round(Math.Abs(p.Now.Value - p.Was.Value), 9))

            // Rather of what it carries than of what it does not.
            .ThenBy(p => p.Pair == (0, 0))
            .ToArray();
        return moves is [var most, ..]
            ? new(
                now.Animal.Tag,
                now.Animal.Name,
                now.Animal.Sex,
                locus.Name,
                catalogue.Wording.Pair(locus, most.Pair.First, most.Pair.Second, isOrdered && most.Pair.First != most.Pair.Second),
                most.Was,
                most.Now)
            : null;
    }

    private static Probability ChanceOf(IReadOnlyList<Weighted<(int First, int Second)>> pairs, (int First, int Second) pair) =>
        pairs.Where(p => p.Value == pair).Select(p => p.Weight).FirstOrDefault(Probability.Impossible);

    private sealed record Reckoned(DeedId Since, StockState Now, IReadOnlyList<CarryMove> Moves);
}
