using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Incubators;

namespace Clutchwright.Stock.Clutches;

/// <summary>The eggs that one female laid at once, and what became of them. It changes only through the deeds.</summary>
/// <remarks>Young that are in the book as animals name their clutch; what was seen of the eggs on the way stands in the log.</remarks>
public sealed class Clutch
{
    public const int MostEggs = 200;
    public const int MaxNotesLength = 20_000;
    public const double MaxMassGrams = 100_000;

    internal Clutch(ClutchId id, ClutchEntry entry)
    {
        ClutchId = id;
        Laid = entry.Laid;
        Take(entry);
    }

    internal Clutch(ClutchSnapshot snapshot)
    {
        ClutchId = new(snapshot.Id);
        Laid = snapshot.Laid.ToRange();
        Take(snapshot);
    }

    private Clutch() => Laid = null!;

    public ClutchId ClutchId { get; private set; }

    /// <summary>The keeper's own id of it.</summary>
    public string Tag { get; private set; } = "";

    public AnimalId DamId { get; private set; }

    /// <summary>The male; several where one of them is the father; empty where it is not known.</summary>
    public IReadOnlyList<AnimalId> Sires => [.. Snapshots.Read<Guid[]>(SiresJson).Select(id => new AnimalId(id))];

    public DateRange Laid { get; private set; }

    public int? GoodEggs { get; private set; }

    public int? Slugs { get; private set; }

    public double? MassGrams { get; private set; }

    public IncubatorId? IncubatorId { get; private set; }

    public DateRange? Hatched { get; private set; }

    /// <summary>Young that are in the book only as a number.</summary>
    public IReadOnlyList<CountedYoung> Counted => Snapshots.Read<IReadOnlyList<CountedYoung>>(CountedJson);

    public string Notes { get; private set; } = "";

    /// <summary>When it was put in the bin (UTC); null if it is not there.</summary>
    public DateTime? BinnedAt { get; private set; }

    public Guid Version { get; private set; }

    /// <summary>The tag as it is compared.</summary>
    internal string TagKey { get; private set; } = "";

    internal string SiresJson { get; private set; } = "[]";

    internal string CountedJson { get; private set; } = "[]";

    public override string ToString() => $"Clutch {Tag}";

    /// <summary>The same as it would be entered.</summary>
    public ClutchEntry ToEntry() => new()
    {
        Tag = Tag,
        DamId = DamId,
        Sires = Sires,
        Laid = Laid,
        GoodEggs = GoodEggs,
        Slugs = Slugs,
        MassGrams = MassGrams,
        IncubatorId = IncubatorId,
        Hatched = Hatched,
        Counted = Counted,
        Notes = Notes,
    };

    /// <summary>The rules that one clutch can be held to by itself.</summary>
    internal static IEnumerable<ClutchProblem> WhyNot(ClutchEntry entry)
    {
        if (!Tags.IsValid(entry.Tag.Trim()))
        {
            yield return new ClutchProblem.TagInvalid(entry.Tag);
        }

        foreach (var number in new[] { entry.GoodEggs, entry.Slugs })
        {
            if (number is < 0 or > MostEggs)
            {
                yield return new ClutchProblem.EggsOutOfRange(number.Value, MostEggs);
            }
        }

        if (entry.MassGrams is not null and not (> 0 and <= MaxMassGrams))
        {
            yield return new ClutchProblem.MassOutOfRange(entry.MassGrams.Value, MaxMassGrams);
        }

        if (entry.Hatched is { } hatched && hatched.Latest < entry.Laid.Earliest)
        {
            yield return new ClutchProblem.HatchedBeforeLaid(entry.Laid, hatched);
        }

        if (entry.Sires.Distinct().Count() != entry.Sires.Count)
        {
            yield return new ClutchProblem.SireTwice();
        }

        if (entry.Sires.Contains(entry.DamId))
        {
            yield return new ClutchProblem.SireIsDam();
        }

        foreach (var counted in entry.Counted)
        {
            if (counted.Count is < 1 or > MostEggs)
            {
                yield return new ClutchProblem.CountOutOfRange(counted.Seen, counted.Count, MostEggs);
            }
        }

        if (entry.Notes.Trim().Length > MaxNotesLength || !TextRules.IsStorable(entry.Notes))
        {
            yield return new ClutchProblem.NotesInvalid(MaxNotesLength);
        }
    }

    internal void Take(ClutchEntry entry)
    {
        (Tag, DamId, Laid, Hatched) = (entry.Tag.Trim(), entry.DamId, entry.Laid, entry.Hatched);
        (GoodEggs, Slugs, MassGrams, IncubatorId) = (entry.GoodEggs, entry.Slugs, entry.MassGrams, entry.IncubatorId);
        SetLists(entry.Sires.Select(s => s.Value), entry.Counted);
        Notes = entry.Notes.Trim();
    }

    internal void Take(ClutchSnapshot snapshot)
    {
        (Tag, DamId, Laid, Hatched) = (snapshot.Tag, new(snapshot.Dam), snapshot.Laid.ToRange(), snapshot.Hatched?.ToRange());
        (GoodEggs, Slugs, MassGrams) = (snapshot.GoodEggs, snapshot.Slugs, snapshot.MassGrams);
        IncubatorId = snapshot.Incubator is { } incubator ? new IncubatorId(incubator) : null;
        SetLists(snapshot.Sires, snapshot.Counted);
        (Notes, BinnedAt) = (snapshot.Notes, snapshot.BinnedAt);
    }

    internal void Hatch(DateRange when) => Hatched = when;

    internal void Bin(DateTime when) => BinnedAt = when;

    internal void TakeOutOfBin() => BinnedAt = null;

    internal void NewVersion() => Version = Guid.CreateVersion7();

    private void SetLists(IEnumerable<Guid> sires, IReadOnlyList<CountedYoung> counted)
    {
        // Which of several males stands first says nothing.
        SiresJson = Snapshots.Write(sires.Order().ToArray());
        CountedJson = Snapshots.Write(counted.Select(c => c with { Seen = c.Seen.Trim() }).ToArray());
        TagKey = Tags.Key(Tag);
    }
}
