using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Import;

/// <summary>The id of a clutch that has none, by the keeper's scheme.</summary>
/// <param name="laid">The last day on which it can have been laid.</param>
/// <param name="dam">The dam's id.</param>
/// <param name="sire">The sire's id; null: none or several.</param>
/// <param name="isTaken">Whether a clutch has an id already.</param>
public delegate string NameClutch(DateOnly laid, string dam, string? sire, Func<string, bool> isTaken);

/// <summary>A clutch of a file as it would be written.</summary>
/// <param name="Clutch">The clutch.</param>
/// <param name="Lost">What its dam's log says of lost eggs; null: nothing.</param>
/// <param name="Young">Its young in the book.</param>
internal sealed record NewClutch(Clutch Clutch, HappeningEntry? Lost, IReadOnlyList<AnimalId> Young);

/// <summary>Holds a file of clutches against the book and the rules. The preview and the import itself both ask here.</summary>
internal sealed class ClutchCheck
{
    private readonly ClutchFile _file;
    private readonly ClutchesInBook _book;
    private readonly CheckTradeText _check;
    private readonly NameClutch _name;
    private readonly DateTime _now;
    private readonly List<RowProblem> _problems;
    private readonly Dictionary<string, Clutch> _byTag;
    private readonly Dictionary<(AnimalId Dam, DateRange Laid), Clutch> _byLaying;
    private readonly HashSet<string> _takenTags;
    private readonly UnknownTags _unknown;
    private readonly Dictionary<(AnimalId Dam, DateRange Laid), int> _rowOfLaying = [];
    private readonly Dictionary<AnimalId, string> _clutchOfYoung = [];
    private readonly List<(ClutchRow Row, AnimalFacts Young)> _facts = [];

    private ClutchCheck(ClutchFile file, ClutchesInBook book, CheckTradeText check, NameClutch name, DateTime now)
    {
        (_file, _book, _check, _name, _now) = (file, book, Once(check), name, now);
        _problems = [.. file.Problems];
        _unknown = new([.. book.ByTag.Values.Select(a => a.Tag)]);
        _byTag = book.Clutches.ToDictionary(c => Tags.Key(c.Tag), StringComparer.Ordinal);
        _byLaying = book.Clutches.GroupBy(c => (c.DamId, c.Laid)).ToDictionary(same => same.Key, same => same.First());
        _takenTags = [.. _byTag.Keys, .. file.Rows.Select(r => r.Tag).OfType<string>().Select(Tags.Key)];
    }

    /// <summary>The new clutches in the order of the file.</summary>
    public List<NewClutch> New { get; } = [];

    public static (ClutchCheck Check, TablePreview<ClutchRow> Preview) Run(ClutchFile file, ClutchesInBook book, CheckTradeText check, NameClutch name, DateTime now)
    {
        var run = new ClutchCheck(file, book, check, name, now);
        var fates = file.Rows.ToDictionary(row => row.Row, run.Look);
        run.CheckYoung();
        foreach (var problem in run._problems)
        {
            fates[problem.Row] = RowFate.Refused;
        }

        return (run, new([.. file.Rows.Select(row => (row, fates[row.Row]))], [.. run._problems.OrderBy(problem => problem.Row)]));
    }

    // Young that look alike are counted in row after row.
    private static CheckTradeText Once(CheckTradeText check)
    {
        var known = new Dictionary<(string, string), TradeTextProblem?>();
        return (column, text) => known.TryGetValue((column, text), out var problem) ? problem : known[(column, text)] = check(column, text);
    }

