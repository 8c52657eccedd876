using System.Globalization;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Stock.Happenings;

/// <summary>What a kind of happening asks for, once for every rule and every face.</summary>
public static class HappeningRules
{
    private static readonly Dictionary<HappeningKind, (string Words, string? Unit, double Most, bool IsAmountNeeded)> Kinds = new()
    {
        [HappeningKind.Weighed] = ("weighed", "g", Animal.MaxMassGrams, true),
        [HappeningKind.Fed] = ("fed", "g", 10_000, false),
        [HappeningKind.FoodRefused] = ("refused food", null, 0, false),
        [HappeningKind.Shed] = ("shed", null, 0, false),
        [HappeningKind.Introduced] = ("put together", null, 0, false),
        [HappeningKind.Locked] = ("locked", null, 0, false),
        [HappeningKind.Separated] = ("taken apart", null, 0, false),
        [HappeningKind.FolliclesMeasured] = ("follicles measured", "mm", 200, true),
        [HappeningKind.Ovulated] = ("ovulated", null, 0, false),
        [HappeningKind.PreLayShed] = ("pre-lay shed", null, 0, false),
        [HappeningKind.Laid] = ("laid", "eggs", 200, false),
        [HappeningKind.Candled] = ("candled", "good eggs", 200, false),
        [HappeningKind.EggsLost] = ("eggs lost", "eggs", 200, true),
        [HappeningKind.Pipped] = ("pipped", "eggs", 200, false),
        [HappeningKind.Moved] = ("moved", null, 0, false),
        [HappeningKind.Health] = ("health", null, 0, false),
        [HappeningKind.Noted] = ("noted", null, 0, false),
        [HappeningKind.Acquired] = ("came into the room", null, 0, false),
        [HappeningKind.Sold] = ("sold", null, 0, false),
        [HappeningKind.GivenAway] = ("given away", null, 0, false),
        [HappeningKind.Died] = ("died", null, 0, false),
    };

    /// <summary>The kind in a word or two.</summary>
    public static string Words(HappeningKind kind) => Kinds[kind].Words;

    /// <summary>The unit of its amount; null: it has none.</summary>
    public static string? Unit(HappeningKind kind) => Kinds[kind].Unit;

    /// <summary>Whether it is nothing without its amount.</summary>
    public static bool NeedsAmount(HappeningKind kind) => Kinds[kind].IsAmountNeeded;

    /// <summary>Whether it is about a pair.</summary>
    public static bool IsOfAPair(HappeningKind kind) => kind is HappeningKind.Introduced or HappeningKind.Locked or HappeningKind.Separated;

    /// <summary>Whether it is about the eggs of a clutch, and nothing without it.</summary>
    public static bool IsOfAClutch(HappeningKind kind) =>
        kind is HappeningKind.Candled or HappeningKind.EggsLost or HappeningKind.Pipped;

    /// <summary>Whether only a female can have it.</summary>
    public static bool IsOfAFemale(HappeningKind kind) =>
        kind is HappeningKind.FolliclesMeasured or HappeningKind.Ovulated or HappeningKind.PreLayShed or HappeningKind.Laid || IsOfAClutch(kind);

    /// <summary>Where an animal is from then on; null: it makes no difference.</summary>
    public static AnimalStatus? StatusAfter(HappeningKind kind) => kind switch
    {
        HappeningKind.Sold => AnimalStatus.Sold,
        HappeningKind.GivenAway => AnimalStatus.Given,
        HappeningKind.Died => AnimalStatus.Died,
        _ => null,
    };

    /// <summary>Whether it is nothing without a text.</summary>
    public static bool NeedsText(HappeningKind kind) => kind is HappeningKind.Moved or HappeningKind.Health or HappeningKind.Noted;

    /// <summary>What happened, in a line.</summary>
    public static string Words(HappeningKind kind, double? amount, string text)
    {
        var unit = Unit(kind) is { } many && amount == 1.0 && many.EndsWith("eggs", StringComparison.Ordinal) ? many[..^1] : Unit(kind);
        var with = amount is { } number ? $" {number.ToString("0.##", CultureInfo.InvariantCulture)} {unit}" : string.Empty;
        return text.Length == 0 ? $"{Words(kind)}{with}" : $"{Words(kind)}{with}: {text}";
    }

    /// <summary>What is wrong with what is entered of an animal; empty: nothing.</summary>
    /// <param name="animal">The animal.</param>
    /// <param name="mate">The other of the pair, if it is in the book.</param>
    /// <param name="clutch">The clutch it is about, if it is in the book.</param>
    /// <param name="entry">What is entered.</param>
    /// <param name="today">What has happened has happened by today.</param>
    internal static IEnumerable<HappeningProblem> WhyNot(Animal animal, Animal? mate, Clutch? clutch, HappeningEntry entry, DateOnly today)
    {
        if (!Kinds.TryGetValue(entry.Kind, out var kind))
        {
            yield return new HappeningProblem.KindUnknown(entry.Kind.ToString());
            yield break;
        }

        if (entry.When.Earliest > today)
        {
            yield return new HappeningProblem.InTheFuture(entry.When);
        }
        else if (animal.Hatched is { } hatched && entry.When.Latest < hatched.Earliest)
        {
            yield return new HappeningProblem.BeforeItHatched(animal.Tag, hatched, entry.When);
        }

        if (entry.Amount is { } amount ? kind.Unit is null || amount is not > 0.0 || amount > kind.Most : kind.IsAmountNeeded)
        {
            yield return new HappeningProblem.AmountNotFitting(entry.Kind, entry.Amount, kind.Unit, kind.Most);
        }

        if (IsOfAPair(entry.Kind) != (entry.MateId is not null))
        {
            yield return new HappeningProblem.MateNotFitting(entry.Kind);
        }
        else if (entry.MateId is not null && mate is null)
        {
            yield return new HappeningProblem.MateNotFound();
        }
        else if (mate is not null && (mate.AnimalId == animal.AnimalId || (animal.Sex is not null && animal.Sex == mate.Sex)))
        {
            yield return new HappeningProblem.NoPair(animal.Tag, mate.Tag);
        }

        if (entry.ClutchId is null ? IsOfAClutch(entry.Kind) : !IsOfAClutch(entry.Kind) && entry.Kind != HappeningKind.Moved)
        {
            yield return new HappeningProblem.ClutchNotFitting(entry.Kind);
        }
        else if (entry.ClutchId is not null && clutch?.DamId != animal.AnimalId)
        {
            yield return new HappeningProblem.ClutchNotFound();
        }
        else if (clutch is not null && entry.When.Latest < clutch.Laid.Earliest)
        {
            yield return new HappeningProblem.BeforeItWasLaid(clutch.Tag, clutch.Laid, entry.When);
        }

        if (IsOfAFemale(entry.Kind) && animal.Sex == Sex.Male)
        {
            yield return new HappeningProblem.NotOfAMale(animal.Tag, entry.Kind);
        }

        var text = entry.Text.Trim();
        if (text.Length > Happening.MaxTextLength || !TextRules.IsStorable(text) || (text.Length == 0 && NeedsText(entry.Kind)))
        {
            yield return new HappeningProblem.TextNotFitting(entry.Kind, Happening.MaxTextLength);
        }
    }
}
