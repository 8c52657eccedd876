using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Export;

/// <summary>The tables beside the JSON, for spreadsheets and other programs: what stands, by the tags a keeper knows. What is in the bin or was
/// taken back is in the JSON only. Animals, clutches and the log are as they are imported.</summary>
internal sealed class BookTables
{
    private readonly StockContext _db;
    private readonly BookRecords _records;
    private readonly IReadOnlyList<Animal> _animals;
    private readonly Dictionary<Guid, string> _tags;
    private readonly Dictionary<Guid, string> _incubators;
    private readonly HashSet<Guid> _binned;

    /// <param name="db">The book at the moment of the records.</param>
    /// <param name="records">Everything.</param>
    /// <param name="animals">Those out of the bin, with their statements.</param>
    public BookTables(StockContext db, BookRecords records, IReadOnlyList<Animal> animals)
    {
        (_db, _records, _animals) = (db, records, animals);
        _tags = records.Animals.ToDictionary(a => a.Id, a => a.Tag);
        _incubators = records.Incubators.ToDictionary(i => i.Id, i => i.Name);
        _binned = [.. records.Animals.Where(a => a.BinnedAt is not null).Select(a => a.Id)];
    }

    /// <summary>Writes one of <see cref="BookFormat.Tables"/>.</summary>
    public Task WriteAsync(string name, TextWriter writer, CancellationToken cancellation) => name switch
    {
        "animals.csv" => ExportAnimals.WriteAsync(_animals, writer, cancellation),
        "statements.csv" => CsvRows.WriteAsync(writer, ["animal", "kind", "text", "date", "sure", "by", "found", "sensitivity", "specificity"], Statements(), cancellation),
        "clutches.csv" => ExportClutches.WriteAsync(_db, writer, cancellation),
        "log.csv" => ExportLog.WriteAsync(_db, writer, cancellation),
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
}
