namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What an earlier answer said of an animal and still holds, but for some groups.</summary>
/// <param name="Belief">What it said.</param>
/// <param name="Changed">The groups at which what went in has changed; none: all of it holds.</param>
internal sealed record CarriedBelief(AnimalBelief Belief, IReadOnlyList<int> Changed)
{
    /// <summary>Finds what holds of what was said before of an animal: its records and sex are the same and, group by group, what it can be and the solution of the part it is in.</summary>
    /// <param name="belief">What was said before.</param>
    /// <param name="before">The earlier reckoning, at the same groups.</param>
    /// <param name="old">The animal's node there.</param>
    /// <param name="now">The reckoning.</param>
    /// <param name="node">The animal's node.</param>
    /// <returns><c>null</c> if nothing can be taken over.</returns>
    public static CarriedBelief? Find(AnimalBelief belief, BeliefRun before, int old, BeliefRun now, int node)
    {
        if (!IsSame(before.Frame.Records[old]!.Observations, now.Frame.Records[node]!.Observations)
            || before.Frame.Sexes[old] != now.Frame.Sexes[node]
            || before.Frame.IsFounder(old) != now.Frame.IsFounder(node))
        {
            return null;
        }

        var isLabelSame = true;
        List<int>? changed = null;
        foreach (var g in now.InPlay)
        {
            isLabelSame &= before.Choices.IsCut(old, g) == now.Choices.IsCut(node, g);
            if (!ReferenceEquals(before.Models[g], now.Models[g])
                || !before.Networks[g]!.States[old].AsSpan().SequenceEqual(now.Networks[g]!.States[node])
                || !IsSameVariable(before, before.Assembly.Variables[g][old], now, now.Assembly.Variables[g][node]))
            {
                (changed ??= []).Add(g);
            }
        }

        return isLabelSame && changed?.Count != now.InPlay.Length ? new(belief, changed ?? []) : null;
    }

    private static bool IsSame(IReadOnlyList<Observation> a, IReadOnlyList<Observation> b)
    {
        var isSame = ReferenceEquals(a, b) || a.Count == b.Count;
        for (var i = 0; isSame && !ReferenceEquals(a, b) && i < a.Count; i++)
        {
            isSame = ReferenceEquals(a[i], b[i]);
        }

        return isSame;
    }

    // Solutions are shared by content, so that the same one means the same part.
    private static bool IsSameVariable(BeliefRun before, int old, BeliefRun now, int variable) =>
        old < 0 || variable < 0
            ? old < 0 && variable < 0
            : ReferenceEquals(before.Solutions[before.Assembly.PartOf(old)], now.Solutions[now.Assembly.PartOf(variable)])
                && before.Assembly.Local[old] == now.Assembly.Local[variable];
}
