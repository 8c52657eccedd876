using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Settings;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Tests.Testing;

/// <summary>Does to a book what a keeper may do, at random from a seed. Some of it the book refuses.</summary>
internal sealed partial class RandomDeeds
{
    private static readonly string[] Genes = ["Clown", "66% het Pied", "Pastel", "Banana", "Lesser Mojave", "Ünïcode 蛇 🐍"];

    private readonly Book _book;
    private readonly Random _random;
    private readonly Func<StockContext, Task<Problem?>>[] _deeds;
    private int _made;

    public RandomDeeds(Book book, int seed)
    {
        _book = book;
        _random = new Random(seed);
        _deeds =
        [
            AddAsync, AddAsync, AddAsync, EditAsync, EditAsync, BinAsync, RestoreAsync, SayAsync, SayAsync, WithdrawAsync,
            WriteAsync, WriteAsync, WriteAsync, CorrectAsync, TakeBackAsync, SeasonAsync, AdoptAsync, EndAsync, ImportAsync,
            LayAsync, LayAsync, EditClutchAsync, HatchAsync, HatchAsync, BinClutchAsync, SetAsync, UndoAsync, UndoAsync,
            .. RoomDeeds(),
        ];
    }

    /// <summary>How often each deed was done, by the name of its method.</summary>
    public Dictionary<string, int> Done { get; } = new(StringComparer.Ordinal);

    /// <summary>The name of the deed that was tried last.</summary>
    public string Tried { get; private set; } = "";

    /// <summary>Does something.</summary>
    /// <returns>Why the book refused it; null if it was done, or there was nothing to do.</returns>
    public async Task<Problem?> NextAsync()
    {
        await using var db = _book.NewContext();
        var deed = Of(_deeds);
        Tried = deed.Method.Name;
        var refused = await deed(db);
        if (refused is null)
        {
            Done[Tried] = Done.GetValueOrDefault(Tried) + 1;
        }

        return refused;
    }

    /// <summary>Does so many things.</summary>
    public async Task RunAsync(int count)
    {
        for (var i = 0; i < count; i++)
        {
            await NextAsync();
        }
    }

    private static CancellationToken Cancellation => TestBook.Cancellation;

    private T Of<T>(IReadOnlyList<T> items) => items[_random.Next(items.Count)];

    private bool Chance(double share) => _random.NextDouble() < share;

    private string Name(string prefix) => string.Create(CultureInfo.InvariantCulture, $"{prefix}{++_made}-{_random.Next(1000)}");

    private DateRange Day() => DateRange.Read(Chance(0.5)
        ? string.Create(CultureInfo.InvariantCulture, $"20{_random.Next(10, 26)}-0{_random.Next(1, 10)}-1{_random.Next(10)}")
        : string.Create(CultureInfo.InvariantCulture, $"about 20{_random.Next(10, 26)}")).Expect();

    private static async Task<List<Animal>> AnimalsAsync(StockContext db, bool binned = false) =>
        await db.Animals.AsNoTracking().Where(a => a.BinnedAt != null == binned).OrderBy(a => a.AnimalId).ToListAsync(Cancellation);

    private AnimalEntry Entry(List<Animal> here, string tag)
    {
        var isDoubtful = here.Count > 3 && Chance(0.3);
        return new()
        {
            Tag = tag,
            Name = Chance(0.3) ? Name("Name ") : null,
            Sex = Of([Sex.Male, Sex.Female, (Sex?)null]),
            Hatched = Chance(0.5) ? Day() : null,
            SireId = !isDoubtful && here.Count > 0 && Chance(0.4) ? Of(here).AnimalId : null,
            DamId = here.Count > 0 && Chance(0.4) ? Of(here).AnimalId : null,
            PossibleSires = isDoubtful ? [.. here.OrderBy(_ => _random.Next()).Take(2).Select(a => a.AnimalId)] : [],
            Status = Of(Enum.GetValues<AnimalStatus>()),
            MassGrams = Chance(0.3) ? _random.Next(1, 20_000) / 8.0 : null,
            Notes = Chance(0.3) ? $"{Of(Genes)}\n\"quoted\", and more" : "",
        };
    }

    private StatementEntry Statement() => Of(Enum.GetValues<StatementKind>()) switch
    {
        StatementKind.LookedAtNormal => new() { Kind = StatementKind.LookedAtNormal },
        StatementKind.DnaTest => new() { Kind = StatementKind.DnaTest, Text = Of(Genes), Test = new DnaTest(Chance(0.5), 0.99, 0.999) },
        var kind => new() { Kind = kind, Text = Of(Genes), When = Chance(0.5) ? Day() : null, Confidence = Chance(0.5) ? 1.0 : 0.3 + 0.1 * _random.Next(6), By = Chance(0.3) ? "a seller" : null },
    };

