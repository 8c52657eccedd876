using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Incubators;

namespace Clutchwright.Desk.Incubators;

/// <summary>Takes the readings of a logger's file into the book, all or none; shows first what that would do.</summary>
public sealed class TakeReadings
{
    private const int MostSamples = 12;

    private readonly OpenBook _book;
    private readonly ListIncubators _incubators;
    private readonly TemperatureSetting _setting;
    private readonly TimeProvider _clock;

    internal TakeReadings(OpenBook book, ListIncubators incubators, TemperatureSetting setting, TimeProvider clock) =>
        (_book, _incubators, _setting, _clock) = (book, incubators, setting, clock);

    /// <summary>What would it do? Writes nothing.</summary>
    /// <param name="incubator">Its name.</param>
    /// <param name="file">The file.</param>
    /// <param name="cancel">Stops the reading.</param>
    public async Task<Answer<ReadingsPreviewed>> PreviewAsync(string incubator, ReadingsFile file, CancellationToken cancel)
    {
        var found = await _incubators.FindAsync(incubator, cancel);
        if (found.Value is not { } known)
        {
            return found.Problems.ToArray();
        }

        var read = await ReadAsync(file, cancel);
        ReadingEntry[] entries = [.. read.Rows.Select(r => r.Entry)];
        var preview = await new RecordReadings(_book.Book).PreviewAsync(new(known.Id), entries, cancel);
        if (!preview.IsDone)
        {
            return Say(known.Name, preview.Problem);
        }

        ReadingProblem[] problems = [.. read.Problems.Concat(preview.Value.Refused.Select(r => Say(read, r))).OrderBy(p => p.Line)];
        return new ReadingsPreviewed(
            known.Name,
            read.Columns,
            ReadingsReader.Fields,
            preview.Value.Fresh,
            preview.Value.Skipped,
            [.. entries.Take(MostSamples).Select(e => new ReadingWords(Guid.Empty, new(e.TakenAt), e.Celsius, e.HumidityPercent, string.Empty))],
            entries.Length == 0 ? null : new(entries.Min(e => e.TakenAt)),
            entries.Length == 0 ? null : new(entries.Max(e => e.TakenAt)),
            Range(entries.Select(e => e.Celsius)),
            Range(entries.Select(e => e.HumidityPercent)),
            entries.Count(e => known.Limits.IsLeftBy(e.Celsius, e.HumidityPercent)),
            read.AsksForDates,
            problems);
    }

    /// <summary>Takes them in.</summary>
    /// <param name="incubator">Its name.</param>
    /// <param name="file">The file.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    public async Task<Answer<ReadingsTaken>> RunAsync(string incubator, ReadingsFile file, string who, CancellationToken cancel)
    {
        var found = await _incubators.FindAsync(incubator, cancel);
        if (found.Value is not { } known)
        {
            return found.Problems.ToArray();
        }

        var read = await ReadAsync(file, cancel);
        if (read.Problems.Count > 0)
        {
            return read.Problems.Select(p => new AskedWrongly(p.Where, p.Text)).ToArray();
        }

        var done = await new RecordReadings(_book.Book).RunAsync(new(known.Id), [.. read.Rows.Select(r => r.Entry)], file.FileName, who, cancel);
        return done switch
        {
            { IsDone: true } => new ReadingsTaken(done.Value.Added, done.Value.Skipped, done.Value.Deed?.Number),
            { Problem: IncubatorProblem.RowsRefused refused } => refused.Rows.Select(r => Say(read, r)).Select(p => new AskedWrongly(p.Where, p.Text)).ToArray(),
            _ => Say(known.Name, done.Problem),
        };
    }

    private async Task<ReadReadings> ReadAsync(ReadingsFile file, CancellationToken cancel) =>
        new ReadingsReader(await _setting.UnitAsync(cancel), _clock.LocalTimeZone).Read(file);

    private static ReadingProblem Say(ReadReadings read, ReadingRefused refused) =>
        new(read.Rows[refused.Index].Line, null, ProblemWords.Say(refused.Problem).ToString());

    private static AskedWrongly Say(string name, Problem problem) =>
        new("incubator", ProblemWords.Say(problem is IncubatorProblem.NotFound ? new IncubatorProblem.NotFound(name) : problem).ToString());

    private static (double Least, double Most)? Range(IEnumerable<double?> values)
    {
        double[] known = [.. values.OfType<double>()];
        return known.Length == 0 ? null : (known.Min(), known.Max());
    }
}
