using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Animals;

/// <summary>Enters a new animal, with what is said of it.</summary>
public sealed class AddAnimal(Book book, CheckTradeText check)
{
    /// <returns>The animal with its statements, or <see cref="AnimalProblem.Refused"/> with everything that is wrong.</returns>
    public Task<Outcome<Animal>> RunAsync(
        AnimalEntry entry, IReadOnlyList<StatementEntry> statements, string who, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(statements);
        return book.WriteAsync<Animal>(
            async db =>
            {
                var id = AnimalId.New();
                var problems = Animal.WhyNot(entry)
                    .Concat(statements.SelectMany(statement => Statement.WhyNot(statement, check)))
                    .ToList();
                if (problems.Count > 0)
                {
                    return new AnimalProblem.Refused(problems);
                }

                var all = await AnimalFacts.LoadAsync(db, cancellation);
                all[id] = AnimalFacts.Of(id, entry);
                problems = [.. new AnimalRules(all).WhyNot([id]).Select(found => found.Problem)];
                if (problems.Count > 0)
                {
                    return new AnimalProblem.Refused(problems);
                }

                var animal = new Animal(id);
                animal.Take(entry);
                db.Animals.Add(animal);
                db.Statements.AddRange(statements.Select(statement => new Statement(StatementId.New(), id, statement)));
                await db.RecordAsync(who, $"Added {animal.Tag}", book.Now, cancellation);
                return animal;
            },
            cancellation);
    }
}
