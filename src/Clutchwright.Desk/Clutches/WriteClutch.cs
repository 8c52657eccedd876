using System.Globalization;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Clutches;

/// <summary>Writes down what was laid, changes it, puts it in the bin and takes it out.</summary>
public sealed class WriteClutch
{
    /// <summary>How long before laying a pair may have been together to be thought of as the parents.</summary>
    private const int MostDaysTogether = 300;

    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly IdSchemes _schemes;
    private readonly ListDeeds _deeds;
    private readonly TimeProvider _clock;

    internal WriteClutch(OpenBook book, OpenCatalogue catalogue, IdSchemes schemes, ListDeeds deeds, TimeProvider clock) =>
        (_book, _catalogue, _schemes, _deeds, _clock) = (book, catalogue, schemes, deeds, clock);

    /// <summary>A form for a new clutch: laid today, by the males that were with her last.</summary>
    /// <param name="dam">The dam's tag; empty or of no animal: only the rest is filled in.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<ClutchForm> NewAsync(string? dam, CancellationToken cancel)
    {
        var today = Today;
        var found = string.IsNullOrWhiteSpace(dam) ? null : (await Find.ByTagAsync(_book, dam.Trim(), cancel)).Value;
        var sires = found is null ? [] : await SiresAsync(found.Animal.AnimalId, today, cancel);
        return new()
        {
            Dam = found?.Animal.Tag ?? dam?.Trim() ?? string.Empty,
            Sire = string.Join(" | ", sires),
            Laid = today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        };
    }

    /// <summary>A form that holds a clutch as it is; <c>null</c>: there is none such.</summary>
    public async Task<ClutchForm?> FormAsync(string tag, CancellationToken cancel)
    {
        var found = await new Stock.Clutches.ListClutches(_book.Book).FindAsync(null, tag, cancel);
        return !found.IsDone ? null : new()
        {
            Tag = found.Value.Clutch.Tag,
            Dam = found.Value.Dam,
            Sire = string.Join(" | ", found.Value.Sires),
            Laid = found.Value.Clutch.Laid.ToText(),
            GoodEggs = found.Value.Clutch.GoodEggs?.ToString(CultureInfo.InvariantCulture),
            Slugs = found.Value.Clutch.Slugs?.ToString(CultureInfo.InvariantCulture),
            MassGrams = found.Value.Clutch.MassGrams?.ToString(CultureInfo.InvariantCulture),
            Incubator = found.Value.Incubator,
            Hatched = found.Value.Clutch.Hatched?.ToText(),
            Counted = CountedText.Write(found.Value.Clutch.Counted),
            Notes = found.Value.Clutch.Notes,
            Version = found.Value.Clutch.Version,
        };
    }

    /// <summary>Writes down a new clutch; the deed is given back for undoing, with the clutch's tag.</summary>
    public async Task<Answer<WrittenClutch>> RecordAsync(ClutchForm form, string who, CancellationToken cancel)
    {
        var read = await ReadAsync(form, cancel);
        return read.Value is { } entry
            ? await DoneAsync(await new RecordLaying(_book.Book, Check).RunAsync(entry, who, cancel), cancel)
            : read.Problems.ToArray();
    }

    /// <summary>Changes a clutch; its young in the book get its parents.</summary>
    public async Task<Answer<WrittenClutch>> EditAsync(string tag, ClutchForm form, string who, CancellationToken cancel)
    {
        var found = await new Stock.Clutches.ListClutches(_book.Book).FindAsync(null, tag, cancel);
        if (!found.IsDone)
        {
            return Refusals.Of("clutch", found.Problem);
        }

        var read = await ReadAsync(form, cancel);
        return read.Value is { } entry
            ? await DoneAsync(await new EditClutch(_book.Book, Check).RunAsync(found.Value.Clutch.ClutchId, form.Version ?? found.Value.Clutch.Version, entry, who, cancel), cancel)
            : read.Problems.ToArray();
    }

    /// <summary>Puts a clutch in the bin.</summary>
    public async Task<Answer<WrittenClutch>> BinAsync(string tag, string who, CancellationToken cancel)
    {
        var found = await new Stock.Clutches.ListClutches(_book.Book).FindAsync(null, tag, cancel);
        return found.IsDone ? await DoneAsync(await new BinClutch(_book.Book).RunAsync(found.Value.Clutch.ClutchId, who, cancel), cancel) : Refusals.Of("clutch", found.Problem);
    }

    /// <summary>Takes a clutch out of the bin.</summary>
    public async Task<Answer<WrittenClutch>> RestoreAsync(Guid id, string who, CancellationToken cancel) =>
        await DoneAsync(await new BinClutch(_book.Book).RestoreAsync(new(id), who, cancel), cancel);

