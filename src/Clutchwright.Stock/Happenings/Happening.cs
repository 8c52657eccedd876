using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.History;

namespace Clutchwright.Stock.Happenings;

/// <summary>Something that happened to an animal, as it was written down. It changes only through the deeds.</summary>
public sealed class Happening
{
    public const int MaxTextLength = 1_000;

    internal Happening(HappeningId id, AnimalId animal, HappeningEntry entry)
    {
        HappeningId = id;
        AnimalId = animal;
        When = entry.When;
        Take(entry);
    }

    internal Happening(HappeningSnapshot snapshot)
    {
        HappeningId = new(snapshot.Id);
        When = snapshot.When.ToRange();
        Take(snapshot);
    }

    private Happening() => When = null!;

    public HappeningId HappeningId { get; private set; }

    /// <summary>The animal; of a pair the one on whose page it was written.</summary>
    public AnimalId AnimalId { get; private set; }

    /// <summary>The other of the pair; null: it is about no pair.</summary>
    public AnimalId? MateId { get; private set; }

    /// <summary>The clutch it is about; the animal is its dam. Null: it is about none.</summary>
    public ClutchId? ClutchId { get; private set; }

    public HappeningKind Kind { get; private set; }

    public DateRange When { get; private set; }

    /// <summary>In the unit of its kind; null: not recorded, or the kind has none.</summary>
    public double? Amount { get; private set; }

    public string Text { get; private set; } = "";

    /// <summary>When it was taken back (UTC); null: it stands.</summary>
    public DateTime? WithdrawnAt { get; private set; }

    public Guid Version { get; private set; }

    /// <summary>The last day on which it can have been, as it is sorted.</summary>
    internal DateOnly Day { get; private set; }

    public override string ToString() => HappeningRules.Words(Kind, Amount, Text);

    internal void Take(HappeningEntry entry)
    {
        (Kind, When, Amount, MateId, ClutchId, Text) = (entry.Kind, entry.When, entry.Amount, entry.MateId, entry.ClutchId, entry.Text.Trim());
        Day = When.Latest;
    }

    internal void Take(HappeningSnapshot snapshot)
    {
        (AnimalId, MateId) = (new(snapshot.Animal), snapshot.Mate is { } mate ? new AnimalId(mate) : null);
        ClutchId = snapshot.Clutch is { } clutch ? new ClutchId(clutch) : null;
        (Kind, When, Amount, Text, WithdrawnAt) = (snapshot.Kind, snapshot.When.ToRange(), snapshot.Amount, snapshot.Text, snapshot.WithdrawnAt);
        Day = When.Latest;
    }

    internal void Withdraw(DateTime when) => WithdrawnAt = when;

    internal void NewVersion() => Version = Guid.CreateVersion7();
}
