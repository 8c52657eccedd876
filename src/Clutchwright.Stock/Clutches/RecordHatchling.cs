using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Clutches;

/// <summary>Enters one hatchling of a clutch, with what is seen of it and its mass. The clutch has hatched from then on.</summary>
public sealed class RecordHatchling(Book book, CheckTradeText check)
{
    /// <returns>The animal. One that was entered by this id before is given back as it is, and nothing is written: a sending may be repeated
    /// when its answer was lost.</returns>
    public Task<Outcome<Animal>> RunAsync(ClutchId clutch, HatchlingEntry entry, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return book.WriteAsync<Animal>(
            async db =>
            {
                if (await db.Animals.SingleOrDefaultAsync(a => a.AnimalId == entry.AnimalId, cancellation) is { } there)
                {
                    return there;
                }

                var found = await db.Clutches.SingleOrDefaultAsync(c => c.ClutchId == clutch && c.BinnedAt == null, cancellation);
                if (found is null)
                {
                    return new ClutchProblem.NotFound(string.Empty);
                }

                var young = await db.Animals.CountAsync(a => a.ClutchId == clutch && a.BinnedAt == null, cancellation) + found.Counted.Sum(c => c.Count) + 1;
                if (young > found.GoodEggs && !entry.IsMoreMeant)
                {
                    return new ClutchProblem.MoreThanLaid(found.Tag, found.GoodEggs.Value, young);
                }

                var fields = ClutchAnimals.Entry(found, entry);
                var problems = (await WhyNotAsync(db, found, fields, entry, cancellation)).ToList();
                if (problems.Count > 0)
                {
                    return new ClutchProblem.Refused(problems);
                }

                var animal = Add(db, found, fields, entry);
                await db.RecordAsync(who, $"Entered {animal.Tag} of clutch {found.Tag}", book.Now, cancellation);
                return animal;
            },
            cancellation);
    }

    private async Task<IEnumerable<Problem>> WhyNotAsync(StockContext db, Clutch clutch, AnimalEntry animal, HatchlingEntry entry, CancellationToken cancellation)
    {
        var wrong = new List<FieldProblem>(Animal.WhyNot(animal).Concat(entry.Statements.SelectMany(statement => Statement.WhyNot(statement, check))));
        if (wrong.Count == 0)
        {
            var all = await AnimalFacts.LoadAsync(db, cancellation);
            all[entry.AnimalId] = AnimalFacts.Of(entry.AnimalId, animal);
            wrong.AddRange(new AnimalRules(all).WhyNot([entry.AnimalId]).Select(found => found.Problem));
        }

        // The keeper may be where it is a day later already than in UTC.
        var problems = wrong.ConvertAll(found => found.Problem);
        if (entry.Hatched.Earliest > DateOnly.FromDateTime(book.Now).AddDays(1))
        {
            problems.Add(new ClutchProblem.InTheFuture(entry.Hatched));
        }
        else if (entry.Hatched.Latest < clutch.Laid.Earliest)
        {
            problems.Add(new ClutchProblem.HatchedBeforeLaid(clutch.Laid, entry.Hatched));
        }

        return problems;
    }

    private static Animal Add(StockContext db, Clutch clutch, AnimalEntry entry, HatchlingEntry hatchling)
    {
        var animal = new Animal(hatchling.AnimalId);
        animal.Take(entry);
        animal.BelongTo(clutch.ClutchId);
        db.Animals.Add(animal);
        db.Statements.AddRange(hatchling.Statements.Select(statement => new Statement(StatementId.New(), hatchling.AnimalId, statement)));
        if (hatchling.MassGrams is { } grams)
        {
            db.Happenings.Add(new Happening(HappeningId.New(), hatchling.AnimalId, new() { Kind = HappeningKind.Weighed, When = hatchling.Hatched, Amount = grams }));
        }

        if (clutch.Hatched is null)
        {
            clutch.Hatch(hatchling.Hatched);
        }

        return animal;
    }
}