    private DateOnly Today => DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);

    private TradeTextProblem? Check(string column, string text) => StatementReader.Check(_catalogue, column, text);

    private async Task<string> NextTagAsync(DateOnly laid, string dam, string? sire, CancellationToken cancel)
    {
        var taken = (await new AllClutches(_book.Book).RunAsync(cancel)).Expect().Select(c => c.Tag).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return (await _schemes.ReadAsync(cancel)).Clutches.Next(laid, string.Empty, dam, sire, taken.Contains);
    }

    // The males that locked with her count; where none was seen to, those that were put to her.
    private async Task<IReadOnlyList<string>> SiresAsync(AnimalId dam, DateOnly today, CancellationToken cancel)
    {
        var log = (await new Stock.Happenings.ListHappenings(_book.Book).RunAsync(dam, [HappeningKind.Locked, HappeningKind.Introduced], 200, cancel)).Expect()
            .Where(l => today.DayNumber - l.When.Latest.DayNumber <= MostDaysTogether)
            .ToArray();
        var her = (await new FindAnimal(_book.Book).RunAsync(dam, cancel)).Expect().Animal.Tag;
        var locked = log.Where(l => l.Kind == HappeningKind.Locked).ToArray();
        return [.. (locked.Length > 0 ? locked : log)
            .Select(l => string.Equals(l.Tag, her, StringComparison.Ordinal) ? l.Mate : l.Tag)
            .OfType<string>()
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)];
    }

    private async Task<Answer<ClutchEntry>> ReadAsync(ClutchForm form, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var laid = string.IsNullOrWhiteSpace(form.Laid) ? DateRange.On(Today) : AnimalForms.Date("laid", form.Laid, problems);
        var hatched = string.IsNullOrWhiteSpace(form.Hatched) ? null : AnimalForms.Date("hatched", form.Hatched, problems);
        var dam = await AnimalAsync("dam", form.Dam);
        var sires = new List<AnimalId>();
        foreach (var sire in (form.Sire ?? string.Empty).Split('|', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (await AnimalAsync("sire", sire) is { } known)
            {
                sires.Add(known.Animal.AnimalId);
            }
        }

        var entry = new ClutchEntry
        {
            Tag = string.IsNullOrWhiteSpace(form.Tag) ? string.Empty : form.Tag.Trim(),
            DamId = dam?.Animal.AnimalId ?? default,
            Sires = sires,
            Laid = laid ?? DateRange.On(Today),
            GoodEggs = Whole("eggs", form.GoodEggs),
            Slugs = Whole("slugs", form.Slugs),
            MassGrams = Number("mass", form.MassGrams),
            IncubatorId = await IncubatorAsync(form.Incubator, problems, cancel),
            Hatched = hatched,
            Counted = CountedText.Read(form.Counted, problems),
            Notes = form.Notes ?? string.Empty,
        };
        return problems.Count > 0 ? problems.ToArray()
            : entry.Tag.Length > 0 ? entry
            : entry with { Tag = await NextTagAsync(entry.Laid.Latest, dam!.Animal.Tag, form.Sire is { } text && sires.Count == 1 ? text.Trim() : null, cancel) };

        async Task<AnimalRecord?> AnimalAsync(string where, string? tag)
        {
            if (string.IsNullOrWhiteSpace(tag))
            {
                problems.Add(new(where, "The dam is not named. Write her tag."));
                return null;
            }

            var found = await Find.ByTagAsync(_book, tag.Trim(), cancel);
            problems.AddRange(found.Problems.Select(p => p with { Where = where }));
            return found.Value;
        }

        int? Whole(string where, string? text)
        {
            if (string.IsNullOrWhiteSpace(text))
            {
                return null;
            }

            if (int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            {
                return number;
            }

            problems.Add(new(where, $"\"{text.Trim()}\" is no number of eggs. Write a whole number, or leave it empty if they were not counted."));
            return null;
        }

        double? Number(string where, string? text)
        {
            if (string.IsNullOrWhiteSpace(text))
            {
                return null;
            }

            if (DecimalText.Read(text) is { } number)
            {
                return number;
            }

            problems.Add(new(where, $"\"{text.Trim()}\" is no mass. Write grams, as 540 or 62.5, with nothing between thousands."));
            return null;
        }
    }

    private async Task<IncubatorId?> IncubatorAsync(string? name, List<AskedWrongly> problems, CancellationToken cancel)
    {
        if (string.IsNullOrWhiteSpace(name))
        {
            return null;
        }

        var known = (await new IncubatorNames(_book.Book).RunAsync(cancel)).Expect();
        if (known.FirstOrDefault(i => string.Equals(i.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } incubator)
        {
            return incubator.IncubatorId;
        }

        problems.Add(new("incubator", ProblemWords.Say(new IncubatorProblem.NotFound(name.Trim())).ToString(), DidYouMean: NearWords.Of(name, known.Select(i => i.Name))));
        return null;
    }

    private async Task<Answer<WrittenClutch>> DoneAsync(Outcome<Clutch> done, CancellationToken cancel) => done.IsDone
        ? new WrittenClutch(done.Value.Tag, (await _deeds.RunAsync(null, 1, cancel))[0])
        : done.Problem is ClutchProblem.Refused refused ? [.. refused.Problems.SelectMany(p => Refusals.Of(Where(p), p))]
        : Refusals.Of("clutch", done.Problem);

    private static string Where(Problem problem) => problem switch
    {
        ClutchProblem.TagInvalid or ClutchProblem.TagTaken => "tag",
        ClutchProblem.EggsOutOfRange => "eggs",
        ClutchProblem.MassOutOfRange => "mass",
        ClutchProblem.InTheFuture => "laid",
        ClutchProblem.HatchedBeforeLaid => "hatched",
        ClutchProblem.CountOutOfRange or ClutchProblem.SeenUnreadable => "counted",
        ClutchProblem.DamNotFound or ClutchProblem.DamIsMale => "dam",
        ClutchProblem.SireNotFound or ClutchProblem.SireIsFemale or ClutchProblem.SireTwice or ClutchProblem.SireIsDam => "sire",
        ClutchProblem.IncubatorNotFound => "incubator",
        ClutchProblem.NotesInvalid => "notes",
        _ => "clutch",
    };
}

/// <summary>A clutch that was written down or changed.</summary>
/// <param name="Tag">Its tag as it is now.</param>
/// <param name="Deed">For undoing it.</param>
public sealed record WrittenClutch(string Tag, DeedLine Deed);
