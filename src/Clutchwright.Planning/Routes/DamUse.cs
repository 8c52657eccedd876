namespace Clutchwright.Planning.Routes;

/// <summary>How many females of each kind of the stock a way needs in one and the same season, at most.</summary>
/// <remarks>Kinds are named by the first animal of each; pairs sorted by kind.</remarks>
internal static class DamUse
{
    public static readonly (int Kind, int Count)[] None = [];

    /// <summary>Two ways followed side by side, then a pairing of females of one kind.</summary>
    public static (int Kind, int Count)[] Of((int Kind, int Count)[] one, (int Kind, int Count)[] other, FounderType? dam, int dams)
    {
        var beside = Beside(one, other);
        if (dam is null)
        {
            return beside;
        }

        // The pairing comes after both ways, so that her kind is needed for it or for them, not for both at once.
        var kind = dam.Animals[0];
        var place = Array.FindIndex(beside, u => u.Kind >= kind);
        if (place >= 0 && beside[place].Kind == kind)
        {
            if (beside[place].Count >= dams)
            {
                return beside;
            }

            beside = [.. beside];
            beside[place] = (kind, dams);
            return beside;
        }

        var at = place < 0 ? beside.Length : place;
        return [.. beside[..at], (kind, dams), .. beside[at..]];
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

    private static (int Kind, int Count)[] Beside((int Kind, int Count)[] one, (int Kind, int Count)[] other)
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
}
