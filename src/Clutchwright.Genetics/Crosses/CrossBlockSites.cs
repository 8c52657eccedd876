using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Genetics.Crosses;

/// <summary>Tells whether the conditions of a danger hold for a state of given linkage groups.</summary>
internal sealed class CrossBlockSites(IReadOnlyList<LinkageGroup> groups)
{
    /// <summary>The survival of a state: every rule whose conditions all lie in these groups and hold takes its share.</summary>
    public Viability ViabilityOf(ChildState state, IReadOnlyList<Danger> rules)
    {
        var viability = Viability.Full;
        foreach (var rule in rules)
        {
            if (HasAllSites(rule) && Holds(rule, state))
            {
                viability = new(
                    viability.Egg * rule.Viability.Egg,
                    viability.Hatch * rule.Viability.Hatch,
                    viability.Months * rule.Viability.Months);
            }
        }

        return viability;
    }

    /// <summary>Says whether those conditions of a rule that concern these groups hold for a state.</summary>
    public bool Holds(Danger rule, ChildState state)
    {
        if (rule.Sex is { } sex && state.Sex is { } own && sex != own)
        {
            return false;
        }

        foreach (var (locus, pairs) in rule.Sites)
        {
            var at = IndexOf(locus.Group);
            if (at < 0)
            {
                continue;
            }

            var (a, b) = locus.PairOf(state.Diplotypes[at]);
            if (!pairs[a, b])
            {
                return false;
            }
        }

        return true;
    }

    public bool HasAllSites(Danger rule) =>
        rule.Sites.All(s => IndexOf(s.Locus.Group) >= 0) && (rule.Sex is null || groups.Any(g => g.IsSex));

    private int IndexOf(LinkageGroup group)
    {
        for (var i = 0; i < groups.Count; i++)
        {
            if (groups[i] == group)
            {
                return i;
            }
        }

        return -1;
    }
}
