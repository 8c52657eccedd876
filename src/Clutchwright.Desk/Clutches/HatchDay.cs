using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Clutches;

/// <summary>What each hatchling of a clutch is: entering them one by one.</summary>
public sealed class HatchDay
{
    /// <summary>How sure a look counts that the keeper is not quite sure of.</summary>
    internal const double NotQuiteSure = 0.9;

    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly StockBeliefs _stock;
    private readonly IdSchemes _schemes;
    private readonly HoldbackAdvice _advice;
    private readonly ListDeeds _deeds;
    private readonly TimeProvider _clock;

    internal HatchDay(
        OpenBook book, OpenCatalogue catalogue, StockBeliefs stock, IdSchemes schemes, HoldbackAdvice advice, ListDeeds deeds, TimeProvider clock) =>
        (_book, _catalogue, _stock, _schemes, _advice, _deeds, _clock) = (book, catalogue, stock, schemes, advice, deeds, clock);

    /// <summary>The id that the next hatchling of a clutch gets by the keeper's scheme.</summary>
    /// <param name="tag">The clutch's tag.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<Answer<string>> NextTagAsync(string tag, CancellationToken cancel)
    {
        var found = await new Stock.Clutches.ListClutches(_book.Book).FindAsync(null, tag, cancel);
        return found.IsDone ? await NextTagAsync(found.Value, DateRange.On(Today), cancel) : Refusals.Of("clutch", found.Problem);
    }

    /// <summary>Enters one hatchling.</summary>
    /// <param name="form">What the keeper says.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    /// <returns>The hatchling, or what is to be said again before it is taken; the same sent twice is entered once.</returns>
    public async Task<Answer<HatchlingAnswer>> EnterAsync(HatchlingForm form, string who, CancellationToken cancel)
    {
        var found = await new Stock.Clutches.ListClutches(_book.Book).FindAsync(null, form.Clutch, cancel);
        if (!found.IsDone)
        {
            return Refusals.Of("clutch", found.Problem);
        }

        var line = found.Value;
        if (line.Young.FirstOrDefault(y => y.AnimalId.Value == form.Id) is { } there)
        {
            return await EnteredAsync(line, there.AnimalId, null, cancel);
        }

        var problems = new List<AskedWrongly>();
        var entry = await ReadAsync(line, form, problems, cancel);
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var doubts = await DoubtsAsync(line, entry, cancel);
        if (doubts.Count > 0 && !form.IsAgain)
        {
            return new HatchlingAnswer(null, entry.Tag, doubts, null, [], null);
        }

        if (doubts.Count > 0)
        {
            entry = entry with { Notes = string.Join('\n', new[] { entry.Notes, $"Asked twice on hatch day: {string.Join(" ", doubts)}" }.Where(n => n.Length > 0)) };
        }

        var done = await new RecordHatchling(_book.Book, Check).RunAsync(line.Clutch.ClutchId, entry with { IsMoreMeant = form.IsAgain }, who, cancel);
        return done.IsDone
            ? await EnteredAsync(line, done.Value.AnimalId, (await _deeds.RunAsync(null, 1, cancel))[0], cancel)
            : done.Problem is ClutchProblem.Refused refused ? [.. refused.Problems.SelectMany(p => Refusals.Of(Where(p), p))]
            : Refusals.Of("clutch", done.Problem);
    }

