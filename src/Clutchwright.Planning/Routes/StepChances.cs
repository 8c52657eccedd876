using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Routes;

/// <summary>For one requirement at one linkage group: how often young of a pair look as if they met it, and how often they then do.</summary>
internal sealed class StepChances
{
    private readonly double[][] _seen = new double[4][];
    private readonly double[][] _met = new double[4][];
    private readonly double[][] _held = new double[2][];
    private readonly int _dams;

    public StepChances(GroupStates group, bool[][] accepted)
    {
        _dams = group.Count(Sex.Female);
        foreach (var sex in (Sex[])[Sex.Female, Sex.Male])
        {
            var looks = Enumerable.Range(0, group.Count(sex)).Select(s => group.LooksOf(sex, s).ToArray()).ToArray();
            var good = accepted[GroupStates.Index(sex)];

            // The keeper holds back any hatchling whose look a wanted one can have.
            var held = looks.Where((_, s) => good[s]).SelectMany(l => l.Select(x => x.Seen)).ToHashSet(StringComparer.Ordinal);
            var share = looks.Select(l => l.Where(x => held.Contains(x.Seen)).Sum(x => x.Chance)).ToArray();
            _held[GroupStates.Index(sex)] = share;
            for (var hidden = 0; hidden < 2; hidden++)
            {
                var (seen, met) = (new double[group.Count(Sex.Male) * _dams], new double[group.Count(Sex.Male) * _dams]);
                for (var pair = 0; pair < seen.Length; pair++)
                {
                    var young = group.Children(pair / _dams, pair % _dams, sex);
                    var any = 0.0;
                    for (var s = 0; s < young.Length; s++)
                    {
                        seen[pair] += young[s] * (hidden == 1 ? 1.0 : share[s]);
                        met[pair] += good[s] ? young[s] : 0.0;
                        any = Math.Max(any, good[s] ? young[s] : 0.0);
                    }

                    // Without any chance of the wanted there is nothing to hold back.
                    seen[pair] = any > 0.0 ? seen[pair] : 0.0;
                }

                _seen[Slot(sex, hidden == 1)] = seen;
                _met[Slot(sex, hidden == 1)] = met;
            }
        }
    }

    public double Seen(int sire, int dam, Sex sex, bool hidden) => _seen[Slot(sex, hidden)][(sire * _dams) + dam];

    public double Met(int sire, int dam, Sex sex, bool hidden) => _met[Slot(sex, hidden)][(sire * _dams) + dam];

    /// <summary>How often a hatchling in a state looks as if it met the requirement.</summary>
    public double Held(Sex sex, int state) => _held[GroupStates.Index(sex)][state];

    private static int Slot(Sex sex, bool hidden) => (GroupStates.Index(sex) * 2) + (hidden ? 1 : 0);
}
