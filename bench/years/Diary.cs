using System.Globalization;
using System.Security.Cryptography;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Photos;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Years;

/// <summary>One deed of the invented keeper: when, and what it writes. The words are those of the deed.</summary>
internal sealed record DiaryLine(DateTime When, Func<StockContext, Task<string>> Write);

/// <summary>Everything that the invented keeper wrote down over the years, deed by deed.</summary>
internal sealed class Diary
{
    private readonly Keeping _keeping;
    private readonly Random _random;
    private readonly List<DiaryLine> _lines = [];
    private readonly IncubatorId[] _incubators = [IncubatorId.New(), IncubatorId.New()];

    /// <summary>Writes it in the mind only.</summary>
    /// <param name="keeping">What happened.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="photosAYear">How many photos are kept a year.</param>
    public Diary(Keeping keeping, int seed, int photosAYear)
    {
        (_keeping, _random) = (keeping, new Random(seed));
        for (var i = 0; i < _incubators.Length; i++)
        {
            var (id, name) = (_incubators[i], $"Incubator {(char)('A' + i)}");
            At(keeping.First, db => Taken($"Added {name}", db.Incubators.Add(new(id, new() { Name = name, LowestCelsius = 30, HighestCelsius = 32.5 }))));
            for (var day = keeping.First.AddDays(60); day <= keeping.Today; day = day.AddDays(1))
            {
                Read(id, day);
            }
        }

        for (var i = 0; i < keeping.Animals.Count; i++)
        {
            Live(keeping.Animals[i], i);
        }

        for (var i = 0; i < keeping.Years.Count; i++)
        {
            Season(keeping.Years[i], i);
        }

        var days = keeping.Today.DayNumber - keeping.First.DayNumber;
        for (var n = photosAYear * days / 365; n > 0; n--)
        {
            Photograph(n);
        }
    }

    /// <summary>The deeds in the order of their days.</summary>
    public IReadOnlyList<DiaryLine> Lines() => [.. _lines.OrderBy(l => l.When)];

    private static Task<string> Taken(string words, object _) => Task.FromResult(words);

