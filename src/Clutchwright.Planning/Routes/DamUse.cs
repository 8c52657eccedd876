namespace Clutchwright.Planning.Routes;

/// <summary>How many females of each kind of the stock a way needs in one and the same season, at most.</summary>
/// <remarks>Kinds are numbered; pairs are sorted by kind. A female in doubt is of the kinds of all that she may be taken for together, too.</remarks>
internal static class DamUse
{
    public static readonly (int Kind, int Count)[] None = [];

    /// <summary>Two ways followed side by side.</summary>
    public static (int Kind, int Count)[] Beside((int Kind, int Count)[] one, (int Kind, int Count)[] other)
    {
        if (one.Length == 0)
        {
            return other;
        }

        if (other.Length == 0)
        {
            return one;
        }

        var all = new List<(int Kind, int Count)>(one.Length + other.Length);
        var (i, j) = (0, 0);
        while (i < one.Length || j < other.Length)
        {
            if (j == other.Length || (i < one.Length && one[i].Kind < other[j].Kind))
            {
                all.Add(one[i++]);
            }
            else if (i == one.Length || other[j].Kind < one[i].Kind)
            {
                all.Add(other[j++]);
            }
            else
            {
                all.Add((one[i].Kind, one[i++].Count + other[j++].Count));
            }
        }

        return [.. all];
    }

    /// <summary>After them a pairing of females of one type: needed for it or for them, not for both at once.</summary>
    public static (int Kind, int Count)[] Then((int Kind, int Count)[] before, FounderType? dam, int dams)
    {
        if (dam is null)
        {
            return before;
        }

        foreach (var kind in dam.Kinds)
        {
            var place = Array.FindIndex(before, u => u.Kind >= kind);
            if (place >= 0 && before[place].Kind == kind)
            {
                if (before[place].Count < dams)
                {
                    before = [.. before];
                    before[place] = (kind, dams);
                }

                continue;
            }

            var at = place < 0 ? before.Length : place;
            before = [.. before[..at], (kind, dams), .. before[at..]];
        }

        return before;
    }

    /// <summary>Whether the first needs no more of any kind than the second.</summary>
    public static bool IsWithin((int Kind, int Count)[] one, (int Kind, int Count)[] other)
    {
        var j = 0;
        foreach (var (kind, count) in one)
        {
            while (j < other.Length && other[j].Kind < kind)
            {
                j++;
            }

            if (j == other.Length || other[j].Kind != kind || other[j].Count < count)
            {
                return false;
            }
        }

        return true;
    }
}
