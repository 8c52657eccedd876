using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Animals;

/// <summary>Enters a new animal, or changes what is recorded of one.</summary>
public sealed class SaveAnimal
{
    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _beliefs;

    internal SaveAnimal(OpenBook book, OpenCatalogue catalogue, StockBeliefs beliefs)
    {
        _book = book;
        _catalogue = catalogue;
        _beliefs = beliefs;
    }

    /// <summary>Saves a form.</summary>
    /// <param name="form">The form. Statements in it are taken for a new animal only; those of one in the book are added and withdrawn one by one.</param>
    /// <param name="tag">The tag of the animal to change; <c>null</c>: a new one.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    /// <returns>The animal as it is now, or everything that is wrong, by field.</returns>
    public async Task<Answer<AnimalLine>> RunAsync(AnimalForm form, string? tag, string who, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var entry = await AnimalForms.EntryAsync(_book, form, problems, cancel);
        var statements = AnimalForms.Statements(form);
        if (tag is null)
        {
            problems.AddRange(statements
                .Where(s => !string.Equals(s.Text, Statement.Normal, StringComparison.OrdinalIgnoreCase))
                .SelectMany(Check));
        }

        if (entry is null || problems.Count > 0)
        {
            return problems.ToArray();
        }

        AnimalId id;
        if (tag is null)
        {
            var added = await new AddAnimal(_book.Book, Reader).RunAsync(entry, statements, who, cancel);
            if (!added.IsDone)
            {
                return Refusals.Of("animal", added.Problem);
            }

            id = added.Value.AnimalId;
        }
        else
        {
            var found = await Find.ByTagAsync(_book, tag, cancel);
            if (found.Value is not { } record)
            {
                return found.Problems.ToArray();
            }

            var edited = await new EditAnimal(_book.Book).RunAsync(
                record.Animal.AnimalId, form.Version ?? record.Animal.Version, entry, who, cancel);
            if (!edited.IsDone)
            {
                return Refusals.Of("animal", edited.Problem);
            }

            id = edited.Value.AnimalId;
        }

        return AnimalWording.Line(_catalogue, (await _beliefs.ReadAsync(cancel)).Find(id)!);
    }

    private TradeTextProblem? Reader(string column, string text) => StatementReader.Check(_catalogue, column, text);

    private IEnumerable<AskedWrongly> Check(StatementEntry statement)
    {
        var read = _catalogue.Catalogue.Trade.Read(statement.Text);
        if (!read.IsRead)
        {
            var where = statement.Kind == StatementKind.RuledOut ? "ruled-out" : statement.Kind.ToString().ToLowerInvariant();
            yield return Crosses.ParentReader.Problem(where, read.Problem);
        }
    }
}
