namespace Clutchwright.Stock.Happenings;

/// <summary>Reads what happened as keepers write it: by our own words, by its name in the program, or by what the trade says for it, in any case.</summary>
public static class KindText
{
    // The trade's words: common practice, no source.
    private static readonly Dictionary<HappeningKind, string[]> Trade = new()
    {
        [HappeningKind.Weighed] = ["weight", "weigh", "weigh-in", "weighing", "mass"],
        [HappeningKind.Fed] = ["ate", "eaten", "feed", "feeding", "meal", "took"],
        [HappeningKind.FoodRefused] = ["refused", "refusal", "refused meal", "refused feed", "meal refused", "did not eat", "didn't eat", "not eaten"],
        [HappeningKind.Shed] = ["shedding", "full shed", "good shed", "sloughed"],
        [HappeningKind.Introduced] = ["introduction", "pairing", "paired", "pair"],
        [HappeningKind.Locked] = ["lock", "lock seen", "locked up", "copulation", "mating", "mated"],
        [HappeningKind.Separated] = ["separation", "split"],
        [HappeningKind.FolliclesMeasured] = ["follicles", "follicle", "ultrasound"],
        [HappeningKind.Ovulated] = ["ovulation"],
        [HappeningKind.PreLayShed] = ["pls", "prelay shed", "pre-laying shed"],
        [HappeningKind.Laid] = ["eggs laid", "laying", "oviposition", "clutch"],
        [HappeningKind.Candled] = ["candling"],
        [HappeningKind.EggsLost] = ["bad eggs", "bad egg", "egg lost", "lost eggs"],
        [HappeningKind.Pipped] = ["pip", "pipping"],
        [HappeningKind.Moved] = ["move", "relocated"],
        [HappeningKind.Health] = ["vet", "illness", "treatment", "medication"],
        [HappeningKind.Noted] = ["note", "other", "comment", "remark"],
        [HappeningKind.Acquired] = ["bought", "purchased", "purchase", "arrival", "arrived"],
        [HappeningKind.Sold] = ["sale"],
        [HappeningKind.GivenAway] = ["gifted", "gift", "given", "donated"],
        [HappeningKind.Died] = ["death", "dead", "deceased"],
    };

    private static readonly Dictionary<string, HappeningKind> Known = Enum.GetValues<HappeningKind>()
        .SelectMany(kind => Trade[kind].Append(kind.ToString()).Append(HappeningRules.Words(kind)).Select(words => (Key: Key(words), Kind: kind)))
        .DistinctBy(pair => pair.Key)
        .ToDictionary(pair => pair.Key, pair => pair.Kind, StringComparer.Ordinal);

    /// <summary>The kind; null: the words are none's. Spaces, hyphens and apostrophes do not count.</summary>
    public static HappeningKind? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Known.TryGetValue(Key(text), out var kind) ? kind : null;
    }

    private static string Key(string words) => string.Concat(words.ToUpperInvariant().Where(char.IsLetterOrDigit));
}