    private DateOnly Today => DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);

    private static string Where(Problem problem) => problem switch
    {
        AnimalProblem.TagInvalid or AnimalProblem.TagTaken => "tag",
        AnimalProblem.MassOutOfRange => "mass",
        StatementProblem => "look",
        ClutchProblem.InTheFuture or ClutchProblem.HatchedBeforeLaid => "hatched",
        _ => "clutch",
    };

    private TradeTextProblem? Check(string column, string text) => StatementReader.Check(_catalogue, column, text);

    private async Task<string> NextTagAsync(ClutchLine line, DateRange hatched, CancellationToken cancel)
    {
        // Every animal counts, not only this clutch's: an id stands once in the book.
        var state = await _stock.ReadAsync(cancel);
        return (await _schemes.ReadAsync(cancel)).Hatchlings.Next(
            hatched.Latest, line.Clutch.Tag, line.Dam, line.Sires is [var sire] ? sire : null, id => state.Find(id) is not null);
    }

    private async Task<HatchlingEntry> ReadAsync(ClutchLine line, HatchlingForm form, List<AskedWrongly> problems, CancellationToken cancel)
    {
        var sex = form.Sex?.Trim().ToUpperInvariant() switch
        {
            "M" or "MALE" or "1.0" => Sex.Male,
            "F" or "FEMALE" or "0.1" => Sex.Female,
            null or "" or "U" or "0.0.1" => (Sex?)null,
            _ => Wrong<Sex?>("sex", $"\"{form.Sex}\" is no sex. Write m, f or u (unsexed)."),
        };
        double? mass = null;
        if (!string.IsNullOrWhiteSpace(form.MassGrams))
        {
            mass = DecimalText.Read(form.MassGrams) ?? Wrong<double?>("mass", $"\"{form.MassGrams}\" is no mass. Write grams, as 62 or 62.5.");
        }

        var hatched = !string.IsNullOrWhiteSpace(form.Hatched) ? AnimalForms.Date("hatched", form.Hatched, problems)
            : line.Clutch.Hatched ?? DateRange.On(Today);
        if (!Enum.TryParse<AnimalStatus>(form.Status ?? nameof(AnimalStatus.Kept), ignoreCase: true, out var status) || !Enum.IsDefined(status))
        {
            problems.Add(new("status", $"\"{form.Status}\" is no status. One of: {string.Join(", ", Enum.GetNames<AnimalStatus>())}."));
        }

        if (form.Id == Guid.Empty)
        {
            problems.Add(new("id", "The hatchling has no identity. Open the page of the clutch again."));
        }

        return new()
        {
            AnimalId = new(form.Id),
            Tag = string.IsNullOrWhiteSpace(form.Tag) ? await NextTagAsync(line, hatched ?? DateRange.On(Today), cancel) : form.Tag.Trim(),
            Sex = sex,
            Hatched = hatched ?? DateRange.On(Today),
            MassGrams = mass,
            Status = status,
            Notes = form.Notes?.Trim() ?? string.Empty,
            Statements = string.IsNullOrWhiteSpace(form.Look)
                ? []
                : [new() { Kind = StatementKind.Seen, Text = SeenText(form.Look), When = hatched, Confidence = form.IsUnsure ? NotQuiteSure : 1.0, By = null }],
        };

        T? Wrong<T>(string where, string text)
        {
            problems.Add(new(where, text));
            return default;
        }
    }

    // What shows nothing is called "Normal" on the page, and "normal" where it is written down as seen.
    private string SeenText(string look) => string.Equals(look.Trim(), _catalogue.Catalogue.NormalName, StringComparison.OrdinalIgnoreCase) ? Statement.Normal : look.Trim();

    /// <summary>What is to be said again before it is taken: a look that cannot be from these parents, or more young than eggs.</summary>
    private async Task<IReadOnlyList<string>> DoubtsAsync(ClutchLine line, HatchlingEntry entry, CancellationToken cancel)
    {
        var doubts = new List<string>();
        if (line.Clutch.GoodEggs is { } good && line.HatchedCount + 1 > good)
        {
            doubts.Add(ProblemWords.Say(new ClutchProblem.MoreThanLaid(line.Clutch.Tag, good, line.HatchedCount + 1)).What);
        }

        if (entry.Statements.Count == 0)
        {
            return doubts;
        }

        var now = await _stock.ReadAsync(cancel);
        if (Check("seen", entry.Statements[0].Text) is not null && entry.Statements[0].Text != Statement.Normal)
        {
            return doubts;
        }

        var then = With(now, ClutchAnimals.Of(line.Clutch, entry), cancel);
        var key = StockRecord.Key(entry.AnimalId);
        if (then.Beliefs.Clashes.FirstOrDefault(c => c.Animals.Contains(key)) is { } clash)
        {
            doubts.Add($"This cannot be from these parents as they are recorded. {ClashWords.Of(then.Record, clash)}");
        }

        return doubts;
    }

    private static StockState With(StockState now, Animal hatchling, CancellationToken cancel) => new(
        now.Latest,
        StockRecord.Of(now.Record.Catalogue, [.. now.Record.Entries.Select(e => e.Animal), hatchling], now.Record.Clutches, now),
        null,
        now,
        cancel);

    private async Task<Answer<HatchlingAnswer>> EnteredAsync(ClutchLine line, AnimalId id, DeedLine? deed, CancellationToken cancel)
    {
        var state = await _stock.ReadAsync(cancel);
        if (state.Find(id) is not { } animal)
        {
            return new AskedWrongly("clutch", "This hatchling was entered before and lies in the bin. Take it out of there.");
        }

        return new HatchlingAnswer(
            AnimalWording.Line(_catalogue, animal),
            animal.Animal.Tag,
            [],
            _catalogue.Wording.Animal(animal.Belief.Genotype),
            await _advice.OfAsync(animal, line.Dam, line.Sires, cancel),
            deed);
    }
}
