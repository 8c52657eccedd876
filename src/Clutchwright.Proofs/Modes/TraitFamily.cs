using Clutchwright.Genetics.Loci;

namespace Clutchwright.Proofs.Modes;

/// <summary>Parents that hang together through their clutches.</summary>
/// <remarks>The sex with fewer parents is summed over jointly; each parent of the other sex then stands alone.</remarks>
internal sealed class TraitFamily
{
    private readonly List<(string Name, TraitLook Look)> _joint = [];
    private readonly List<(string Name, TraitLook Look)> _single = [];
    private readonly List<(int Joint, int Single, TraitClutch Clutch)> _pairs = [];
    private readonly bool _jointAreSires;

    private TraitFamily(List<TraitClutch> clutches)
    {
        var sires = clutches.Select(c => c.Sire).Distinct(StringComparer.Ordinal).Count();
        var dams = clutches.Select(c => c.Dam).Distinct(StringComparer.Ordinal).Count();
        _jointAreSires = sires <= dams;
        if (Math.Pow(TraitMeiosis.States, Math.Min(sires, dams)) > TraitModeTest.MostStates)
        {
            throw new ArgumentException($"{Math.Min(sires, dams)} sires and as many dams or more hang together through their clutches; that is too many to sum over. Ask about fewer clutches.");
        }

        foreach (var clutch in clutches)
        {
            var (sire, dam) = ((clutch.Sire, clutch.SireLook), (clutch.Dam, clutch.DamLook));
            _pairs.Add((Add(_joint, _jointAreSires ? sire : dam), Add(_single, _jointAreSires ? dam : sire), clutch));
        }
    }

    public static List<TraitFamily> Of(IReadOnlyList<TraitClutch> clutches)
    {
        var parts = new List<List<TraitClutch>>();
        foreach (var clutch in clutches)
        {
            var touching = parts.Where(p => p.Any(c => string.Equals(c.Sire, clutch.Sire, StringComparison.Ordinal)
                || string.Equals(c.Dam, clutch.Dam, StringComparison.Ordinal))).ToArray();
            var part = touching.SelectMany(p => p).Append(clutch).ToList();
            parts.RemoveAll(touching.Contains);
            parts.Add(part);
        }

        return [.. parts.Select(p => new TraitFamily(p))];
    }

    /// <summary>For each clutch, ln of the chance of its young by the state of the joint parent and of the single one.</summary>
    public double[][,] Tables(TraitMeiosis meiosis) => [.. _pairs.Select(pair =>
    {
        var table = new double[TraitMeiosis.States, TraitMeiosis.States];
        for (var joint = 0; joint < TraitMeiosis.States; joint++)
        {
            for (var single = 0; single < TraitMeiosis.States; single++)
            {
                var (sire, dam) = _jointAreSires ? (joint, single) : (single, joint);
                var (males, females) = (meiosis.Young(sire, dam, Sex.Male), meiosis.Young(sire, dam, Sex.Female));
                table[joint, single] = Run(pair.Clutch.Males, males) + Run(pair.Clutch.Females, females)
                    + Run(pair.Clutch.Unsexed, [.. males.Select((m, i) => (m + females[i]) / 2.0)]);
            }
        }

        return table;
    })];

    /// <summary>ln of the chance of the young, the parents summed over.</summary>
    public double Log(TraitMeiosis meiosis, double[][,] tables, double q)
    {
        var joint = _joint.Select(p => meiosis.Founder(p.Look, q)).ToArray();
        var single = _single.Select(p => meiosis.Founder(p.Look, q)).ToArray();
        var states = new int[_joint.Count];
        var logs = new List<double>();
        do
        {
            var weight = states.Select((s, i) => joint[i][s]).Aggregate(1.0, (product, p) => product * p);
            if (weight > 0.0)
            {
                logs.Add(Math.Log(weight) + Enumerable.Range(0, single.Length).Sum(i => LogOfSingle(i, single[i], states, tables)));
            }
        }
        while (Advance(states));

        return logs.Count == 0 ? double.NegativeInfinity : TraitLikelihood.LogSum(logs);
    }

    private double LogOfSingle(int index, double[] founder, int[] joint, double[][,] tables)
    {
        var logs = new double[TraitMeiosis.States];
        for (var state = 0; state < logs.Length; state++)
        {
            logs[state] = Math.Log(founder[state]);
            for (var pair = 0; pair < _pairs.Count && logs[state] > double.NegativeInfinity; pair++)
            {
                if (_pairs[pair].Single == index)
                {
                    logs[state] += tables[pair][joint[_pairs[pair].Joint], state];
                }
            }
        }

        return TraitLikelihood.LogSum(logs);
    }

    private static bool Advance(int[] states)
    {
        for (var i = 0; i < states.Length; i++)
        {
            if (++states[i] < TraitMeiosis.States)
            {
                return true;
            }

            states[i] = 0;
        }

        return false;
    }

    private static double Run(TraitCounts counts, double[] chances)
    {
        var log = 0.0;
        foreach (var look in Enum.GetValues<TraitLook>())
        {
            var n = counts.Of(look);
            log += n == 0 ? 0.0 : n * Math.Log(chances[(int)look]);
        }

        return log;
    }

    private static int Add(List<(string Name, TraitLook Look)> parents, (string Name, TraitLook Look) parent)
    {
        var at = parents.FindIndex(p => string.Equals(p.Name, parent.Name, StringComparison.Ordinal));
        if (at < 0)
        {
            parents.Add(parent);
            return parents.Count - 1;
        }

        return parents[at].Look == parent.Look
            ? at
            : throw new ArgumentException($"{parent.Name} shows one thing in one clutch and another in the next.");
    }
}
