using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>The tables of founders and families at one group, over the states that are left to each animal.</summary>
/// <remarks>Young are weighed given that they hatched, and of the sex that is recorded: neither says anything of the parents.</remarks>
internal sealed class FamilyTables(GroupNetwork network, GroupModel model, Sex?[] sexes)
{
    private readonly StateSpace _space = network.Space;
    private readonly int[] _place = new int[network.Space.Count];

    /// <summary>A founder's weights; those it could have without regard to its own records sum to 1.</summary>
    public double[] Founder(int node)
    {
        var states = network.States[node];
        var weights = new double[states.Length];
        for (var i = 0; i < states.Length; i++)
        {
            weights[i] = network.Weights[node][states[i]];
        }

        return weights;
    }

    /// <summary>The table of sire, dam and young, the young's own records weighed in.</summary>
    public double[] Trio(int sire, int dam, int young)
    {
        var (ofSire, ofDam, ofYoung) = (network.States[sire], network.States[dam], network.States[young]);
        Mark(ofYoung);
        var values = new double[ofSire.Length * ofDam.Length * ofYoung.Length];
        var own = network.Weights[young];
        var scaled = NeedsScaling(young);
        for (int s = 0, row = 0; s < ofSire.Length; s++)
        {
            for (var d = 0; d < ofDam.Length; d++, row += ofYoung.Length)
            {
                var scale = scaled ? Scale(ofSire[s], ofDam[d], young) : 1.0;
                var (fromSire, fromDam) = (_space.Gametes[ofSire[s]], _space.Gametes[ofDam[d]]);
                var (sireChances, damChances) = (_space.GameteChances[ofSire[s]], _space.GameteChances[ofDam[d]]);
                for (var a = 0; a < fromSire.Length; a++)
                {
                    for (var b = 0; b < fromDam.Length; b++)
                    {
                        var child = _space.Child(fromSire[a], fromDam[b]);
                        if (child >= 0 && _place[child] > 0)
                        {
                            values[row + _place[child] - 1] += sireChances[a] * damChances[b] * scale * own[child];
                        }
                    }
                }
            }
        }

        Unmark(ofYoung);
        return values;
    }

    /// <summary>The gametes that some males can form.</summary>
    public int[] GametesOf(int[] males) => [.. males.SelectMany(m => network.States[m]).SelectMany(s => _space.Gametes[s]).Distinct().Order()];

    /// <summary>The table of the choice between sires, one male's state and the gamete passed on: without effect unless he is the one.</summary>
    public double[] Passed(int maleCount, int index, int male, int[] gametes)
    {
        var states = network.States[male];
        var values = new double[maleCount * states.Length * gametes.Length];
        var at = 0;
        for (var k = 0; k < maleCount; k++)
        {
            foreach (var state in states)
            {
                for (var g = 0; g < gametes.Length; g++)
                {
                    var formed = Array.IndexOf(_space.Gametes[state], gametes[g]);
                    values[at++] = k != index ? 1.0 : formed < 0 ? 0.0 : _space.GameteChances[state][formed];
                }
            }
        }

        return values;
    }

    /// <summary>Whether young are weighed given their sex or survival.</summary>
    public bool NeedsScaling(int young) => !model.IsSurvivalEven || (_space.Group.IsSex && sexes[young] is not null);

    /// <summary>The table of the choice between sires, one male's state and the dam's that scales to young that live and are of the sex recorded.</summary>
    public double[] Scaling(int maleCount, int index, int male, int dam, int young)
    {
        var values = new double[maleCount * network.States[male].Length * network.States[dam].Length];
        var at = 0;
        for (var k = 0; k < maleCount; k++)
        {
            foreach (var s in network.States[male])
            {
                foreach (var d in network.States[dam])
                {
                    values[at++] = k == index ? Scale(s, d, young) : 1.0;
                }
            }
        }

        return values;
    }

    /// <summary>The table of the gamete passed on, dam and young, the young's own records weighed in.</summary>
    public double[] FromGamete(int[] gametes, int dam, int young)
    {
        var (ofDam, ofYoung) = (network.States[dam], network.States[young]);
        Mark(ofYoung);
        var values = new double[gametes.Length * ofDam.Length * ofYoung.Length];
        for (int g = 0, row = 0; g < gametes.Length; g++)
        {
            for (var d = 0; d < ofDam.Length; d++, row += ofYoung.Length)
            {
                var formed = _space.Gametes[ofDam[d]];
                for (var b = 0; b < formed.Length; b++)
                {
                    var child = _space.Child(gametes[g], formed[b]);
                    if (child >= 0 && _place[child] > 0)
                    {
                        values[row + _place[child] - 1] += _space.GameteChances[ofDam[d]][b] * network.Weights[young][child];
                    }
                }
            }
        }

        Unmark(ofYoung);
        return values;
    }

    private double Scale(int sire, int dam, int young)
    {
        var total = 0.0;
        var survival = model.SurvivalOf(sexes[young]);
        for (var a = 0; a < _space.Gametes[sire].Length; a++)
        {
            for (var b = 0; b < _space.Gametes[dam].Length; b++)
            {
                var child = _space.Child(_space.Gametes[sire][a], _space.Gametes[dam][b]);
                if (child >= 0 && (_space.Sexes[child] is not { } own || sexes[young] is not { } known || own == known))
                {
                    total += _space.GameteChances[sire][a] * _space.GameteChances[dam][b] * survival[child];
                }
            }
        }

        return total > 0.0 ? 1.0 / total : 0.0;
    }

    private void Mark(int[] states)
    {
        for (var i = 0; i < states.Length; i++)
        {
            _place[states[i]] = i + 1;
        }
    }

    private void Unmark(int[] states)
    {
        foreach (var state in states)
        {
            _place[state] = 0;
        }
    }
}
