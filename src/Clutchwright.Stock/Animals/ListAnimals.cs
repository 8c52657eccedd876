using System.Linq.Expressions;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Animals;

/// <summary>One page of a list of animals; <c>Total</c> counts the animals of all pages.</summary>
public sealed record AnimalPage(int Total, int Page, int PageSize)
{
    public required IReadOnlyList<AnimalLine> Animals { get; init; }

    /// <summary>At least 1.</summary>
    public int Pages => Math.Max(1, (Total + PageSize - 1) / PageSize);
}

/// <summary>Which animals are in the book? Filtered, sorted and cut into pages by the database.</summary>
public sealed class ListAnimals(Book book)
{
    /// <exception cref="ArgumentOutOfRangeException">The page or its size is out of range.</exception>
    public Task<Outcome<AnimalPage>> RunAsync(AnimalFilter filter, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(filter);
        ArgumentOutOfRangeException.ThrowIfLessThan(filter.Page, 1, nameof(filter));
        ArgumentOutOfRangeException.ThrowIfLessThan(filter.PageSize, 1, nameof(filter));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(filter.PageSize, AnimalFilter.MaxPageSize, nameof(filter));
        return book.ReadAsync<AnimalPage>(async db =>
        {
            var wanted = Wanted(db, filter);
            var total = await wanted.CountAsync(cancellation);
            var lines = await Ordered(wanted, filter)
                .Skip((int)Math.Min(int.MaxValue, (filter.Page - 1L) * filter.PageSize))
                .Take(filter.PageSize)
                .Select(ToLine)
                .AsNoTracking()
                .ToListAsync(cancellation);
            return new AnimalPage(total, filter.Page, filter.PageSize) { Animals = lines };
        });
    }

    internal static Expression<Func<Animal, AnimalLine>> ToLine => a =>
        new AnimalLine(
            a.AnimalId, a.Tag, a.Name, a.Sex, a.Hatched, a.Status, a.MassGrams, a.Sire == null ? null : a.Sire.Tag, a.Dam == null ? null : a.Dam.Tag)
        {
            ClutchId = a.ClutchId,
            PossibleSireTags = a.PossibleSires.OrderBy(p => p.Sire!.TagOrder).Select(p => p.Sire!.Tag).ToList(),
            Statements = a.Statements
                .Where(s => s.WithdrawnAt == null)
                .OrderBy(s => s.Kind).ThenBy(s => s.Text)
                .Select(s => new StatementLine(s.Kind, s.Text, s.Confidence))
                .ToList(),
        };

    private static IQueryable<Animal> Wanted(StockContext db, AnimalFilter filter)
    {
        var animals = db.Animals.Where(a => filter.InBin ? a.BinnedAt != null : a.BinnedAt == null);
        foreach (var word in Words(filter.Text))
        {
            animals = animals.Where(a => a.SearchText.Contains(word)
                || a.Statements.Any(s => s.WithdrawnAt == null && s.SearchText.Contains(word)));
        }

        animals = filter.Sex switch
        {
            SexFilter.Any => animals,
            SexFilter.Female => animals.Where(a => a.Sex == Sex.Female),
            SexFilter.Male => animals.Where(a => a.Sex == Sex.Male),
            SexFilter.Unsexed => animals.Where(a => a.Sex == null),
        };
        return filter.Statuses.Count == 0 ? animals : animals.Where(a => filter.Statuses.Contains(a.Status));
    }

    private static string[] Words(string? text) => text is null || !TextRules.IsStorable(text)
        ? []
        : TextRules.Fold(text).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);

    private static IOrderedQueryable<Animal> Ordered(IQueryable<Animal> animals, AnimalFilter filter)
    {
        var ordered = filter.Order switch
        {
            AnimalOrder.Tag => By(animals, filter, a => false, a => a.TagOrder),
            AnimalOrder.Name => By(animals, filter, a => a.Name == null, a => a.Name),
            AnimalOrder.Sex => By(animals, filter, a => a.Sex == null, a => a.Sex),
            AnimalOrder.Hatched => By(animals, filter, a => a.Hatched == null, a => (DateOnly?)a.Hatched!.Earliest),
            AnimalOrder.Status => By(animals, filter, a => false, a => a.Status),
            AnimalOrder.Mass => By(animals, filter, a => a.MassGrams == null, a => a.MassGrams),
            AnimalOrder.Added => By(animals, filter, a => false, a => a.AnimalId),
        };
        return ordered.ThenBy(a => a.TagOrder).ThenBy(a => a.AnimalId);
    }

    private static IOrderedQueryable<Animal> By<T>(
        IQueryable<Animal> animals, AnimalFilter filter, Expression<Func<Animal, bool>> isUnknown, Expression<Func<Animal, T>> key)
    {
        var known = animals.OrderBy(isUnknown);
        return filter.IsDescending ? known.ThenByDescending(key) : known.ThenBy(key);
    }
}