    private RowFate Look(ClutchRow row)
    {
        var before = _problems.Count;
        var dam = Animal(row, ClutchField.Dam, row.Dam);
        Animal[] sires = [.. row.Sires.Select(tag => Animal(row, ClutchField.Sire, tag)).OfType<Animal>()];
        Animal[] young = [.. row.Young.Select(tag => Animal(row, ClutchField.Young, tag)).OfType<Animal>()];
        var incubator = row.Incubator is null ? null : Incubator(row, row.Incubator);
        if (_problems.Count > before)
        {
            return RowFate.Refused;
        }

        var entry = new ClutchEntry
        {
            Tag = row.Tag ?? string.Empty,
            DamId = dam!.AnimalId,
            Sires = [.. sires.Select(s => s.AnimalId)],
            Laid = row.Laid,
            GoodEggs = row.GoodEggs,
            Slugs = row.Slugs,
            MassGrams = row.MassGrams,
            IncubatorId = incubator?.IncubatorId,

            // As on hatch day: the clutch has hatched when its first young has.
            Hatched = row.Hatched ?? young.Select(y => y.Hatched).OfType<DateRange>().MinBy(day => day.Latest),
            Counted = row.Counted,
            Notes = row.Notes,
        };
        if (!_rowOfLaying.TryAdd((entry.DamId, entry.Laid), row.Row) && row.Tag is null)
        {
            Add(row, ClutchField.Laid, new ImportProblem.RowTwice(_rowOfLaying[(entry.DamId, entry.Laid)]));
            return RowFate.Refused;
        }

        if ((row.Tag is { } tag ? _byTag.GetValueOrDefault(Tags.Key(tag)) : _byLaying.GetValueOrDefault((entry.DamId, entry.Laid))) is { } there)
        {
            return Compare(row, entry, there);
        }

        if (incubator?.RetiredAt is not null)
        {
            Add(row, ClutchField.Incubator, new IncubatorProblem.NotFound(incubator.Name));
        }

        Take(row, entry, dam, young);
        return RowFate.New;
    }

    private RowFate Compare(ClutchRow row, ClutchEntry entry, Clutch there)
    {
        var stands = ClutchCells.Of(_book.ToRow(there));
        var reads = ClutchCells.Of(Spelt(row, entry, there));

        // A column that the file does not have says nothing.
        string[] differences = [.. ClutchFile.Fields.Written
            .Select((column, index) => (column.Field, column.Name, Index: index))
            .Where(column => _file.Has(column.Field) && !string.Equals(stands[column.Index], reads[column.Index], StringComparison.Ordinal))
            .Select(column => column.Name)];
        if (differences.Length > 0)
        {
            Add(row, row.Tag is null ? ClutchField.Laid : ClutchField.Tag, new ImportProblem.ClutchInStock(there.Tag) { Differences = differences });
        }

        return differences.Length == 0 ? RowFate.AlreadyThere : RowFate.Refused;
    }

    /// <summary>The row as the book would write it.</summary>
    private ClutchRow Spelt(ClutchRow row, ClutchEntry entry, Clutch there) => new()
    {
        Row = 0,
        Line = 0,
        Tag = there.Tag,
        Dam = _book.Animals[entry.DamId].Tag,
        Sires = [.. entry.Sires.Select(id => _book.Animals[id].Tag)],
        Laid = row.Laid,
        GoodEggs = row.GoodEggs,
        Slugs = row.Slugs,
        Lost = row.Lost,
        MassGrams = row.MassGrams,
        Incubator = entry.IncubatorId is { } incubator ? _book.Incubators[incubator].Name : null,
        Hatched = entry.Hatched,
        Counted = row.Counted,
        Young = [.. row.Young.Select(tag => _book.ByTag[Tags.Key(tag)].Tag)],
        Notes = row.Notes,
    };

    private void Take(ClutchRow row, ClutchEntry entry, Animal dam, Animal[] young)
    {
        var named = entry.Tag.Length > 0 ? entry : entry with
        {
            Tag = _name(entry.Laid.Latest, dam.Tag, row.Sires is [var sire] ? sire : null, tag => _takenTags.Contains(Tags.Key(tag))),
        };
        var problems = ClutchRules.WhyNot(null, named, _book.Animals, _check, _now).ToList();

        // A scheme may have no free id left.
        if (!_takenTags.Add(Tags.Key(named.Tag)) && row.Tag is null)
        {
            problems.Add(new ClutchProblem.TagTaken(named.Tag));
        }

        foreach (var problem in problems)
        {
            // The day of hatching may be that of the young.
            Add(row, problem is ClutchProblem.HatchedBeforeLaid && row.Hatched is null ? ClutchField.Young : FieldOf(problem), problem);
        }

        if (problems.Count > 0)
        {
            return;
        }

        var clutch = new Clutch(ClutchId.New(), named);
        var lost = row.Lost is > 0 and var eggs ? LostOf(clutch, eggs) : null;
        if (lost is not null)
        {
            foreach (var problem in HappeningRules.WhyNot(dam, null, clutch, lost, Today))
            {
                Add(row, ClutchField.Lost, problem);
            }
        }

        foreach (var one in young)
        {
            Join(row, clutch, one);
        }

        New.Add(new(clutch, lost, [.. young.Select(y => y.AnimalId)]));
    }

    private DateOnly Today => DateOnly.FromDateTime(_now).AddDays(1);

