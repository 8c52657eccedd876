using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Incubators;

namespace Clutchwright.Desk.Incubators;

/// <summary>Writes down incubators and what is read off them.</summary>
public sealed class WriteIncubator
{
    private readonly OpenBook _book;
    private readonly ListIncubators _incubators;
    private readonly TemperatureSetting _setting;
    private readonly ListDeeds _deeds;
    private readonly TimeProvider _clock;

    internal WriteIncubator(OpenBook book, ListIncubators incubators, TemperatureSetting setting, ListDeeds deeds, TimeProvider clock) =>
        (_book, _incubators, _setting, _deeds, _clock) = (book, incubators, setting, deeds, clock);

    /// <summary>Writes down a new one; the deed is given back for undoing.</summary>
    public async Task<Answer<DeedLine>> AddAsync(IncubatorForm form, string who, CancellationToken cancel)
    {
        var entry = await EntryAsync(form, cancel);
        return entry.Value is { } read ? await DoneAsync(await new AddIncubator(_book.Book).RunAsync(read, who, cancel), read.Name, cancel) : entry.Problems.ToArray();
    }

    /// <summary>Changes one; the form holds all of its fields as they are to be.</summary>
    /// <param name="id">The incubator.</param>
    /// <param name="version">The <see cref="IncubatorWords.Version"/> that the keeper saw.</param>
    /// <param name="form">All fields.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    public async Task<Answer<DeedLine>> EditAsync(Guid id, Guid version, IncubatorForm form, string who, CancellationToken cancel)
    {
        var entry = await EntryAsync(form, cancel);
        return entry.Value is { } read ? await DoneAsync(await new EditIncubator(_book.Book).RunAsync(new(id), version, read, who, cancel), read.Name, cancel) : entry.Problems.ToArray();
    }

    /// <summary>Puts one out of use, or back into it.</summary>
    public async Task<Answer<DeedLine>> RetireAsync(string name, bool isBack, string who, CancellationToken cancel)
    {
        var found = await _incubators.FindAsync(name, cancel);
        if (found.Value is not { } known)
        {
            return found.Problems.ToArray();
        }

        if (known.IsRetired != isBack)
        {
            return new AskedWrongly("incubator", $"{known.Name} is {(isBack ? "in" : "out of")} use already.");
        }

        var deed = new RetireIncubator(_book.Book);
        return await DoneAsync(isBack ? await deed.BackAsync(new(known.Id), who, cancel) : await deed.RunAsync(new(known.Id), who, cancel), known.Name, cancel);
    }

    /// <summary>Writes down what was read off one.</summary>
    public async Task<Answer<DeedLine>> ReadAsync(string name, ReadingForm form, string who, CancellationToken cancel)
    {
        var found = await _incubators.FindAsync(name, cancel);
        var problems = new List<AskedWrongly>(found.Problems);
        var unit = await _setting.UnitAsync(cancel);
        var celsius = Temperature("temperature", form.Temperature, unit, problems);
        var humidity = Humidity("humidity", form.Humidity, problems);
        var at = _clock.GetUtcNow().UtcDateTime;
        if (!string.IsNullOrWhiteSpace(form.When))
        {
            if (LocalTime.Read(form.When, null, _clock.LocalTimeZone) is { } said)
            {
                at = said;
            }
            else
            {
                problems.Add(new("when", $"\"{form.When.Trim()}\" is no time that the clock here has shown. {LocalTime.WouldBeRight}"));
            }
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        // To the second, so that it is the same on every database.
        var entry = new ReadingEntry { TakenAt = at.AddTicks(-(at.Ticks % TimeSpan.TicksPerSecond)), Celsius = celsius, HumidityPercent = humidity, Text = form.Text ?? string.Empty };
        return await DoneAsync(await new RecordReading(_book.Book).RunAsync(new(found.Value!.Id), entry, who, cancel), found.Value.Name, cancel);
    }

    /// <summary>Takes a reading back.</summary>
    public async Task<Answer<DeedLine>> WithdrawAsync(Guid reading, string who, CancellationToken cancel) =>
        await DoneAsync(await new WithdrawReading(_book.Book).RunAsync(new(reading), who, cancel), string.Empty, cancel);

    private async Task<Answer<IncubatorEntry>> EntryAsync(IncubatorForm form, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var unit = await _setting.UnitAsync(cancel);
        var entry = new IncubatorEntry
        {
            Name = form.Name,
            LowestCelsius = Temperature("lowest", form.Lowest, unit, problems),
            HighestCelsius = Temperature("highest", form.Highest, unit, problems),
            LowestHumidityPercent = Humidity("lowest-humidity", form.LowestHumidity, problems),
            HighestHumidityPercent = Humidity("highest-humidity", form.HighestHumidity, problems),
            Notes = form.Notes ?? string.Empty,
        };
        return problems.Count > 0 ? problems.ToArray() : entry;
    }

    private static double? Temperature(string where, string? text, TemperatureUnit unit, List<AskedWrongly> problems) =>
        Number(where, text, t => TemperatureText.Read(t, unit), $"Write {TemperatureText.Number(31.5, unit)}, or 31.5 C or 88.7 F.", problems);

    private static double? Humidity(string where, string? text, List<AskedWrongly> problems) =>
        Number(where, text, TemperatureText.ReadHumidity, "Write percent, 0 to 100.", problems);

    private static double? Number(string where, string? text, Func<string, double?> read, string wouldBeRight, List<AskedWrongly> problems)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        if (read(text) is { } number)
        {
            return number;
        }

        problems.Add(new(where, $"\"{text.Trim()}\" is no number. {wouldBeRight}"));
        return null;
    }

    private async Task<Answer<DeedLine>> DoneAsync<T>(Outcome<T> done, string name, CancellationToken cancel)
        where T : notnull
    {
        if (done.IsDone)
        {
            return (await _deeds.RunAsync(null, 1, cancel))[0];
        }

        return done.Problem switch
        {
            IncubatorProblem.Refused refused => [.. refused.Problems.Select(p => new AskedWrongly(Where(p), ProblemWords.Say(p).ToString()))],
            IncubatorProblem.NotFound => Refusals.Of("incubator", new IncubatorProblem.NotFound(name)),
            _ => Refusals.Of("incubator", done.Problem),
        };
    }

    private static string Where(IncubatorProblem problem) => problem switch
    {
        IncubatorProblem.NameInvalid or IncubatorProblem.NameTaken => "name",
        IncubatorProblem.TemperatureOutOfRange or IncubatorProblem.NothingRead => "temperature",
        IncubatorProblem.HumidityOutOfRange => "humidity",
        IncubatorProblem.LimitsSwapped => "lowest",
        IncubatorProblem.InTheFuture or IncubatorProblem.ReadAlready => "when",
        IncubatorProblem.NotesInvalid => "notes",
        _ => "incubator",
    };
}
