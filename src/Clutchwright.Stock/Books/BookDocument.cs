using Clutchwright.Stock.Export;
using Clutchwright.Stock.History;

namespace Clutchwright.Stock.Books;

/// <summary>The JSON of the whole book as it is read.</summary>
internal sealed record BookDocument(
    string Format,
    int Version,
    BookUnits Units,
    IReadOnlyList<AnimalSnapshot> Animals,
    IReadOnlyList<StatementSnapshot> Statements,
    IReadOnlyList<IncubatorSnapshot> Incubators,
    IReadOnlyList<ReadingSnapshot> Readings,
    IReadOnlyList<ClutchSnapshot> Clutches,
    IReadOnlyList<HappeningSnapshot> Log,
    IReadOnlyList<PhotoRecord> Photos,
    IReadOnlyList<RouteSnapshot> Routes,
    IReadOnlyList<SeasonSnapshot> Seasons,
    IReadOnlyList<SettingSnapshot> Settings)
{
    public BookRecords ToRecords() => new(Animals, Statements, Incubators, Readings, Clutches, Log, Photos, Routes, Seasons, Settings);
}

/// <summary>The units of all numbers; there is no choice, they are told so that nobody has to guess.</summary>
internal sealed record BookUnits(string Mass, string Temperature, string Humidity)
{
    public static BookUnits Only { get; } = new("g", "°C", "%");
}