    private HappeningEntry Happening(List<Animal> here)
    {
        var kind = Of(Enum.GetValues<HappeningKind>());
        return new()
        {
            Kind = kind,
            When = Day(),
            Amount = HappeningRules.Unit(kind) is not null && (HappeningRules.NeedsAmount(kind) || Chance(0.5)) ? _random.Next(1, 400) / 4.0 : null,
            MateId = HappeningRules.IsOfAPair(kind) && here.Count > 0 ? Of(here).AnimalId : null,
            Text = HappeningRules.NeedsText(kind) || Chance(0.3) ? Name("said ") : "",
        };
    }

    private async Task<Problem?> AddAsync(StockContext db) =>
        (await new AddAnimal(_book, TestBook.Check).RunAsync(
            Entry(await AnimalsAsync(db), Name("A")), [.. Enumerable.Range(0, _random.Next(3)).Select(_ => Statement())], TestBook.Who, Cancellation)).Problem;

    private async Task<Problem?> EditAsync(StockContext db) =>
        await AnimalsAsync(db) is { Count: > 0 } here && Of(here) is var animal
            ? (await new EditAnimal(_book).RunAsync(animal.AnimalId, animal.Version, Entry(here, Chance(0.5) ? animal.Tag : Name("E")), TestBook.Who, Cancellation)).Problem
            : new AnimalProblem.NotFound(default);

    private async Task<Problem?> BinAsync(StockContext db) =>
        await AnimalsAsync(db) is { Count: > 0 } here ? (await new BinAnimal(_book).RunAsync(Of(here).AnimalId, TestBook.Who, Cancellation)).Problem : new AnimalProblem.NotFound(default);

    private async Task<Problem?> RestoreAsync(StockContext db) =>
        await AnimalsAsync(db, binned: true) is { Count: > 0 } bin
            ? (await new RestoreAnimal(_book).RunAsync(Of(bin).AnimalId, TestBook.Who, Cancellation)).Problem
            : new AnimalProblem.NotFound(default);

    private async Task<Problem?> SayAsync(StockContext db) =>
        await AnimalsAsync(db) is { Count: > 0 } here
            ? (await new AddStatement(_book, TestBook.Check).RunAsync(Of(here).AnimalId, Statement(), TestBook.Who, Cancellation)).Problem
            : new AnimalProblem.NotFound(default);

    private async Task<Problem?> WithdrawAsync(StockContext db) =>
        await db.Statements.AsNoTracking().OrderBy(s => s.StatementId).Select(s => s.StatementId).ToListAsync(Cancellation) is { Count: > 0 } said
            ? (await new WithdrawStatement(_book).RunAsync(Of(said), TestBook.Who, Cancellation)).Problem
            : new StatementProblem.NotFound(default);

    private async Task<Problem?> WriteAsync(StockContext db) =>
        await AnimalsAsync(db) is { Count: > 0 } here
            ? (await new RecordHappening(_book).RunAsync(Of(here).AnimalId, Happening(here), TestBook.Who, Cancellation)).Problem
            : new AnimalProblem.NotFound(default);

    private async Task<Problem?> CorrectAsync(StockContext db) =>
        await db.Happenings.AsNoTracking().OrderBy(h => h.HappeningId).ToListAsync(Cancellation) is { Count: > 0 } log && Of(log) is var one
            ? (await new CorrectHappening(_book).RunAsync(one.HappeningId, one.Version, Happening(await AnimalsAsync(db)), TestBook.Who, Cancellation)).Problem
            : new HappeningProblem.NotFound(default);

    private async Task<Problem?> TakeBackAsync(StockContext db) =>
        await db.Happenings.AsNoTracking().OrderBy(h => h.HappeningId).Select(h => h.HappeningId).ToListAsync(Cancellation) is { Count: > 0 } log
            ? (await new WithdrawHappening(_book).RunAsync(Of(log), TestBook.Who, Cancellation)).Problem
            : new HappeningProblem.NotFound(default);

    private async Task<SeasonEntry> SeasonOfAsync(StockContext db)
    {
        var year = _random.Next(2026, 2029);
        var known = await db.Seasons.AsNoTracking().SingleOrDefaultAsync(s => s.Year == year, Cancellation);
        var named = await AnimalsAsync(db) is { Count: > 0 } here ? new[] { Of(here) } : [];
        return new(year, known?.Version, $$"""{"goals":["{{Name("goal ")}}"],"eggs":{{_random.Next(9)}}}""", [.. named.Select(a => new NamedAnimal(a.Tag, a.AnimalId))]);
    }

    private async Task<Problem?> SeasonAsync(StockContext db) =>
        (await new KeepSeason(_book).RunAsync(await SeasonOfAsync(db), TestBook.Who, Cancellation)).Problem;

    private async Task<Problem?> AdoptAsync(StockContext db) =>
        (await new AdoptRoute(_book).RunAsync(
            AdoptedRouteId.New(),
            new AdoptedRouteEntry(Of(Genes), 2026, 2026 + _random.Next(4), """{"want":"x"}""", $$"""{"steps":[{{_random.Next(99)}}]}"""),
            Chance(0.5) ? await SeasonOfAsync(db) : null,
            TestBook.Who,
            Cancellation)).Problem;

