using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Clutches;

/// <summary>Young of a clutch as animals that are in no book.</summary>
public static class ClutchAnimals
{
    /// <summary>Young of which only the number was kept: one animal for each line of them, with how many it stands for.</summary>
    /// <remarks>Their ids are the same each time.</remarks>
    public static IReadOnlyList<(Animal Animal, int Count)> Counted(IReadOnlyList<Clutch> clutches)
    {
        ArgumentNullException.ThrowIfNull(clutches);
        return [.. clutches.SelectMany(c => c.Counted.Select((young, place) => (Of(c, young, place), young.Count)))];
    }

    /// <summary>A hatchling as it would be in the book once it is entered.</summary>
    public static Animal Of(Clutch clutch, HatchlingEntry hatchling)
    {
        ArgumentNullException.ThrowIfNull(clutch);
        ArgumentNullException.ThrowIfNull(hatchling);
        return Of(hatchling.AnimalId, Entry(clutch, hatchling), clutch.ClutchId, hatchling.Statements);
    }

    internal static AnimalEntry Entry(Clutch clutch, HatchlingEntry hatchling) => new()
    {
        Tag = hatchling.Tag,
        Sex = hatchling.Sex,
        Hatched = hatchling.Hatched,
        DamId = clutch.DamId,
        SireId = clutch.Sires is [var sire] ? sire : null,
        PossibleSires = clutch.Sires.Count > 1 ? clutch.Sires : [],
        Status = hatchling.Status,
        MassGrams = hatchling.MassGrams,
        Notes = hatchling.Notes,
    };

    private static Animal Of(Clutch clutch, CountedYoung young, int place) => Of(
        Id(clutch.ClutchId, place),
        new()
        {
            Tag = $"{young.Count} × {young.Seen} of clutch {clutch.Tag}",
            Sex = young.Sex,
            Hatched = clutch.Hatched,
            DamId = clutch.DamId,
            SireId = clutch.Sires is [var sire] ? sire : null,
            PossibleSires = clutch.Sires.Count > 1 ? clutch.Sires : [],
        },
        clutch.ClutchId,
        [new() { Kind = StatementKind.Seen, Text = young.Seen }]);

    private static Animal Of(AnimalId id, AnimalEntry entry, ClutchId clutch, IReadOnlyList<StatementEntry> statements)
    {
        var animal = Animal.Of(id, entry, statements.Select((statement, i) => new Statement(new(Number(id.Value, i, 0x5A)), id, statement)));
        animal.BelongTo(clutch);
        return animal;
    }

    private static AnimalId Id(ClutchId clutch, int place) => new(Number(clutch.Value, place, 0xC5));

    private static Guid Number(Guid of, int place, byte what)
    {
        var bytes = of.ToByteArray();
        bytes[^1] ^= (byte)(place + 1);
        bytes[^2] ^= what;
        return new(bytes);
    }
}
