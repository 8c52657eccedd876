using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Import;

/// <summary>Holds a file against the stock and the rules. The preview and the import itself both ask here.</summary>
internal sealed class ImportCheck
{
    private readonly AnimalFile _file;
    private readonly CheckTradeText _check;
    private readonly List<RowProblem> _problems;
    private readonly Dictionary<string, AnimalId> _idOfTag;
    private readonly Dictionary<AnimalId, AnimalFacts> _all;
    private readonly Dictionary<string, Animal> _inStock;
    private readonly Dictionary<int, RowFate> _fates = [];
    private readonly Dictionary<AnimalId, string> _stockTags;
    private readonly Func<AnimalRow, AnimalId> _idOf;
    private readonly bool _isAlone;
    private readonly Dictionary<string, int> _severals;

    private ImportCheck(AnimalFile file, CheckTradeText check, List<Animal> stock, Func<AnimalRow, AnimalId> idOf, bool isAlone)
    {
        _isAlone = isAlone;
        _severals = file.Rows.Where(row => row.Count > 1).ToDictionary(row => Tags.Key(row.Tag), row => row.Count, StringComparer.Ordinal);
        _file = file;
        _check = check;
        _idOf = idOf;
        _problems = [.. file.Problems];
        _all = stock.ToDictionary(animal => animal.AnimalId, AnimalFacts.Of);
        _inStock = stock.ToDictionary(animal => animal.TagKey, StringComparer.Ordinal);
        _idOfTag = stock.ToDictionary(animal => animal.TagKey, animal => animal.AnimalId, StringComparer.Ordinal);
        _stockTags = stock.ToDictionary(animal => animal.AnimalId, animal => animal.Tag);
    }

    /// <summary>The new animals in the order of the file.</summary>
    public List<(AnimalId Id, AnimalEntry Entry, AnimalRow Row)> New { get; } = [];

    public static async Task<(ImportCheck Check, ImportPreview Preview)> RunAsync(
        StockContext db, AnimalFile file, CheckTradeText check, CancellationToken cancellation) =>
        Run(new ImportCheck(file, check, await AllAnimals.LoadAsync(db, cancellation), _ => AnimalId.New(), isAlone: false));

    /// <summary>Holds a file against the rules by itself, as an empty stock would.</summary>
    /// <param name="file">The file.</param>
    /// <param name="check">Reads trade text.</param>
    /// <param name="idOf">The identity of a new animal.</param>
    public static (ImportCheck Check, ImportPreview Preview) RunAlone(AnimalFile file, CheckTradeText check, Func<AnimalRow, AnimalId> idOf) =>
        Run(new ImportCheck(file, check, [], idOf, isAlone: true));

    private static (ImportCheck Check, ImportPreview Preview) Run(ImportCheck run)
    {
        run.SortOut();
        run.CheckEach();
        run.CheckTogether();
        foreach (var problem in run._problems)
        {
            run._fates[problem.Row] = RowFate.Refused;
        }

        return (run, new ImportPreview(run._file, run._fates, [.. run._problems.OrderBy(problem => problem.Row)]));
    }

    /// <summary>Tells new rows from those that the stock has already.</summary>
    private void SortOut()
    {
        foreach (var row in _file.Rows)
        {
            if (!_inStock.TryGetValue(Tags.Key(row.Tag), out var known))
            {
                _fates[row.Row] = RowFate.New;
                _idOfTag.Add(Tags.Key(row.Tag), _idOf(row));
                continue;
            }

            var differences = Differences(row, known);
            _fates[row.Row] = differences.Count == 0 ? RowFate.AlreadyThere : RowFate.Refused;
            if (differences.Count > 0)
            {
                Add(row, AnimalField.Tag, new ImportProblem.AlreadyInStock(known.Tag) { Differences = differences }, row.Tag);
            }
        }
    }