    // Somewhere between laying and hatching, or until now.
    private HappeningEntry LostOf(Clutch clutch, int eggs)
    {
        var last = clutch.Hatched?.Latest ?? Today;
        var first = clutch.Laid.Earliest;
        var days = last <= first ? DateRange.On(first) : DateRange.Read($"{DateWords.Iso(first)} to {DateWords.Iso(last)}").Value ?? DateRange.On(first);
        return new() { Kind = HappeningKind.EggsLost, When = days, Amount = eggs, ClutchId = clutch.ClutchId };
    }

    private void Join(ClutchRow row, Clutch clutch, Animal young)
    {
        if (young.ClutchId is not null || !_clutchOfYoung.TryAdd(young.AnimalId, clutch.Tag))
        {
            var other = young.ClutchId is { } known ? _book.Clutches.FirstOrDefault(c => c.ClutchId == known)?.Tag : _clutchOfYoung[young.AnimalId];
            Add(row, ClutchField.Young, new ImportProblem.YoungOfOtherClutch(young.Tag, other ?? "?"));
            return;
        }

        AnimalId[] recorded = young.SireId is { } sire ? [sire] : [.. young.PossibleSireIds];
        if ((young.DamId is { } dam && dam != clutch.DamId) || (recorded.Length > 0 && !recorded.ToHashSet().SetEquals(clutch.Sires)))
        {
            Add(row, ClutchField.Young, new ImportProblem.YoungOfOtherParents(young.Tag));
        }
        else if (young.Hatched is { } hatched && hatched.Latest < clutch.Laid.Earliest)
        {
            Add(row, ClutchField.Young, new ClutchProblem.HatchedBeforeLaid(clutch.Laid, hatched));
        }
        else
        {
            _facts.Add((row, AnimalFacts.Of(young) with
            {
                Dam = clutch.DamId,
                Sire = clutch.Sires is [var only] ? only : null,
                PossibleSires = clutch.Sires.Count > 1 ? clutch.Sires : [],
            }));
        }
    }

    // Parents given to young may make someone their own ancestor.
    private void CheckYoung()
    {
        if (_facts.Count == 0)
        {
            return;
        }

        var all = _book.ByTag.Values.ToDictionary(a => a.AnimalId, AnimalFacts.Of);
        foreach (var (_, young) in _facts)
        {
            all[young.Id] = young;
        }

        var rows = _facts.ToDictionary(f => f.Young.Id, f => f.Row);
        foreach (var (id, problem) in new AnimalRules(all).WhyNot([.. rows.Keys]))
        {
            Add(rows[id], ClutchField.Young, problem.Problem);
        }
    }

    private Animal? Animal(ClutchRow row, ClutchField field, string tag)
    {
        if (_book.ByTag.TryGetValue(Tags.Key(tag), out var animal))
        {
            return animal;
        }

        Add(row, field, _unknown.Of(tag), tag);
        return null;
    }

    private Incubator? Incubator(ClutchRow row, string name)
    {
        var named = _book.Incubators.Values.Where(i => string.Equals(i.Name, name, StringComparison.OrdinalIgnoreCase)).OrderBy(i => i.RetiredAt is not null).FirstOrDefault();
        if (named is null)
        {
            Add(row, ClutchField.Incubator, new IncubatorProblem.NotFound(name), name);
        }

        return named;
    }

    private void Add(ClutchRow row, ClutchField field, Problem problem, string? found = null)
    {
        var index = ClutchFile.Fields.Written.ToList().FindIndex(column => column.Field == field);
        _problems.Add(_file.At(row.Row, row.Line, field, problem, found ?? (index < 0 ? null : ClutchCells.Of(row)[index])));
    }

    private static ClutchField FieldOf(Problem problem) => problem switch
    {
        ClutchProblem.DamNotFound or ClutchProblem.DamIsMale => ClutchField.Dam,
        ClutchProblem.SireNotFound or ClutchProblem.SireIsFemale or ClutchProblem.SireTwice or ClutchProblem.SireIsDam => ClutchField.Sire,
        ClutchProblem.EggsOutOfRange => ClutchField.Eggs,
        ClutchProblem.MassOutOfRange => ClutchField.MassGrams,
        ClutchProblem.HatchedBeforeLaid => ClutchField.Hatched,
        ClutchProblem.CountOutOfRange or ClutchProblem.SeenUnreadable or StatementProblem or AnimalProblem => ClutchField.Counted,
        ClutchProblem.NotesInvalid => ClutchField.Notes,
        ClutchProblem.InTheFuture or ClutchProblem.ParentNotOlder => ClutchField.Laid,
        _ => ClutchField.Tag,
    };
}
