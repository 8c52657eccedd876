using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Photos;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Tests.Testing;

/// <summary>The deeds of the room: rounds, incubators, their readings, photos.</summary>
internal sealed partial class RandomDeeds
{
    private static readonly HappeningKind[] OfARound = [HappeningKind.Fed, HappeningKind.FoodRefused, HappeningKind.Shed, HappeningKind.Weighed];

    private static readonly PhotoProblem NoPhoto = new PhotoProblem.NotFound(default);
    private static readonly IncubatorProblem NoIncubator = new IncubatorProblem.NotFound(string.Empty);

    private Func<StockContext, Task<Problem?>>[] RoomDeeds() =>
    [
        RoundAsync, AddIncubatorAsync, EditIncubatorAsync, RetireIncubatorAsync, ReadAsync, ReadAsync, ReadManyAsync, WithdrawReadingAsync,
        PhotographAsync, PhotographAsync, DescribePhotoAsync, TurnPhotoAsync,
    ];

    private async Task<Problem?> RoundAsync(StockContext db)
    {
        var here = await AnimalsAsync(db);
        if (here.Count == 0)
        {
            return new AnimalProblem.NotFound(default);
        }

        var lines = here.OrderBy(_ => _random.Next()).Take(_random.Next(1, 6)).Select(a =>
        {
            var kind = Of(OfARound);
            return new RoundLine(a.AnimalId, new HappeningEntry
            {
                Kind = kind,
                When = Day(),
                Amount = HappeningRules.NeedsAmount(kind) || (HappeningRules.Unit(kind) is not null && Chance(0.5)) ? _random.Next(1, 4_000) / 4.0 : null,
            });
        });
        return (await new RecordRound(_book).RunAsync([.. lines], TestBook.Who, Cancellation)).Problem;
    }

    private IncubatorEntry IncubatorOf(string name) => new()
    {
        Name = name,
        LowestCelsius = Chance(0.5) ? 30.0 : null,
        HighestCelsius = Chance(0.5) ? 32.5 : null,
        LowestHumidityPercent = Chance(0.5) ? 80.0 : null,
        Notes = Chance(0.3) ? Of(Genes) : "",
    };

    private static async Task<List<Incubator>> IncubatorsAsync(StockContext db) =>
        await db.Incubators.AsNoTracking().OrderBy(i => i.IncubatorId).ToListAsync(Cancellation);

    private ReadingEntry Reading() => new()
    {
        TakenAt = new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc).AddMinutes(_random.Next(60 * 24 * 30)),
        Celsius = Chance(0.8) ? 28.0 + (_random.Next(60) / 10.0) : null,
        HumidityPercent = 70.0 + _random.Next(30),
        Text = Chance(0.3) ? Name("said ") : "",
    };

    private async Task<Problem?> AddIncubatorAsync(StockContext db) =>
        (await new AddIncubator(_book).RunAsync(IncubatorOf(Chance(0.8) ? Name("Box ") : "Box"), TestBook.Who, Cancellation)).Problem;

    private async Task<Problem?> EditIncubatorAsync(StockContext db) =>
        await IncubatorsAsync(db) is { Count: > 0 } boxes && Of(boxes) is var box
            ? (await new EditIncubator(_book).RunAsync(box.IncubatorId, box.Version, IncubatorOf(Chance(0.5) ? box.Name : Name("Box ")), TestBook.Who, Cancellation)).Problem
            : NoIncubator;

    private async Task<Problem?> RetireIncubatorAsync(StockContext db) =>
        await IncubatorsAsync(db) is { Count: > 0 } boxes && Of(boxes) is var box
            ? (box.RetiredAt is null
                ? await new RetireIncubator(_book).RunAsync(box.IncubatorId, TestBook.Who, Cancellation)
                : await new RetireIncubator(_book).BackAsync(box.IncubatorId, TestBook.Who, Cancellation)).Problem
            : NoIncubator;

    private async Task<Problem?> ReadAsync(StockContext db) =>
        await IncubatorsAsync(db) is { Count: > 0 } boxes
            ? (await new RecordReading(_book).RunAsync(Of(boxes).IncubatorId, Reading(), TestBook.Who, Cancellation)).Problem
            : NoIncubator;

    private async Task<Problem?> ReadManyAsync(StockContext db) =>
        await IncubatorsAsync(db) is { Count: > 0 } boxes
            ? (await new RecordReadings(_book).RunAsync(
                Of(boxes).IncubatorId, [.. Enumerable.Range(0, _random.Next(1, 8)).Select(_ => Reading())], "logger.csv", TestBook.Who, Cancellation)).Problem
            : NoIncubator;

    private async Task<Problem?> WithdrawReadingAsync(StockContext db) =>
        await db.Readings.AsNoTracking().OrderBy(r => r.ReadingId).Select(r => r.ReadingId).ToListAsync(Cancellation) is { Count: > 0 } readings
            ? (await new WithdrawReading(_book).RunAsync(Of(readings), TestBook.Who, Cancellation)).Problem
            : NoIncubator;

    private async Task<Problem?> PhotographAsync(StockContext db)
    {
        if (await AnimalsAsync(db) is not { Count: > 0 } here)
        {
            return NoPhoto;
        }

        // Of few pictures, so that some are kept twice.
        var picture = new byte[_random.Next(1, 60_000)];
        new Random(Chance(0.2) ? 7 : _random.Next()).NextBytes(picture);
        var entry = new PhotoEntry(Chance(0.2) ? picture.AsMemory(0, 1) : picture, picture.AsMemory(0, 1), 4, 3, Chance(0.5) ? Day() : null, Name("photo "));
        return (await new AddPhoto(_book).RunAsync(Of(here).AnimalId, entry, TestBook.Who, Cancellation)).Problem;
    }

    private static async Task<List<Photo>> PhotosAsync(StockContext db) =>
        await db.Photos.AsNoTracking().OrderBy(p => p.PhotoId).ToListAsync(Cancellation);

    private async Task<Problem?> DescribePhotoAsync(StockContext db) =>
        await PhotosAsync(db) is { Count: > 0 } photos && Of(photos) is var photo
            ? (await new ChangePhoto(_book).DescribeAsync(photo.PhotoId, photo.Version, Chance(0.5) ? Day() : null, Name("photo "), TestBook.Who, Cancellation)).Problem
            : NoPhoto;

    private async Task<Problem?> TurnPhotoAsync(StockContext db) =>
        await PhotosAsync(db) is { Count: > 0 } photos && Of(photos) is var photo
            ? (photo.WithdrawnAt is null
                ? await new ChangePhoto(_book).WithdrawAsync(photo.PhotoId, TestBook.Who, Cancellation)
                : await new ChangePhoto(_book).RestoreAsync(photo.PhotoId, TestBook.Who, Cancellation)).Problem
            : NoPhoto;
}
