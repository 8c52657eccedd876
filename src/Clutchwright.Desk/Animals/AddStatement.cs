using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Animals;

/// <summary>Records what someone says of an animal.</summary>
public sealed class AddStatement
{
    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly ListDeeds _deeds;

    internal AddStatement(OpenBook book, OpenCatalogue catalogue, ListDeeds deeds)
    {
        _book = book;
        _catalogue = catalogue;
        _deeds = deeds;
    }

    /// <summary>Adds it; the deed is given back for undoing.</summary>
    public async Task<Answer<DeedLine>> RunAsync(string tag, StatementForm form, string who, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var when = string.IsNullOrWhiteSpace(form.When) ? null : AnimalForms.Date("when", form.When, problems);
        if (!Enum.TryParse<StatementKind>(form.Kind, ignoreCase: true, out var kind) || !Enum.IsDefined(kind))
        {
            problems.Add(new("kind", $"\"{form.Kind}\" is no kind of statement. One of: {string.Join(", ", Enum.GetNames<StatementKind>())}."));
        }

        var text = form.Text.Trim();
        if (kind != StatementKind.LookedAtNormal && text.Length > 0 && !string.Equals(text, Statement.Normal, StringComparison.OrdinalIgnoreCase)
            && _catalogue.Catalogue.Trade.Read(text) is { IsRead: false } read)
        {
            problems.Add(Crosses.ParentReader.Problem("text", read.Problem));
        }

        var found = await Find.ByTagAsync(_book, tag, cancel);
        if (found.Value is not { } record)
        {
            return found.Problems.ToArray();
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var entry = new StatementEntry
        {
            Kind = kind,
            Text = kind == StatementKind.LookedAtNormal ? string.Empty : text,
            By = form.By,
            When = when,
            Confidence = form.Confidence,
            Test = kind == StatementKind.DnaTest ? new DnaTest(form.IsFound, form.Sensitivity, form.Specificity) : null,
        };
        var done = await new Stock.Statements.AddStatement(_book.Book, (column, words) => StatementReader.Check(_catalogue, column, words))
            .RunAsync(record.Animal.AnimalId, entry, who, cancel);
        return done.IsDone ? (await _deeds.RunAsync(null, 1, cancel))[0] : Refusals.Of("text", done.Problem);
    }
}
