using System.Globalization;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Export;

/// <summary>The tables beside the JSON, for spreadsheets and other programs: what stands, by the tags a keeper knows. What is in the bin or was
/// taken back is in the JSON only.</summary>
internal sealed class BookTables
{
    private readonly BookRecords _records;
    private readonly IReadOnlyList<Animal> _animals;
    private readonly Dictionary<Guid, string> _tags;
    private readonly Dictionary<Guid, string> _clutches;
    private readonly Dictionary<Guid, string> _incubators;
    private readonly HashSet<Guid> _binned;

    /// <param name="records">Everything.</param>
    /// <param name="animals">Those out of the bin, with their statements.</param>
    public BookTables(BookRecords records, IReadOnlyList<Animal> animals)
    {
        (_records, _animals) = (records, animals);
        _tags = records.Animals.ToDictionary(a => a.Id, a => a.Tag);
        _clutches = records.Clutches.ToDictionary(c => c.Id, c => c.Tag);
        _incubators = records.Incubators.ToDictionary(i => i.Id, i => i.Name);
        _binned = [.. records.Animals.Where(a => a.BinnedAt is not null).Select(a => a.Id)];
    }

    /// <summary>Writes one of <see cref="BookFormat.Tables"/>.</summary>
    public Task WriteAsync(string name, TextWriter writer, CancellationToken cancellation) => name switch
    {
        "animals.csv" => ExportAnimals.WriteAsync(_animals, writer, cancellation),
        "statements.csv" => CsvRows.WriteAsync(writer, ["animal", "kind", "text", "date", "sure", "by", "found", "sensitivity", "specificity"], Statements(), cancellation),
        "clutches.csv" => CsvRows.WriteAsync(
            writer, ["id", "dam", "sire", "laid", "good_eggs", "slugs", "mass_g", "incubator", "hatched", "counted", "notes"], Clutches(), cancellation),
        "log.csv" => CsvRows.WriteAsync(writer, ["animal", "date", "kind", "amount", "unit", "mate", "clutch", "text"], Log(), cancellation),
        "incubators.csv" => CsvRows.WriteAsync(
            writer, ["name", "lowest_c", "highest_c", "lowest_humidity_percent", "highest_humidity_percent", "in_use", "notes"], Incubators(), cancellation),
        "readings.csv" => CsvRows.WriteAsync(writer, ["incubator", "taken_utc", "temperature_c", "humidity_percent", "text"], Readings(), cancellation),
        "photos.csv" => CsvRows.WriteAsync(writer, ["animal", "date", "caption", "file", "width", "height", "bytes", "sha256"], Photos(), cancellation),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "There is no such table."),
    };

    private IEnumerable<IReadOnlyList<string>> Statements() =>
        from said in _records.Statements
            .Where(s => s.WithdrawnAt is null && !_binned.Contains(s.Animal))
            .OrderBy(s => Order(s.Animal), StringComparer.Ordinal).ThenBy(s => s.Kind).ThenBy(s => s.Id.ToString(), StringComparer.Ordinal)
        select (string[])
        [
            _tags[said.Animal], Statement.ColumnOf(said.Kind), said.Kind == StatementKind.LookedAtNormal ? Statement.Normal : said.Text, Day(said.When), Number(said.Confidence),
            said.By ?? "", said.Test is { } test ? (test.Found ? "yes" : "no") : "", Number(said.Test?.Sensitivity), Number(said.Test?.Specificity),
        ];

    private IEnumerable<IReadOnlyList<string>> Clutches() =>
        from clutch in _records.Clutches
            .Where(c => c.BinnedAt is null)
            .OrderBy(c => Tags.Order(c.Tag), StringComparer.Ordinal).ThenBy(c => c.Id.ToString(), StringComparer.Ordinal)
        select (string[])
        [
            clutch.Tag, _tags[clutch.Dam], string.Join(Tags.Separator, clutch.Sires.Select(s => _tags[s]).OrderBy(Tags.Order, StringComparer.Ordinal)), Day(clutch.Laid),
            Number(clutch.GoodEggs), Number(clutch.Slugs), Number(clutch.MassGrams), clutch.Incubator is { } incubator ? _incubators[incubator] : "", Day(clutch.Hatched),
            string.Join("; ", clutch.Counted.Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Count} {Letter(c.Sex)} {c.Seen}"))), clutch.Notes,
        ];

    private IEnumerable<IReadOnlyList<string>> Log() =>
        from happening in _records.Log
            .Where(h => h.WithdrawnAt is null && !_binned.Contains(h.Animal))
            .OrderBy(h => h.When.Latest).ThenBy(h => Order(h.Animal), StringComparer.Ordinal).ThenBy(h => h.Id.ToString(), StringComparer.Ordinal)
        select (string[])
        [
            _tags[happening.Animal], Day(happening.When), HappeningRules.Words(happening.Kind), Number(happening.Amount),
            happening.Amount is null ? "" : HappeningRules.Unit(happening.Kind) ?? "", happening.Mate is { } mate ? _tags[mate] : "",
            happening.Clutch is { } clutch ? _clutches[clutch] : "", happening.Text,
        ];

    private IEnumerable<IReadOnlyList<string>> Incubators() =>
        from incubator in _records.Incubators.OrderBy(i => i.Name, StringComparer.Ordinal).ThenBy(i => i.Id.ToString(), StringComparer.Ordinal)
        select (string[])
        [
            incubator.Name, Number(incubator.LowestCelsius), Number(incubator.HighestCelsius), Number(incubator.LowestHumidityPercent), Number(incubator.HighestHumidityPercent),
            incubator.RetiredAt is null ? "yes" : "no", incubator.Notes,
        ];

    private IEnumerable<IReadOnlyList<string>> Readings() =>
        from reading in _records.Readings
            .Where(r => r.WithdrawnAt is null)
            .OrderBy(r => r.TakenAt).ThenBy(r => r.Id.ToString(), StringComparer.Ordinal)
        select (string[])
        [
            _incubators[reading.Incubator], reading.TakenAt.ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFF'Z'", CultureInfo.InvariantCulture), Number(reading.Celsius), Number(reading.HumidityPercent), reading.Text,
        ];

    private IEnumerable<IReadOnlyList<string>> Photos() =>
        from photo in _records.Photos
            .Where(p => p.WithdrawnAt is null && !_binned.Contains(p.Animal))
            .OrderBy(p => Order(p.Animal), StringComparer.Ordinal).ThenBy(p => p.File, StringComparer.Ordinal).ThenBy(p => p.Id.ToString(), StringComparer.Ordinal)
        select (string[])
        [
            _tags[photo.Animal], Day(photo.Taken), photo.Caption, photo.File, Number(photo.Width), Number(photo.Height), Number(photo.Bytes), photo.Digest,
        ];

    private string Order(Guid animal) => Tags.Order(_tags[animal]);

    private static string Day(DateSnapshot? day) => day?.ToRange().ToText() ?? "";

    private static string Number(double? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";

    private static string Letter(Sex? sex) => sex switch { Sex.Male => "m", Sex.Female => "f", null => "u" };
}
