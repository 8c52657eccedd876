using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs.Explanations;

/// <summary>Weighs records that are missing.</summary>
internal sealed class SettlingSearch
{
    private const double Sure = 1.0 - 1e-9;
    private const double LeastBits = 1e-6;
    private readonly PedigreeBeliefs _beliefs;
    private readonly string _key;
    private readonly GenotypeClaim _claim;
    private readonly SettlingOptions _options;
    private readonly CancellationToken _cancel;
    private readonly BeliefRun _run;
    private readonly int _node;
    private readonly int _group;
    private readonly Sex _heterogametic;

    public SettlingSearch(PedigreeBeliefs beliefs, string key, GenotypeClaim claim, SettlingOptions options, CancellationToken cancel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(options.Young, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(options.Young, 20);
        _beliefs = beliefs;
        _key = key;
        _claim = claim;
        _options = options;
        _cancel = cancel;
        _run = beliefs.Run;
        _node = beliefs.NodeOf(key);
        _group = claim.Group.Index;
        _heterogametic = beliefs.Species.SexSystem.Heterogametic();
    }

    public IReadOnlyList<SettlingRecord> Find()
    {
        if (_run.Models[_group] is null || _run.Assembly.Variables[_group][_node] < 0)
        {
            return [];
        }

        var weights = _run.WeightsOf(_node, _group);
        var isFor = States(_node).Select(Holds).ToArray();
        var chance = weights.Where((_, i) => isFor[i]).Sum();
        if (chance <= 1.0 - Sure || chance >= Sure)
        {
            return [];
        }

        var found = new List<SettlingRecord>();
        found.AddRange(Looks(isFor));
        if (_claim.About is { } allele)
        {
            found.Add(Weigh(SettlingKind.DnaTest, _key, allele, [], 0, weights, isFor, state => OfTest(allele, state)));
            found.Add(Weigh(SettlingKind.TestPairing, _key, allele, Mates(allele), _options.Young, weights, isFor, Pairing(allele)));
        }

        return [.. found.Where(f => f.Bits > LeastBits).OrderByDescending(f => f.Bits).ThenBy(f => f.Kind).ThenBy(f => f.Animal, StringComparer.Ordinal)];
    }

    private StateSpace Space => _run.Models[_group]!.Space;

    private int[] States(int node) => _run.Networks[_group]!.States[node];

    private bool Holds(int state) => _claim.Holds(Space.Diplotypes[state], Space.Sexes[state] == _heterogametic);

    private IEnumerable<SettlingRecord> Looks(bool[] isFor)
    {
        var (variable, assembly) = (_run.Assembly.Variables[_group][_node], _run.Assembly);
        var solution = _run.Solutions[assembly.PartOf(variable)];
        for (var node = 0; node < _run.Frame.RecordedCount; node++)
        {
            var record = _run.Frame.Records[node]!;
            var other = assembly.Variables[_group][node];
            if (record.Observations.Any(o => o is Observation.Seen) || record.Count > 1 || other < 0 || assembly.PartOf(other) != assembly.PartOf(variable))
            {
                continue;
            }

            var joint = other == variable ? null : solution.Joint(assembly.Local[variable], assembly.Local[other], _cancel);
            var outcomes = new Dictionary<string, (double For, double Against)>(StringComparer.Ordinal);
            var own = _run.WeightsOf(_node, _group);
            var states = States(node);
            for (var y = 0; y < states.Length; y++)
            {
                foreach (var (reading, share) in Readings(states[y]))
                {
                    for (var x = 0; x < isFor.Length; x++)
                    {
                        var weight = share * (joint is null ? (x == y ? own[x] : 0.0) : joint[x, y]);
                        var (yes, no) = outcomes.GetValueOrDefault(reading);
                        outcomes[reading] = isFor[x] ? (yes + weight, no) : (yes, no + weight);
                    }
                }
            }

            yield return Report(SettlingKind.Look, record.Key, null, [], 0, outcomes.Values);
        }
    }

    // What a look at a hatchling of some state reads here, with the chances.
    private Dictionary<string, double> Readings(int state)
    {
        var readings = new Dictionary<string, double>(StringComparer.Ordinal) { [string.Empty] = 1.0 };
        foreach (var locus in Space.Group.Loci)
        {
            var (a, b) = locus.PairOf(Space.Diplotypes[state]);
            var next = new Dictionary<string, double>(StringComparer.Ordinal);
            foreach (var (before, weight) in readings)
            {
                foreach (var (expression, share) in locus.ExpressionsOf(a, b))
                {
                    var key = $"{before}{(expression.IsVisible && expression.TellableFrom == AgeStage.Hatchling ? expression.Index : 0)},";
                    next[key] = next.GetValueOrDefault(key) + (weight * share.Value);
                }
            }

            readings = next;
        }

        return readings;
    }

    private Dictionary<string, double> OfTest(Allele allele, int state)
    {
        var (a, b) = allele.Locus.PairOf(Space.Diplotypes[state]);
        var copies = (a == allele.Index ? 1 : 0) + (b == allele.Index ? 1 : 0);
        var right = (copies == 0 ? _options.Specificity : _options.Sensitivity).Value;
        return Enumerable.Range(0, 3).ToDictionary(n => $"{n}", n => n == copies ? right : 0.5 * (1.0 - right), StringComparer.Ordinal);
    }

    private string[] Mates(Allele allele)
    {
        var sex = _run.Frame.Sexes[_node];
        var mates = new List<string>();
        for (var node = 0; node < _run.Frame.RecordedCount; node++)
        {
            if (_run.Frame.Records[node]!.Count > 1 || _run.Frame.Sexes[node] is not { } other || other == sex)
            {
                continue;
            }

            var (states, weights) = (States(node), _run.WeightsOf(node, _group));
            var sure = 0.0;
            for (var i = 0; i < states.Length; i++)
            {
                sure += allele.Locus.PairOf(Space.Diplotypes[states[i]]) == (allele.Index, allele.Index) ? weights[i] : 0.0;
            }

            if (sure >= Sure)
            {
                mates.Add(_run.Frame.Records[node]!.Key);
            }
        }

        return [.. mates];
    }

    // The looks of the young counted, by what the animal is; its mate has two copies and is wild otherwise.
    private Func<int, Dictionary<string, double>> Pairing(Allele allele)
    {
        var haplotype = Space.Group.With(0, allele.Locus.IndexInGroup, allele.Index);
        var isSire = _run.Frame.Sexes[_node] != Sex.Female;
        var mateIsHeterogametic = (isSire ? Sex.Female : Sex.Male) == _heterogametic;
        var mate = Space.Of(new(haplotype, haplotype), mateIsHeterogametic);
        var survival = _run.Models[_group]!.SurvivalOf(null);
        return state =>
        {
            var one = new Dictionary<string, double>(StringComparer.Ordinal);
            for (var a = 0; a < Space.Gametes[state].Length; a++)
            {
                for (var b = 0; b < Space.Gametes[mate].Length; b++)
                {
                    var child = isSire ? Space.Child(Space.Gametes[state][a], Space.Gametes[mate][b]) : Space.Child(Space.Gametes[mate][b], Space.Gametes[state][a]);
                    foreach (var (reading, share) in child < 0 ? [] : Readings(child))
                    {
                        one[reading] = one.GetValueOrDefault(reading)
                            + (share * Space.GameteChances[state][a] * Space.GameteChances[mate][b] * survival[child]);
                    }
                }
            }

            var total = one.Values.Sum();
            var counted = new Dictionary<string, double>(StringComparer.Ordinal) { [string.Empty] = 1.0 };
            for (var n = 0; n < _options.Young; n++)
            {
                var next = new Dictionary<string, double>(StringComparer.Ordinal);
                foreach (var (before, weight) in counted)
                {
                    foreach (var (reading, share) in one)
                    {
                        var key = string.Concat(before.Split(';', StringSplitOptions.RemoveEmptyEntries).Append(reading).Order(StringComparer.Ordinal).Select(r => r + ";"));
                        next[key] = next.GetValueOrDefault(key) + (weight * share / total);
                    }
                }

                counted = next;
            }

            return counted;
        };
    }

    private SettlingRecord Weigh(
        SettlingKind kind, string animal, Allele allele, string[] mates, int young, double[] weights, bool[] isFor, Func<int, Dictionary<string, double>> read)
    {
        var outcomes = new Dictionary<string, (double For, double Against)>(StringComparer.Ordinal);
        var states = States(_node);
        for (var x = 0; x < states.Length; x++)
        {
            foreach (var (outcome, share) in read(states[x]))
            {
                var (yes, no) = outcomes.GetValueOrDefault(outcome);
                outcomes[outcome] = isFor[x] ? (yes + (share * weights[x]), no) : (yes, no + (share * weights[x]));
            }
        }

        return Report(kind, animal, allele, mates, young, outcomes.Values);
    }

    private SettlingRecord Report(
        SettlingKind kind, string animal, Allele? allele, string[] mates, int young, IReadOnlyCollection<(double For, double Against)> outcomes)
    {
        var (yes, all) = (outcomes.Sum(o => o.For), outcomes.Sum(o => o.For + o.Against));
        var bits = Entropy(yes / all);
        var settles = 0.0;
        foreach (var (f, a) in outcomes.Where(o => o.For + o.Against > 0.0))
        {
            var after = f / (f + a);
            bits -= (f + a) / all * Entropy(after);
            settles += after < _options.Bound.Value || after > _options.Bound.Complement.Value ? (f + a) / all : 0.0;
        }

        return new(kind, animal, allele, mates, young, Math.Max(0.0, bits), Probability.Rounded(settles));
    }

    private static double Entropy(double p) => p is <= 0.0 or >= 1.0 ? 0.0 : -((p * Math.Log2(p)) + ((1.0 - p) * Math.Log2(1.0 - p)));
}
