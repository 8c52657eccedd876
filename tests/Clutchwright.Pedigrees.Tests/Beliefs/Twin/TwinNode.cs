using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Twin;

/// <summary>An animal of the slow twin, or a parent that is not recorded.</summary>
internal sealed class TwinNode(string name, RecordedAnimal? record)
{
    public string Name => name;

    public RecordedAnimal? Record => record;

    public TwinNode? Dam { get; set; }

    /// <summary>Gets or sets the males of which one is the sire; one only where it is known which.</summary>
    public List<TwinNode> Males { get; set; } = [];

    /// <summary>Gets or sets the choice between the males; -1 where there is none.</summary>
    public int Choice { get; set; } = -1;

    /// <summary>Gets or sets the chances of the males, in their order.</summary>
    public List<double> MaleChances { get; set; } = [];

    public Sex? Sex { get; set; } = record?.Sex;

    public List<TwinNode> Young { get; } = [];

    public bool IsFounder => Dam is null;

    public bool IsHalfKnown => !IsFounder && (Dam!.Record is null || Males[0].Record is null);

    public IEnumerable<TwinNode> Parents => Dam is null ? [] : Males.Append(Dam);

    public override string ToString() => name;

    /// <summary>Reads the animals, parents before young, cut into kins that have nothing to do with each other.</summary>
    public static List<List<TwinNode>> Kins(IReadOnlyList<RecordedAnimal> animals)
    {
        var nodes = animals.SelectMany(a => Enumerable.Range(0, a.Count).Select(i => new TwinNode(i == 0 ? a.Key : $"{a.Key}#{i}", a))).ToList();
        var byKey = nodes.ToDictionary(n => n.Name);
        var unrecorded = new Dictionary<string, TwinNode>();
        var choices = new Dictionary<string, int>();
        foreach (var node in nodes.ToArray())
        {
            var record = node.Record!;
            var males = (record.Sire is null ? record.PossibleSires : [record.Sire]).Distinct().Order(StringComparer.Ordinal).ToArray();
            var clutch = record.Clutch is null ? $"own of {record.Key}" : $"clutch {record.Clutch}";
            if (males.Length == 0 && record.Dam is null)
            {
                continue;
            }

            // Clutchmates share the parent that is not recorded, and the choice of the one that is in doubt.
            node.Males = males.Length > 0 ? [.. males.Select(m => byKey[m])] : [Unrecorded($"sire by {record.Dam}, {clutch}")];
            node.Dam = record.Dam is null ? Unrecorded($"dam by {string.Join('|', males)}, {clutch}") : byKey[record.Dam];
            if (males.Length > 1)
            {
                node.MaleChances = [.. males.Select(m => record.PossibleSires
                    .Select((p, i) => p != m ? 0.0 : record.SireWeights.Count > 0 ? record.SireWeights[i].Value : 1.0 / males.Length)
                    .Sum())];
                var key = $"{string.Join('|', males)} by {string.Join('|', node.MaleChances)} x {record.Dam}, {clutch}";
                choices.TryAdd(key, choices.Count);
                node.Choice = choices[key];
            }

            node.Dam.Sex = Genetics.Loci.Sex.Female;
            node.Males.ForEach(m => m.Sex = Genetics.Loci.Sex.Male);
            foreach (var parent in node.Parents)
            {
                parent.Young.Add(node);
            }
        }

        var kins = new List<List<TwinNode>>();
        var done = new HashSet<TwinNode>();
        foreach (var start in nodes.Where(n => !done.Contains(n)))
        {
            var kin = new List<TwinNode> { start };
            for (var i = 0; i < kin.Count; i++)
            {
                kin.AddRange(kin[i].Parents.Concat(kin[i].Young).Where(o => !kin.Contains(o)).Distinct().ToArray());
            }

            done.UnionWith(kin);
            kins.Add(Ordered(kin));
        }

        return kins;

        TwinNode Unrecorded(string key)
        {
            if (!unrecorded.TryGetValue(key, out var node))
            {
                unrecorded.Add(key, node = new($"({key})", null));
            }

            return node;
        }
    }

    private static List<TwinNode> Ordered(List<TwinNode> kin)
    {
        var ordered = new List<TwinNode>();
        while (ordered.Count < kin.Count)
        {
            ordered.AddRange(kin.Where(n => !ordered.Contains(n) && n.Parents.All(ordered.Contains)).ToArray());
        }

        return ordered;
    }
}
