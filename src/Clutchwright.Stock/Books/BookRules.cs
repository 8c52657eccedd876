using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Photos;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Books;

/// <summary>Holds the records of a file to the rules that every book keeps, whatever was done to it: of each record by itself, that what it names is
/// there, and the rules between animals. Whether a text is known to the catalogue, and whether a day is yet to come, was asked when it was
/// written.</summary>
internal sealed partial class BookRules
{
    private readonly BookRecords _records;
    private readonly string _file;
    private readonly List<BookFileFault> _faults;
    private readonly Dictionary<RecordKind, HashSet<Guid>> _known = Enum.GetValues<RecordKind>().ToDictionary(kind => kind, _ => new HashSet<Guid>());

    private BookRules(BookRecords records, string file, List<BookFileFault> faults) => (_records, _file, _faults) = (records, file, faults);

    /// <summary>Adds what is wrong.</summary>
    public static void Check(BookRecords records, string file, List<BookFileFault> faults)
    {
        var rules = new BookRules(records, file, faults);
        rules.Identify();
        rules.CheckAnimals();
        rules.CheckStatements();
        rules.CheckIncubators();
        rules.CheckClutches();
        rules.CheckLog();
        rules.CheckPhotos();
        rules.CheckPlans();

        // Records that are wrong by themselves cannot be held against each other.
        if (faults.Count == 0)
        {
            rules.CheckKin();
        }
    }

    public static string Place(string key, int index) => string.Create(CultureInfo.InvariantCulture, $"{key}[{index}]");

    private void Identify()
    {
        var all = new HashSet<Guid>();
        Take("animals", RecordKind.Animal, _records.Animals.Select(r => r.Id));
        Take("statements", RecordKind.Statement, _records.Statements.Select(r => r.Id));
        Take("incubators", RecordKind.Incubator, _records.Incubators.Select(r => r.Id));
        Take("readings", RecordKind.Reading, _records.Readings.Select(r => r.Id));
        Take("clutches", RecordKind.Clutch, _records.Clutches.Select(r => r.Id));
        Take("log", RecordKind.Happening, _records.Log.Select(r => r.Id));
        Take("photos", RecordKind.Photo, _records.Photos.Select(r => r.Id));
        Take("routes", RecordKind.Route, _records.Routes.Select(r => r.Id));
        Take("seasons", RecordKind.Season, _records.Seasons.Select(r => r.Id));
        Take("settings", RecordKind.Setting, _records.Settings.Select(r => r.Id));

        void Take(string key, RecordKind kind, IEnumerable<Guid> ids)
        {
            foreach (var (id, i) in ids.Select((id, i) => (id, i)))
            {
                _known[kind].Add(id);
                if (id == Guid.Empty || !all.Add(id))
                {
                    Say($"{Place(key, i)}.id", id == Guid.Empty ? "the id is empty." : $"another record has the id {id} already.");
                }
            }
        }
    }

    private void CheckAnimals()
    {
        foreach (var (animal, i) in _records.Animals.Select((a, i) => (a, i)))
        {
            var place = Label(Place("animals", i), animal.Tag);
            var isDated = IsDay(place, "hatched", animal.Hatched);
            Instant(place, "binnedAt", animal.BinnedAt);
            Named(place, "sire", RecordKind.Animal, animal.Sire);
            Named(place, "dam", RecordKind.Animal, animal.Dam);
            Named(place, "clutch", RecordKind.Clutch, animal.Clutch);
            foreach (var sire in animal.PossibleSires)
            {
                Named(place, "possibleSires", RecordKind.Animal, sire);
            }

            if (!Tags.IsValid(animal.Tag))
            {
                Say($"{place}.tag", new AnimalProblem.TagInvalid(animal.Tag));
                continue;
            }

            if (isDated)
            {
                foreach (var (field, problem) in Animal.WhyNot(EntryOf(animal)))
                {
                    Say(field is null ? place : $"{place}.{char.ToLowerInvariant($"{field}"[0])}{$"{field}"[1..]}", problem);
                }
            }
        }
    }

    private void CheckStatements()
    {
        foreach (var (said, i) in _records.Statements.Select((s, i) => (s, i)))
        {
            var place = Place("statements", i);
            Named(place, "animal", RecordKind.Animal, said.Animal);
            Instant(place, "withdrawnAt", said.WithdrawnAt);
            if (!IsDay(place, "when", said.When))
            {
                continue;
            }

            var entry = new StatementEntry
            {
                Kind = said.Kind, Text = said.Text, When = said.When?.ToRange(), Confidence = said.Confidence, By = said.By, Test = said.Test,
            };
            foreach (var problem in Statement.WhyNot(entry, (_, _) => null))
            {
                Say(place, problem.Problem);
            }

            if (entry.Tidy() is var tidy && (tidy.Kind != said.Kind || tidy.Text != said.Text))
            {
                Say($"{place}.text", "an animal that shows nothing is of the kind lookedAtNormal, without a text; other texts have no space around them.");
            }
        }
    }