    private void At(DateOnly day, Func<StockContext, Task<string>> write)
    {
        if (day <= _keeping.Today)
        {
            _lines.Add(new(day.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc).AddMilliseconds(_lines.Count * 100L % 80_000_000L), write));
        }
    }

    private void Live(KeptAnimal animal, int place)
    {
        if (animal.Sire < 0)
        {
            At(animal.Came, db =>
            {
                var added = new Animal(new(animal.Id));
                added.Take(new AnimalEntry { Tag = animal.Tag, Sex = animal.IsFemale ? Sex.Female : Sex.Male, Hatched = DateRange.Read(animal.Came.AddYears(-3).Year.ToString(CultureInfo.InvariantCulture)).Value });
                db.Animals.Add(added);
                State(db, animal, place);
                return Task.FromResult($"Added {added}");
            });
        }

        var isGrown = animal.Sire < 0;
        var left = animal.Left < _keeping.Today ? animal.Left : _keeping.Today;
        for (var day = animal.Came.AddDays(1 + (place % 10)); day < left; day = day.AddDays(isGrown || day.DayNumber - animal.Came.DayNumber > 365 ? 10 : 7))
        {
            var fed = _random.Next(9) > 0;
            Happen(animal, fed ? HappeningKind.Fed : HappeningKind.FoodRefused, day, fed ? 20 + _random.Next(60) : null, fed ? "rat" : "");
        }

        for (var (day, mass) = (animal.Came.AddDays(5 + (place % 25)), isGrown ? 1_500.0 : 70.0); day < left; day = day.AddDays(30))
        {
            mass = Math.Min(isGrown ? 2_300 : 1_900, mass * (1.0 + ((_random.NextDouble() - 0.35) * 0.12)));
            Happen(animal, HappeningKind.Weighed, day, Math.Round(mass), "");
        }

        for (var day = animal.Came.AddDays(10 + _random.Next(6)); day < left; day = day.AddDays(45 + _random.Next(30)))
        {
            Happen(animal, HappeningKind.Shed, day, null, "");
        }

        if (animal.Left <= _keeping.Today)
        {
            Happen(animal, HappeningKind.Sold, animal.Left, null, "");
        }
    }

    private void Season(KeptYear season, int number)
    {
        var (dam, sire) = (_keeping.Animals[season.Dam], _keeping.Animals[season.Sire]);
        Happen(dam, HappeningKind.Introduced, season.Paired, null, "", sire);
        for (var (day, n) = (season.Paired.AddDays(1), 0); n < 6 && day < season.Ovulated; day = day.AddDays(9), n++)
        {
            Happen(dam, HappeningKind.Locked, day, null, "", sire);
            if (n % 2 == 1)
            {
                Happen(dam, HappeningKind.FolliclesMeasured, day, 8 + (5 * n), "");
            }
        }

        if (!season.WillLay)
        {
            return;
        }

        if (number % 5 < 4)
        {
            Happen(dam, HappeningKind.Ovulated, season.Ovulated, null, "");
        }

        Happen(dam, HappeningKind.PreLayShed, season.Shed, null, "");
        var (id, incubator) = (ClutchId.New(), _incubators[number % 2]);
        At(season.Laid, db =>
        {
            var clutch = new Clutch(id, new()
            {
                Tag = $"C{number + 1:000}",
                DamId = new(dam.Id),
                Sires = [new(sire.Id)],
                Laid = DateRange.On(season.Laid),
                GoodEggs = season.GoodEggs,
                Slugs = season.Slugs,
                MassGrams = season.GoodEggs * 85,
                IncubatorId = incubator,
            });
            db.Clutches.Add(clutch);
            return Task.FromResult($"Wrote down {clutch}");
        });
        Happen(dam, HappeningKind.Candled, season.Laid.AddDays(14), season.GoodEggs, "", clutch: id);
        if (number % 3 > 0)
        {
            // Now and then the first young are out before anybody looks.
            Happen(dam, HappeningKind.Pipped, season.Pipped, null, "", clutch: id);
        }

        foreach (var place in season.Young)
        {
            Hatch(place, id);
        }
    }

    private void Hatch(int place, ClutchId id)
    {
        var animal = _keeping.Animals[place];
        var grams = 55 + _random.Next(25);
        At(animal.Came, async db =>
        {
            var clutch = await db.Clutches.SingleAsync(c => c.ClutchId == id);
            var entry = new HatchlingEntry { AnimalId = new(animal.Id), Tag = animal.Tag, Sex = animal.IsFemale ? Sex.Female : Sex.Male, Hatched = DateRange.On(animal.Came), MassGrams = grams };
            var young = new Animal(entry.AnimalId);
            young.Take(ClutchAnimals.Entry(clutch, entry));
            young.BelongTo(id);
            db.Animals.Add(young);
            State(db, animal, place);
            db.Happenings.Add(new(HappeningId.New(), young.AnimalId, new() { Kind = HappeningKind.Weighed, When = entry.Hatched, Amount = grams }));
            if (clutch.Hatched is null)
            {
                clutch.Hatch(entry.Hatched);
            }

            return $"Entered {young.Tag} of clutch {clutch.Tag}";
        });
    }

    private static void State(StockContext db, KeptAnimal animal, int place)
    {
        var (seen, told) = (Keeping.Seen(animal), Keeping.Told(animal, place));
        db.Statements.Add(new(StatementId.New(), new(animal.Id), new() { Kind = seen.Length > 0 ? StatementKind.Seen : StatementKind.LookedAtNormal, Text = seen, When = DateRange.On(animal.Came) }));
        if (told.Length > 0)
        {
            db.Statements.Add(new(StatementId.New(), new(animal.Id), new() { Kind = StatementKind.Told, Text = told }));
        }
    }

    private void Happen(KeptAnimal animal, HappeningKind kind, DateOnly day, double? amount, string text, KeptAnimal? mate = null, ClutchId? clutch = null) => At(day, async db =>
    {
        var entry = new HappeningEntry { Kind = kind, When = DateRange.On(day), Amount = amount, Text = text, MateId = mate is null ? null : new(mate.Id), ClutchId = clutch };
        var happening = new Happening(HappeningId.New(), new(animal.Id), entry);
        db.Happenings.Add(happening);
        if (kind is HappeningKind.Weighed or HappeningKind.Sold)
        {
            var id = new AnimalId(animal.Id);
            var subject = await db.Animals.SingleAsync(a => a.AnimalId == id);
            if (kind == HappeningKind.Weighed)
            {
                subject.Weigh(amount);
            }
            else
            {
                subject.Become(AnimalStatus.Sold);
            }
        }

        return $"Wrote of {animal.Tag}: {happening}";
    });

    private void Read(IncubatorId incubator, DateOnly day)
    {
        var (celsius, humidity) = (Math.Round(31.0 + (_random.NextDouble() * 1.4), 1), 90 + _random.Next(9));
        At(day, db =>
        {
            var reading = new Reading(ReadingId.New(), incubator, new() { TakenAt = day.ToDateTime(new TimeOnly(0, 5), DateTimeKind.Utc), Celsius = celsius, HumidityPercent = humidity });
            db.Readings.Add(reading);
            return Task.FromResult($"Read an incubator: {reading}");
        });
    }

    private void Photograph(int number)
    {
        var animal = _keeping.Animals[_random.Next(_keeping.Animals.Count)];
        var day = animal.Came.AddDays(1 + _random.Next(60));
        var seed = _random.Next();
        At(day < _keeping.Today ? day : _keeping.Today, db =>
        {
            var (full, small) = (Camera.Take(new Random(seed)), Camera.Thumbnail);
            var digest = Convert.ToHexStringLower(SHA256.HashData(full));
            db.PhotoContents.Add(new(digest, full, small));
            var photo = new Photo(PhotoId.New(), new(animal.Id), digest, new(full, small, Camera.Width, Camera.Height, DateRange.On(day), number % 3 == 0 ? "side" : ""));
            db.Photos.Add(photo);
            return Task.FromResult($"Kept of {animal.Tag}: {photo}");
        });
    }
}
