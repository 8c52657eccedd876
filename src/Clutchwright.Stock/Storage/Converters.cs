using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Photos;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Settings;
using Clutchwright.Stock.Statements;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Clutchwright.Stock.Storage;

internal sealed class UtcConverter() : ValueConverter<DateTime, DateTime>(
    instant => instant, instant => DateTime.SpecifyKind(instant, DateTimeKind.Utc));

internal sealed class AnimalIdConverter() : ValueConverter<AnimalId, Guid>(id => id.Value, value => new AnimalId(value));

internal sealed class StatementIdConverter() : ValueConverter<StatementId, Guid>(id => id.Value, value => new StatementId(value));

internal sealed class KeptSeasonIdConverter() : ValueConverter<KeptSeasonId, Guid>(id => id.Value, value => new KeptSeasonId(value));

internal sealed class AdoptedRouteIdConverter() : ValueConverter<AdoptedRouteId, Guid>(id => id.Value, value => new AdoptedRouteId(value));

internal sealed class HappeningIdConverter() : ValueConverter<HappeningId, Guid>(id => id.Value, value => new HappeningId(value));

internal sealed class ClutchIdConverter() : ValueConverter<ClutchId, Guid>(id => id.Value, value => new ClutchId(value));

internal sealed class IncubatorIdConverter() : ValueConverter<IncubatorId, Guid>(id => id.Value, value => new IncubatorId(value));

internal sealed class ReadingIdConverter() : ValueConverter<ReadingId, Guid>(id => id.Value, value => new ReadingId(value));

internal sealed class PhotoIdConverter() : ValueConverter<PhotoId, Guid>(id => id.Value, value => new PhotoId(value));

internal sealed class SettingIdConverter() : ValueConverter<SettingId, Guid>(id => id.Value, value => new SettingId(value));

internal sealed class DeedIdConverter() : ValueConverter<DeedId, long>(id => id.Number, number => new DeedId(number));