    private void CheckIncubators()
    {
        foreach (var (incubator, i) in _records.Incubators.Select((r, i) => (r, i)))
        {
            var place = Label(Place("incubators", i), incubator.Name);
            Instant(place, "retiredAt", incubator.RetiredAt);
            foreach (var problem in Incubator.WhyNot(new IncubatorEntry
            {
                Name = incubator.Name,
                LowestCelsius = incubator.LowestCelsius,
                HighestCelsius = incubator.HighestCelsius,
                LowestHumidityPercent = incubator.LowestHumidityPercent,
                HighestHumidityPercent = incubator.HighestHumidityPercent,
                Notes = incubator.Notes,
            }))
            {
                Say(place, problem);
            }
        }

        foreach (var (reading, i) in _records.Readings.Select((r, i) => (r, i)))
        {
            var place = Place("readings", i);
            Named(place, "incubator", RecordKind.Incubator, reading.Incubator);
            Instant(place, "takenAt", reading.TakenAt);
            Instant(place, "withdrawnAt", reading.WithdrawnAt);
            foreach (var problem in Reading.WhyNot(
                new ReadingEntry { TakenAt = reading.TakenAt, Celsius = reading.Celsius, HumidityPercent = reading.HumidityPercent, Text = reading.Text }, DateTime.MaxValue))
            {
                Say(place, problem);
            }
        }
    }

