using System.Globalization;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Backups;
using Clutchwright.Desk.Tests.Testing;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Desk.Tests.Backups;

/// <summary>The daily backup, by a clock that is set.</summary>
public sealed class KeepBackupsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("clutchwright-kept-").FullName;
    private readonly SetClock _clock = new();
    private readonly ServiceProvider _services;

    public KeepBackupsTests()
    {
        var services = new ServiceCollection();
        services.AddSingleton<TimeProvider>(_clock);
        services.AddDesk(Shipped.Folder, _folder, null, BackupSettings.In(_folder) with { Hour = 3 });
        services.AddSingleton(Shipped.Catalogue);
        _services = services.BuildServiceProvider();
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose()
    {
        _services.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task RunIfDue_DayByDay_IsMadeOnceADayIfAnythingWasDone()
    {
        _clock.Set("2026-03-01T10:00");
        Assert.Null(await RunAsync());
        await AddAsync("A");

        Assert.Equal("clutchwright-2026-03-01-100000.clutchwright", Path.GetFileName(await RunAsync()));

        await AddAsync("B");
        Assert.Null(await RunAsync());
        _clock.Set("2026-03-02T02:59");
        Assert.Null(await RunAsync());
        _clock.Set("2026-03-02T03:05");
        Assert.Equal("clutchwright-2026-03-02-030500.clutchwright", Path.GetFileName(await RunAsync()));
        Assert.Null(await RunAsync());

        // Nothing was done since, however many days go by.
        _clock.Set("2026-03-05T12:00");
        Assert.Null(await RunAsync());
        await AddAsync("C");
        Assert.Equal("clutchwright-2026-03-05-120000.clutchwright", Path.GetFileName(await RunAsync()));
        Assert.Null(_services.GetRequiredService<KeepBackups>().Failure);
    }

    [Fact]
    public async Task RunIfDue_OneWasAskedForSince_IsNotMade()
    {
        _clock.Set("2026-03-01T10:00");
        await AddAsync("A");
        Assert.Empty((await _services.GetRequiredService<BackUp>().RunAsync(null, Cancel)).Problems);
        await AddAsync("B");

        Assert.Null(await RunAsync());
    }

    [Fact]
    public async Task RunIfDue_CannotBeMade_IsToldAndTriedAgain()
    {
        await File.WriteAllTextAsync(Path.Combine(_folder, "backups"), "a file where the folder should be", Cancel);
        _clock.Set("2026-03-01T10:00");
        await AddAsync("A");

        Assert.Null(await RunAsync());

        var standing = (await _services.GetRequiredService<ShowBook>().RunAsync(Cancel)).Value!;
        Assert.Contains("cannot be used", standing.Failure!.Why, StringComparison.Ordinal);
        Assert.Empty(standing.Backups);
        File.Delete(Path.Combine(_folder, "backups"));
        _clock.Set("2026-03-01T10:30");
        Assert.Null(await RunAsync());
        _clock.Set("2026-03-01T11:01");
        Assert.NotNull(await RunAsync());
        Assert.Null((await _services.GetRequiredService<ShowBook>().RunAsync(Cancel)).Value!.Failure);
    }

    [Fact]
    public async Task ShowBook_AfterABackup_SaysWhetherAnythingWasDoneSince()
    {
        _clock.Set("2026-03-01T10:00");
        await AddAsync("A");
        await RunAsync();

        Assert.False((await _services.GetRequiredService<ShowBook>().RunAsync(Cancel)).Value!.IsChangedSince);
        await AddAsync("B");
        Assert.True((await _services.GetRequiredService<ShowBook>().RunAsync(Cancel)).Value!.IsChangedSince);
    }

    /// <summary>Three years of a backup a day: the last seven days, the last of five weeks, the last of twelve months stay.</summary>
    [Fact]
    public void TooOld_ManyDays_KeepsDaysWeeksAndMonths()
    {
        var settings = BackupSettings.In("x");
        var kept = new List<KeptBackup>();
        for (var day = new DateTime(2023, 1, 1, 3, 0, 0, DateTimeKind.Unspecified); day < new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Unspecified); day = day.AddDays(1))
        {
            kept.Insert(0, Kept(day, BackupReason.Scheduled));
            kept = [.. kept.Except(KeepBackups.TooOld(kept, settings))];
        }

        // By hand: Sundays end ISO weeks; 2025-12-31 is a Wednesday.
        Assert.Equal(
            [
                "2025-12-31", "2025-12-30", "2025-12-29", "2025-12-28", "2025-12-27", "2025-12-26", "2025-12-25", "2025-12-21", "2025-12-14", "2025-12-07",
                "2025-11-30", "2025-10-31", "2025-09-30", "2025-08-31", "2025-07-31", "2025-06-30", "2025-05-31", "2025-04-30", "2025-03-31", "2025-02-28", "2025-01-31",
            ],
            kept.Select(b => b.Name["clutchwright-".Length..][..10]));
    }

    [Fact]
    public void TooOld_OthersThanTheScheduled_Stay()
    {
        var old = new DateTime(2020, 1, 1, 3, 0, 0, DateTimeKind.Unspecified);
        KeptBackup[] backups =
        [
            .. Enumerable.Range(0, 40).Select(i => Kept(old.AddYears(5).AddMinutes(-i), BackupReason.Scheduled)),
            Kept(old, BackupReason.ByHand),
            Kept(old, BackupReason.BeforeRestoring),
            new("mine.clutchwright", "mine.clutchwright", 1, default, null),
        ];

        var going = KeepBackups.TooOld(backups, BackupSettings.In("x"));

        Assert.Equal(39, going.Count);
        Assert.All(going, b => Assert.Equal(BackupReason.Scheduled, b.Reason));
    }

    private static KeptBackup Kept(DateTime local, BackupReason reason)
    {
        var name = BackupName.Of(local, reason);
        return new(name, name, 1, new DateTimeOffset(local, TimeSpan.Zero), reason);
    }

    private Task<string?> RunAsync() => _services.GetRequiredService<KeepBackups>().RunIfDueAsync(Cancel);

    private async Task AddAsync(string tag) =>
        Assert.Empty((await _services.GetRequiredService<SaveAnimal>().RunAsync(new AnimalForm { Tag = tag }, null, "Keeper", Cancel)).Problems);

    /// <summary>A clock that stands until it is set; its zone is UTC.</summary>
    private sealed class SetClock : TimeProvider
    {
        private DateTimeOffset _now;

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public void Set(string now) => _now = DateTimeOffset.Parse(now + ":00Z", CultureInfo.InvariantCulture);

        public override DateTimeOffset GetUtcNow() => _now;
    }
}