    private async Task<Problem?> EndAsync(StockContext db) =>
        await db.Routes.AsNoTracking().OrderBy(r => r.AdoptedRouteId).Select(r => r.AdoptedRouteId).ToListAsync(Cancellation) is { Count: > 0 } routes
            ? (await new EndRoute(_book).RunAsync(Of(routes), Of(Enum.GetValues<RouteEnding>()), Chance(0.5) ? await SeasonOfAsync(db) : null, TestBook.Who, Cancellation)).Problem
            : new RouteProblem.NotFound(default);

    private async Task<Problem?> ImportAsync(StockContext db)
    {
        var rows = new StringBuilder("id,sex,sire,dam,hatched,seen,told\r\n");
        var (sire, dam) = (Name("I"), Name("I"));
        rows.Append(CultureInfo.InvariantCulture, $"{sire},m,,,2020,Pastel,\r\n{dam},f,,,2020,,66% het Clown\r\n");
        for (var i = _random.Next(6); i > 0; i--)
        {
            rows.Append(CultureInfo.InvariantCulture, $"{Name("I")},u,{sire},{dam},2024,Clown,\r\n");
        }

        return (await new ImportAnimals(_book, TestBook.Check).RunAsync(AnimalFile.Read(rows.ToString()), "random.csv", TestBook.Who, Cancellation)).Problem;
    }

    private ClutchEntry ClutchOf(List<Animal> here, string tag) => new()
    {
        Tag = tag,
        DamId = Of(here).AnimalId,
        Sires = [.. here.OrderBy(_ => _random.Next()).Take(_random.Next(3)).Select(a => a.AnimalId)],
        Laid = Day(),
        GoodEggs = Chance(0.7) ? _random.Next(1, 12) : null,
        Slugs = Chance(0.3) ? _random.Next(4) : null,
        MassGrams = Chance(0.3) ? _random.Next(100, 900) / 4.0 : null,
        Counted = Chance(0.3) ? [new CountedYoung("normal", null, _random.Next(1, 5))] : [],
        Notes = Chance(0.3) ? Of(Genes) : "",
    };

    private static async Task<List<Clutch>> ClutchesAsync(StockContext db) =>
        await db.Clutches.AsNoTracking().OrderBy(c => c.ClutchId).ToListAsync(Cancellation);

    private async Task<Problem?> LayAsync(StockContext db) =>
        await AnimalsAsync(db) is { Count: > 0 } here
            ? (await new RecordLaying(_book, TestBook.Check).RunAsync(ClutchOf(here, Chance(0.8) ? Name("C") : "C"), TestBook.Who, Cancellation)).Problem
            : new AnimalProblem.NotFound(default);

    private async Task<Problem?> EditClutchAsync(StockContext db) =>
        await ClutchesAsync(db) is { Count: > 0 } clutches && Of(clutches) is var clutch && await AnimalsAsync(db) is { Count: > 0 } here
            ? (await new EditClutch(_book, TestBook.Check).RunAsync(
                clutch.ClutchId, clutch.Version, ClutchOf(here, Chance(0.5) ? clutch.Tag : Name("C")) with { Laid = clutch.Laid }, TestBook.Who, Cancellation)).Problem
            : new ClutchProblem.NotFound("");

    private async Task<Problem?> HatchAsync(StockContext db) =>
        await ClutchesAsync(db) is { Count: > 0 } clutches && Of(clutches) is var clutch
            ? (await new RecordHatchling(_book, TestBook.Check).RunAsync(
                clutch.ClutchId,
                new()
                {
                    AnimalId = AnimalId.New(),
                    Tag = Name("H"),
                    Hatched = DateRange.Read("2026-03").Expect(),
                    Statements = [Statement()],
                    MassGrams = Chance(0.5) ? 60 : null,
                    IsMoreMeant = Chance(0.5),
                },
                TestBook.Who,
                Cancellation)).Problem
            : new ClutchProblem.NotFound("");

    private async Task<Problem?> BinClutchAsync(StockContext db) =>
        await ClutchesAsync(db) is { Count: > 0 } clutches && Of(clutches) is var clutch
            ? (clutch.BinnedAt is null
                ? await new BinClutch(_book).RunAsync(clutch.ClutchId, TestBook.Who, Cancellation)
                : await new BinClutch(_book).RestoreAsync(clutch.ClutchId, TestBook.Who, Cancellation)).Problem
            : new ClutchProblem.NotFound("");

    private async Task<Problem?> SetAsync(StockContext db) =>
        (await new KeepSetting(_book).RunAsync(Of(["label-size", "units"]), $$"""{"value":{{_random.Next(5)}}}""", "Set something", TestBook.Who, Cancellation)).Problem;

    // The latest half the time, so that undoings are undone; else any, which the book mostly refuses.
    private async Task<Problem?> UndoAsync(StockContext db) =>
        await db.Deeds.MaxAsync(d => (DeedId?)d.DeedId, Cancellation) is { } last
            ? (await new UndoDeed(_book).RunAsync(new DeedId(Chance(0.5) ? last.Number : _random.NextInt64(1, last.Number + 1)), TestBook.Who, Cancellation)).Problem
            : new HistoryProblem.NoSuchDeed(default);
}