    private void CheckClutches()
    {
        foreach (var (clutch, i) in _records.Clutches.Select((c, i) => (c, i)))
        {
            var place = Label(Place("clutches", i), clutch.Tag);
            Named(place, "dam", RecordKind.Animal, clutch.Dam);
            Named(place, "incubator", RecordKind.Incubator, clutch.Incubator);
            Instant(place, "binnedAt", clutch.BinnedAt);
            foreach (var sire in clutch.Sires)
            {
                Named(place, "sires", RecordKind.Animal, sire);
            }

            if (!Tags.IsValid(clutch.Tag))
            {
                Say($"{place}.tag", new ClutchProblem.TagInvalid(clutch.Tag));
                continue;
            }

            if (!IsDay(place, "laid", clutch.Laid) | !IsDay(place, "hatched", clutch.Hatched))
            {
                continue;
            }

            foreach (var problem in Clutch.WhyNot(new Clutch(clutch).ToEntry()))
            {
                Say(place, problem);
            }

            foreach (var young in clutch.Counted)
            {
                if (young.Sex is { } sex && !Enum.IsDefined(sex))
                {
                    Say($"{place}.counted", new AnimalProblem.SexUnknown($"{sex}"));
                }

                if (young.Seen.Trim().Length != young.Seen.Length)
                {
                    Say($"{place}.counted", "what they show has no space around it.");
                }

                foreach (var problem in Statement.WhyNot(new StatementEntry { Kind = StatementKind.Seen, Text = young.Seen }, (_, _) => null))
                {
                    Say($"{place}.counted", problem.Problem);
                }
            }
        }

        foreach (var twins in _records.Clutches.Where(c => c.BinnedAt is null).GroupBy(c => Tags.Key(c.Tag), StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            Say("clutches", new ClutchProblem.TagTaken(twins.First().Tag));
        }
    }

    private void CheckLog()
    {
        foreach (var (happening, i) in _records.Log.Select((h, i) => (h, i)))
        {
            var place = Place("log", i);
            Named(place, "animal", RecordKind.Animal, happening.Animal);
            Named(place, "mate", RecordKind.Animal, happening.Mate);
            Named(place, "clutch", RecordKind.Clutch, happening.Clutch);
            Instant(place, "withdrawnAt", happening.WithdrawnAt);
            IsDay(place, "when", happening.When);
            if (!Enum.IsDefined(happening.Kind))
            {
                Say($"{place}.kind", new HappeningProblem.KindUnknown($"{happening.Kind}"));
                continue;
            }

            if (happening.Amount is not null and not (> 0 and <= Animal.MaxMassGrams) || (happening.Amount is not null && HappeningRules.Unit(happening.Kind) is null))
            {
                Say($"{place}.amount", new HappeningProblem.AmountNotFitting(happening.Kind, happening.Amount, HappeningRules.Unit(happening.Kind), Animal.MaxMassGrams));
            }

            if (HappeningRules.IsOfAPair(happening.Kind) != happening.Mate is not null || happening.Mate == happening.Animal)
            {
                Say($"{place}.mate", new HappeningProblem.MateNotFitting(happening.Kind));
            }

            if (happening.Text.Length > Happening.MaxTextLength || !TextRules.IsStorable(happening.Text))
            {
                Say($"{place}.text", new HappeningProblem.TextNotFitting(happening.Kind, Happening.MaxTextLength));
            }
        }
    }

    private void CheckPhotos()
    {
        foreach (var (photo, i) in _records.Photos.Select((p, i) => (p, i)))
        {
            var place = Place("photos", i);
            Named(place, "animal", RecordKind.Animal, photo.Animal);
            Instant(place, "withdrawnAt", photo.WithdrawnAt);
            IsDay(place, "taken", photo.Taken);
            if (photo.Digest.Length != PhotoContentMapping.DigestLength || !photo.Digest.All(c => char.IsAsciiDigit(c) || c is >= 'a' and <= 'f'))
            {
                Say($"{place}.digest", "a digest is SHA-256 in 64 lower-case hexadecimal digits.");
            }

            if (photo.Width < 1 || photo.Height < 1 || photo.Bytes is < 1 or > BookFormat.MostPhotoBytes)
            {
                Say(place, string.Create(CultureInfo.InvariantCulture, $"width, height and bytes are above 0, and bytes at most {BookFormat.MostPhotoBytes}."));
            }

            if (photo.Caption.Length > Photo.MaxCaptionLength || !TextRules.IsPlainLine(photo.Caption))
            {
                Say($"{place}.caption", new PhotoProblem.CaptionInvalid(Photo.MaxCaptionLength));
            }

            if (!BookZip.IsPhotoName(photo.File))
            {
                Say($"{place}.file", $"a picture lies in {BookFormat.PhotoFolder} and ends in .jpg.");
            }
        }

        foreach (var same in _records.Photos.GroupBy(p => p.Digest, StringComparer.Ordinal).Where(g => g.Select(p => (p.File, p.Bytes)).Distinct().Count() > 1))
        {
            Say("photos", $"photos of the digest {TextRules.Shorten(same.Key, PhotoContentMapping.DigestLength)} name different files or lengths.");
        }

        foreach (var same in _records.Photos.GroupBy(p => p.File, StringComparer.OrdinalIgnoreCase).Where(g => g.Select(p => p.Digest).Distinct(StringComparer.Ordinal).Count() > 1))
        {
            Say("photos", $"photos of different digests name the file {Plain(same.Key)}.");
        }
    }

    private void CheckKin()
    {
        var facts = _records.Animals.Where(a => a.BinnedAt is null).Select(a => AnimalFacts.Of(new AnimalId(a.Id), EntryOf(a))).ToDictionary(a => a.Id);
        var places = _records.Animals.Select((a, i) => (a.Id, Place: Label(Place("animals", i), a.Tag))).ToDictionary(a => new AnimalId(a.Id), a => a.Place);
        foreach (var (animal, problem) in new AnimalRules(facts).WhyNot(facts.Keys))
        {
            Say(places[animal], problem.Problem);
        }

        if (_faults.Count == 0 && BookOrder.Loop(_records) is { } inLoop)
        {
            Say(places[new AnimalId(inLoop)], "it would descend from itself, by its parents or by the dam of its clutch.");
        }
    }

    private static AnimalEntry EntryOf(AnimalSnapshot animal) => new()
    {
        Tag = animal.Tag,
        Name = animal.Name,
        Sex = animal.Sex,
        Hatched = animal.Hatched?.ToRange(),
        SireId = animal.Sire is { } sire ? new AnimalId(sire) : null,
        DamId = animal.Dam is { } dam ? new AnimalId(dam) : null,
        PossibleSires = [.. animal.PossibleSires.Select(id => new AnimalId(id))],
        Status = animal.Status,
        MassGrams = animal.MassGrams,
        Notes = animal.Notes,
    };

    private bool IsDay(string place, string key, DateSnapshot? day)
    {
        if (day is null || (day.Earliest <= day.Latest && day.Words.Length > 0 && day.Words.Trim().Length == day.Words.Length && day.Words.Length <= DateRange.MaxWordsLength && TextRules.IsPlainLine(day.Words)))
        {
            return true;
        }

        Say($"{place}.{key}", $"a day runs from earliest to latest, with words of one line of 1 to {DateRange.MaxWordsLength} characters and no space around them.");
        return false;
    }

    // The first and the last year stand for "infinite" on some databases.
    private void Instant(string place, string key, DateTime? when)
    {
        if (when is { Year: 1 or 9999 })
        {
            Say($"{place}.{key}", "there is no such time.");
        }
    }

    private void Named(string place, string key, RecordKind kind, Guid? id)
    {
        if (id is { } named && !_known[kind].Contains(named))
        {
            Say($"{place}.{key}", $"it names {named}, which is not in the file.");
        }
    }

    private static string Label(string place, string tag) => tag.Length is > 0 and <= Tags.MaxLength ? $"{place} ({Plain(tag)})" : place;

    private static string Plain(string text) => string.Concat(TextRules.Shorten(text, BookFormat.MaxEntryNameLength).Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c));

    private void Say(string place, Problem problem) => Say(place, ProblemWords.Say(problem).ToString());

    private void Say(string place, string reason)
    {
        if (_faults.Count < BookFileProblem.Refused.MostTold)
        {
            // The words of a rule repeat what stands there, line breaks and all.
            _faults.Add(new(_file, place, string.Concat(reason.Select(c => char.IsControl(c) ? ' ' : c))));
        }
    }
}
