using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Stock.Import;

/// <summary>Holds a file of the log against the book and the rules. The preview and the import itself both ask here.</summary>
internal sealed class LogCheck
{
    private readonly LogFile _file;
    private readonly LogInBook _book;
    private readonly DateOnly _today;
    private readonly List<RowProblem> _problems;
    private readonly UnknownTags _unknown;

    // The same may have happened twice on a day, and be in the file twice then.
    private readonly Dictionary<(AnimalId Animal, HappeningEntry Entry), int> _there;

    private LogCheck(LogFile file, LogInBook book, DateTime now)
    {
        (_file, _book) = (file, book);

        // The keeper may be where it is a day later already than in UTC.
        _today = DateOnly.FromDateTime(now).AddDays(1);
        _problems = [.. file.Problems];
        _unknown = new([.. book.ByTag.Values.Select(a => a.Tag)]);
        _there = book.Log.GroupBy(h => (h.AnimalId, EntryOf(h))).ToDictionary(same => same.Key, same => same.Count());
    }

    /// <summary>What is new, in the order of the file.</summary>
    public List<Happening> New { get; } = [];

    public static (LogCheck Check, TablePreview<LogRow> Preview) Run(LogFile file, LogInBook book, DateTime now)
    {
        var run = new LogCheck(file, book, now);
        var fates = file.Rows.ToDictionary(row => row.Row, run.Look);
        foreach (var problem in run._problems)
        {
            fates[problem.Row] = RowFate.Refused;
        }

        return (run, new([.. file.Rows.Select(row => (row, fates[row.Row]))], [.. run._problems.OrderBy(problem => problem.Row)]));
    }

    private static HappeningEntry EntryOf(Happening happening) => new()
    {
        Kind = happening.Kind,
        When = happening.When,
        Amount = happening.Amount,
        MateId = happening.MateId,
        ClutchId = happening.ClutchId,
        Text = happening.Text,
    };

    private RowFate Look(LogRow row)
    {
        var before = _problems.Count;
        var animal = Animal(row, LogField.Animal, row.Animal);
        var mate = row.Mate is null ? null : Animal(row, LogField.Mate, row.Mate);
        var clutch = row.Clutch is null ? null : Clutch(row, row.Clutch);
        if (_problems.Count > before)
        {
            return RowFate.Refused;
        }

        var fate = RowFate.AlreadyThere;
        foreach (var (kind, amount, text) in row.Entries)
        {
            // A weighing beside something else is about the animal alone.
            var isBeside = kind == HappeningKind.Weighed && row.Entries.Count > 1;
            var entry = new HappeningEntry
            {
                Kind = kind,
                When = row.When,
                Amount = amount,
                MateId = isBeside ? null : mate?.AnimalId,
                ClutchId = isBeside ? null : clutch?.ClutchId,
                Text = text.Trim(),
            };
            if (_there.TryGetValue((animal!.AnimalId, entry), out var left) && left > 0)
            {
                _there[(animal.AnimalId, entry)] = left - 1;
                continue;
            }

            if (kind == HappeningKind.Laid)
            {
                Add(row, LogField.Kind, new HappeningProblem.WrittenAsClutch(), null);
            }

            foreach (var problem in HappeningRules.WhyNot(animal, isBeside ? null : mate, isBeside ? null : clutch, entry, _today))
            {
                Add(row, FieldOf(problem, kind), problem, null);
            }

            fate = RowFate.New;
            New.Add(new(HappeningId.New(), animal.AnimalId, entry));
        }

        return fate;
    }

    private Animal? Animal(LogRow row, LogField field, string tag)
    {
        if (_book.ByTag.TryGetValue(Tags.Key(tag), out var animal))
        {
            return animal;
        }

        Add(row, field, _unknown.Of(tag), tag);
        return null;
    }

    private Clutch? Clutch(LogRow row, string tag)
    {
        if (_book.Clutches.TryGetValue(Tags.Key(tag), out var clutch))
        {
            return clutch;
        }

        Add(row, LogField.Clutch, new ClutchProblem.NotFound(tag), tag);
        return null;
    }

    private void Add(LogRow row, LogField field, Problem problem, string? found)
    {
        var index = LogFile.Fields.Written.ToList().FindIndex(column => column.Field == field);
        _problems.Add(_file.At(row.Row, row.Line, field, problem, found ?? (index < 0 ? null : LogCells.Of(row, row.Entries[0])[index])));
    }

    private LogField FieldOf(HappeningProblem problem, HappeningKind kind) => problem switch
    {
        HappeningProblem.InTheFuture or HappeningProblem.BeforeItHatched or HappeningProblem.BeforeItWasLaid => LogField.Date,
        HappeningProblem.AmountNotFitting => kind == HappeningKind.Weighed && _file.Has(LogField.MassGrams) ? LogField.MassGrams : LogField.Amount,
        HappeningProblem.MateNotFitting or HappeningProblem.MateNotFound or HappeningProblem.NoPair => LogField.Mate,
        HappeningProblem.ClutchNotFitting or HappeningProblem.ClutchNotFound => LogField.Clutch,
        HappeningProblem.TextNotFitting => LogField.Note,
        _ => LogField.Kind,
    };
}