    private List<string> Differences(AnimalRow row, Animal known)
    {
        var stands = AnimalCells.Of(known, id => _stockTags[id]);
        var reads = AnimalCells.Of(row);
        return [.. Headers.Written
            .Select((column, index) => (column.Field, column.Name, Index: index))
            .Where(column => column.Field is AnimalField.Tag or AnimalField.Sire or AnimalField.Dam
                ? !string.Equals(Tags.Key(stands[column.Index]), Tags.Key(reads[column.Index]), StringComparison.Ordinal)
                : !string.Equals(stands[column.Index], reads[column.Index], StringComparison.Ordinal))
            .Select(column => column.Name)];
    }

    private void CheckEach()
    {
        var tags = _file.Rows.Select(row => row.Tag).Concat(_stockTags.Values).ToList();

        // A row that is refused for something else can still be a parent: the keeper should hear of one fault once.
        var refused = _file.Problems.Select(problem => problem.Row).ToHashSet();
        var unread = _file.UnreadTags.Select(Tags.Key).ToHashSet(StringComparer.Ordinal);
        foreach (var row in _file.Rows.Where(row => _fates[row.Row] == RowFate.New && !refused.Contains(row.Row)))
        {
            if (row.Count > 1 && !_isAlone)
            {
                Add(row, AnimalField.Count, new ImportProblem.CountInStock(row.Count), row.Count.ToString(CultureInfo.InvariantCulture));
            }

            if (row.SireWeights.Count > 0 && !_isAlone)
            {
                Add(row, AnimalField.Sire, new ImportProblem.SireWeightsInStock(string.Join(Tags.Separator, row.SireTags)));
            }

            var sires = row.SireTags.Select(tag => Resolve(row, AnimalField.Sire, tag, tags, unread)).OfType<AnimalId>().ToList();
            var entry = new AnimalEntry
            {
                Tag = row.Tag,
                Name = row.Name,
                Sex = row.Sex,
                Hatched = row.Hatched,
                SireId = row.SireTags.Count == 1 && sires.Count == 1 ? sires[0] : null,
                PossibleSires = row.SireTags.Count > 1 && sires.Count == row.SireTags.Count ? sires : [],
                DamId = row.Dam is null ? null : Resolve(row, AnimalField.Dam, row.Dam, tags, unread),
                Status = row.Status,
                MassGrams = row.MassGrams,
                Notes = row.Notes,
            };
            foreach (var problem in Animal.WhyNot(entry).Concat(row.Statements.SelectMany(s => Statement.WhyNot(s, _check))))
            {
                Add(row, problem.Field, problem.Problem);
            }

            var id = _idOfTag[Tags.Key(row.Tag)];
            New.Add((id, entry, row));
            _all.Add(id, AnimalFacts.Of(id, entry));
        }
    }

    private void CheckTogether()
    {
        var rows = New.ToDictionary(added => added.Id, added => added.Row);
        foreach (var (id, problem) in new AnimalRules(_all).WhyNot([.. New.Select(added => added.Id)]))
        {
            Add(rows[id], problem.Field, problem.Problem);
        }
    }

    private AnimalId? Resolve(AnimalRow row, AnimalField field, string tag, List<string> tags, HashSet<string> unread)
    {
        if (_idOfTag.TryGetValue(Tags.Key(tag), out var id))
        {
            if (_severals.TryGetValue(Tags.Key(tag), out var count))
            {
                Add(row, field, new ImportProblem.ParentIsSeveral(tag, count), tag);
            }

            return id;
        }

        if (!unread.Contains(Tags.Key(tag)))
        {
            Add(row, field, new ImportProblem.ParentUnknown(tag, Tags.Nearest(tag, tags.Where(other => other != row.Tag))), tag);
        }

        return null;
    }

    private void Add(AnimalRow row, AnimalField? field, Problem problem, string? found = null) => _problems.Add(
        _file.At(row.Row, row.Line, field, problem, found ?? CellOf(row, field)));

    private static string? CellOf(AnimalRow row, AnimalField? field)
    {
        var index = Headers.Written.ToList().FindIndex(column => column.Field == field);
        return index < 0 ? null : AnimalCells.Of(row)[index];
    }
}
