using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.History;

/// <summary>The words for the fields of the history, and for values that the history keeps by a name of the program's.</summary>
internal static class FieldWords
{
    public static string Of(string field) => field switch
    {
        nameof(AnimalSnapshot.PossibleSires) => "possible sires",
        nameof(AnimalSnapshot.MassGrams) => "mass in grams",
        nameof(AnimalSnapshot.BinnedAt) => "in the bin since",
        nameof(StatementSnapshot.WithdrawnAt) => "withdrawn at",
        nameof(StatementSnapshot.Confidence) => "how sure",
        nameof(StatementSnapshot.Test) => "DNA test",
        nameof(RouteSnapshot.FirstYear) => "first season",
        nameof(RouteSnapshot.LastYear) => "last season",
        nameof(RouteSnapshot.AdoptedAt) => "adopted at",
        nameof(RouteSnapshot.Asked) => "asked",
        nameof(ClutchSnapshot.GoodEggs) => "good eggs",
        nameof(IncubatorSnapshot.LowestCelsius) => "lowest °C",
        nameof(IncubatorSnapshot.HighestCelsius) => "highest °C",
        nameof(IncubatorSnapshot.LowestHumidityPercent) => "lowest humidity in %",
        nameof(IncubatorSnapshot.HighestHumidityPercent) => "highest humidity in %",
        nameof(IncubatorSnapshot.RetiredAt) => "out of use since",
        nameof(ReadingSnapshot.TakenAt) => "read at",
        nameof(ReadingSnapshot.Celsius) => "°C",
        nameof(ReadingSnapshot.HumidityPercent) => "humidity in %",
        _ => field.ToLowerInvariant(),
    };

    public static string Of(IEnumerable<string> fields) => string.Join(", ", fields.Select(Of));

    /// <summary>A value of a field in words; one that is no name of the program's as it is.</summary>
    public static string? Value(string field, string? value) => field switch
    {
        nameof(AnimalSnapshot.Status) when Enum.TryParse<AnimalStatus>(value, out var status) => StatusWords.Of(status),
        nameof(RouteSnapshot.Ending) when Enum.TryParse<RouteEnding>(value, out var ending) => ending == RouteEnding.Reached ? "reached" : "given up",
        nameof(HappeningSnapshot.Kind) when Enum.TryParse<HappeningKind>(value, out var happened) && Enum.GetNames<HappeningKind>().Contains(value, StringComparer.Ordinal) => HappeningRules.Words(happened),
        nameof(StatementSnapshot.Kind) when Enum.TryParse<StatementKind>(value, out var kind) => StatementWords.Of(kind),
        nameof(AnimalSnapshot.Sex) when Enum.TryParse<Sex>(value, out var sex) => sex == Sex.Male ? "male" : "female",
        _ => value,
    };
}
