using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.Looks;

/// <summary>The stated looks of a species, and the rule by which others are composed.</summary>
internal sealed class LookBook
{
    // Half of the way at this distance from Normal: a faint change is mixed in, a strong one takes over. The distance is the straight
    // one, as the way is; what both come to on recorded combinations is in docs/model/looks.md.
    private const double HalfwayDistance = 5.0;

    private readonly Dictionary<string, LookEntry> _byForms = new(StringComparer.Ordinal);

    public LookBook(IReadOnlyList<LookEntry> entries, IReadOnlyList<Tone> tones)
    {
        Entries = entries;
        Tones = new(tones.Concat(entries.SelectMany(e => Enum.GetValues<AgeStage>().Select(e.TonesAt))
            .SelectMany(t => new[] { t.Ground, t.Pattern, t.Eye })));
        foreach (var entry in entries)
        {
            _byForms.TryAdd(Key(entry.Expressions), entry);
        }
    }

    public IReadOnlyList<LookEntry> Entries { get; }

    /// <summary>The tones a look can have.</summary>
    public ToneGrid Tones { get; }

    /// <summary>The entry of exactly these visible forms, or <c>null</c>.</summary>
    public LookEntry? Find(IReadOnlyList<Expression> expressions) => _byForms.GetValueOrDefault(Key(expressions));

    /// <summary>How an animal of these visible forms looks; <c>null</c> where not even the normal look is stated.</summary>
    public Appearance? LookOf(IReadOnlyList<Expression> expressions, AgeStage stage)
    {
        if (Find(expressions) is { } entry)
        {
            return new(stage, expressions, entry.TonesAt(stage))
            {
                Ground = entry.Ground,
                Form = entry.Form,
                Head = entry.Head,
                White = entry.White,
                Varies = entry.Varies,
                Note = entry.Note,
                Evidence = entry.Evidence,
                IsRecorded = entry.IsRecorded,
            };
        }

        return Find([]) is { } normal ? Compose(expressions, stage, normal) : null;
    }

    private Appearance Compose(IReadOnlyList<Expression> expressions, AgeStage stage, LookEntry normal)
    {
        var (parts, unknown) = PartsOf(expressions);
        var ordered = parts.OrderBy(p => Strength(p.TonesAt(stage), normal.TonesAt(stage))).ToArray();
        LookEntry[] strongestFirst = [.. ordered.Reverse(), normal];
        return new(stage, expressions, new(
            Mix(ordered, stage, normal, t => t.Ground),
            Mix(ordered, stage, normal, t => t.Pattern),
            Mix(ordered, stage, normal, t => t.Eye)))
        {
            Ground = strongestFirst.Select(e => e.Ground).FirstOrDefault(w => w is not null),
            Form = strongestFirst.Select(e => e.Form).FirstOrDefault(w => w is not null),
            Head = strongestFirst.Select(e => e.Head).FirstOrDefault(w => w is not null),
            White = strongestFirst.Max(e => e.White),
            Varies = strongestFirst.Max(e => e.Varies),
            ComposedFrom = ordered.Length == 0 ? [normal] : ordered,
            Unknown = unknown,
        };
    }

    // The largest stated looks first, so that Pastel Clown Enchi is composed from Pastel Clown and Enchi, not from three.
    public (List<LookEntry> Parts, List<Expression> Unknown) PartsOf(IReadOnlyList<Expression> expressions)
    {
        var left = expressions.ToHashSet();
        var parts = new List<LookEntry>();
        foreach (var entry in Entries
            .Where(e => e.Expressions.Count > 0 && e.Expressions.All(left.Contains))
            .OrderByDescending(e => e.Expressions.Count))
        {
            if (entry.Expressions.All(left.Contains))
            {
                parts.Add(entry);
                left.ExceptWith(entry.Expressions);
            }
        }

        return (parts, expressions.Where(left.Contains).ToList());
    }

    private Tone Mix(LookEntry[] weakestFirst, AgeStage stage, LookEntry normal, Func<ToneSet, Tone> of)
    {
        var start = of(normal.TonesAt(stage));
        var colour = start.Lab;
        foreach (var tone in weakestFirst.Select(p => of(p.TonesAt(stage))))
        {
            colour = colour.Towards(tone.Lab, ShareOf(start, tone));
        }

        // With one part there is nothing to mix: it is taken as stated.
        return weakestFirst.Length == 1
            ? of(weakestFirst[0].TonesAt(stage))
            : Tones.Nearest(colour);
    }

    /// <summary>How far the colour goes towards a part's tone from where it is.</summary>
    public static double ShareOf(Tone normal, Tone part) =>
        normal.Lab.StraightDistanceTo(part.Lab) is var distance and > 0.0 ? distance / (distance + HalfwayDistance) : 0.0;

    /// <summary>How far a look is from Normal: by it parts are put in order.</summary>
    public static double Strength(ToneSet tones, ToneSet normal) =>
        tones.Ground.Lab.StraightDistanceTo(normal.Ground.Lab) + tones.Pattern.Lab.StraightDistanceTo(normal.Pattern.Lab);

    private static string Key(IEnumerable<Expression> expressions) =>
        string.Join(' ', expressions.Select(e => e.Id).Order(StringComparer.Ordinal));
}
