using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>The animals of a record as numbered nodes, with a node for every parent that is not recorded.</summary>
/// <remarks>Nodes come in an order in which a recorded parent stands before its young; unrecorded parents stand last.</remarks>
internal sealed class PedigreeFrame
{
    public const int None = -1;
    private readonly List<int>[] _youngOfUnknown;
    private FamilyIndex? _families;

    private PedigreeFrame(RecordedAnimal?[] records, int[] sires, int[] dams, int[][] possibleSires, int[] choices, double[][] choiceWeights, Sex?[] sexes, int recorded)
    {
        Records = records;
        Sires = sires;
        Dams = dams;
        PossibleSires = possibleSires;
        Choices = choices;
        ChoiceWeights = choiceWeights;
        Sexes = sexes;
        RecordedCount = recorded;
        Kin = KinOf(sires, dams, possibleSires);
        KinCount = Kin.Length == 0 ? 0 : Kin.Max() + 1;
        _youngOfUnknown = [.. Enumerable.Range(recorded, records.Length - recorded).Select(_ => new List<int>())];
        for (var node = 0; node < recorded; node++)
        {
            foreach (var parent in new[] { sires[node], dams[node] }.Where(p => p >= recorded))
            {
                _youngOfUnknown[parent - recorded].Add(node);
            }
        }
    }

    /// <summary>Gets the record of each node; <c>null</c>: a parent that is not recorded.</summary>
    public RecordedAnimal?[] Records { get; }

    /// <summary>Gets the sire's node, <see cref="None"/> of a founder and where there are several possible sires.</summary>
    public int[] Sires { get; }

    /// <summary>Gets the dam's node; <see cref="None"/> of a founder.</summary>
    public int[] Dams { get; }

    /// <summary>Gets the nodes of the possible sires, where there are several.</summary>
    public int[][] PossibleSires { get; }

    /// <summary>Gets the number of the choice between possible sires that a node hangs on; clutchmates hang on one.</summary>
    public int[] Choices { get; }

    /// <summary>Gets by choice the chances of the possible sires, in the order of their nodes.</summary>
    public double[][] ChoiceWeights { get; }

    /// <summary>Gets how many choices there are.</summary>
    public int ChoiceCount => ChoiceWeights.Length;

    /// <summary>Gets the sexes: as recorded, or as the part in a pair tells.</summary>
    public Sex?[] Sexes { get; }

    /// <summary>Gets for each node the number of the kin it belongs to: animals of other numbers have nothing to do with it.</summary>
    public int[] Kin { get; }

    /// <summary>Gets how many kins there are.</summary>
    public int KinCount { get; }

    /// <summary>Gets how many nodes have a record.</summary>
    public int RecordedCount { get; }

    /// <summary>Gets how many nodes there are.</summary>
    public int Count => Records.Length;

    /// <summary>Gets the families.</summary>
    public FamilyIndex Families => _families ??= FamilyIndex.Of(Sires, Dams, PossibleSires);

    /// <summary>The nodes of the young of a parent that is not recorded.</summary>
    public IReadOnlyList<int> YoungOfUnknown(int node) => _youngOfUnknown[node - RecordedCount];

    /// <summary>Whether a node has no parents here.</summary>
    public bool IsFounder(int node) => Dams[node] == None;

    private static int[] KinOf(int[] sires, int[] dams, int[][] possibleSires)
    {
        var root = Enumerable.Range(0, sires.Length).ToArray();
        for (var node = 0; node < root.Length; node++)
        {
            foreach (var parent in possibleSires[node].Append(sires[node]).Append(dams[node]).Where(p => p != None))
            {
                root[Root(node)] = Root(parent);
            }
        }

        var numbers = new Dictionary<int, int>();
        var kin = new int[root.Length];
        for (var node = 0; node < root.Length; node++)
        {
            var at = Root(node);
            numbers.TryAdd(at, numbers.Count);
            kin[node] = numbers[at];
        }

        return kin;

        int Root(int v)
        {
            while (root[v] != v)
            {
                v = root[v] = root[root[v]];
            }

            return v;
        }
    }

    private static (int[] Nodes, double[] Weights) PossibleSiresOf(RecordedAnimal record, Dictionary<string, int> nodeOf)
    {
        if (record.Sire is not null || record.PossibleSires.Count == 0)
        {
            return ([], []);
        }

        var given = record.SireWeights;
        if (given.Count > 0 && (given.Count != record.PossibleSires.Count || Math.Abs(given.Sum(w => w.Value) - 1.0) > Probability.RoundingTolerance))
        {
            throw new ArgumentException($"The chances of the {record.PossibleSires.Count} possible sires of {record.Key} are not as many numbers that sum to 1.");
        }

        int[] nodes = [.. record.PossibleSires.Select(k => nodeOf[k]).Distinct().Order()];
        return (nodes, given.Count == 0
            ? [.. nodes.Select(_ => 1.0 / nodes.Length)]
            : [.. nodes.Select(n => record.PossibleSires.Select((k, i) => nodeOf[k] == n ? given[i].Value : 0.0).Sum())]);
    }

    /// <summary>Numbers the animals.</summary>
    /// <exception cref="ArgumentException">A sire is female, a dam male, a count of young has young of its own, or chances are not as many as possible sires or not in sum
    /// 1.</exception>
    /// <exception cref="PedigreeKeyException">A key is listed twice or a named parent is missing.</exception>
    /// <exception cref="PedigreeLoopException">An animal is its own ancestor.</exception>
    public static PedigreeFrame Of(IReadOnlyList<RecordedAnimal> animals)
    {
        var byKey = new Dictionary<string, RecordedAnimal>(animals.Count, StringComparer.Ordinal);
        var pedigree = Pedigree.Of(animals.Select(a => new PedigreeAnimal(a.Key, a.Sire, a.Dam, a.PossibleSires)));
        foreach (var animal in animals)
        {
            byKey.Add(animal.Key, animal);
        }

        var first = new Dictionary<string, int>(animals.Count, StringComparer.Ordinal);
        var records = new List<RecordedAnimal?>(animals.Count);
        foreach (var entry in pedigree.Animals)
        {
            var record = byKey[entry.Key];
            first.Add(entry.Key, records.Count);
            for (var i = 0; i < record.Count; i++)
            {
                records.Add(record);
            }
        }

        var recorded = records.Count;
        var sires = new List<int>(recorded);
        var dams = new List<int>(recorded);
        var possible = new List<int[]>(recorded);
        var choices = new List<int>(recorded);
        var choiceOf = new Dictionary<string, int>(StringComparer.Ordinal);
        var choiceWeights = new List<double[]>();
        var unknownOf = new Dictionary<string, int>(StringComparer.Ordinal);
        var unknown = 0;
        for (var node = 0; node < recorded; node++)
        {
            var record = records[node]!;
            var sire = record.Sire is null ? None : first[record.Sire];
            var dam = record.Dam is null ? None : first[record.Dam];
            var (several, weights) = PossibleSiresOf(record, first);
            if (several.Length == 1)
            {
                (sire, several) = (several[0], []);
            }

            var clutch = record.Clutch ?? $"\u0001{record.Key}";
            if (several.Length > 1)
            {
                var key = $"{dam} {string.Join(',', several)} {string.Join(',', weights)} {clutch}";
                if (!choiceOf.TryGetValue(key, out var choice))
                {
                    choiceOf.Add(key, choice = choiceOf.Count);
                    choiceWeights.Add(weights);
                }

                choices.Add(choice);
            }
            else
            {
                choices.Add(None);
            }

            if (dam == None && (sire != None || several.Length > 0))
            {
                dam = Unknown($"dam {sire} {string.Join(',', several)} {clutch}");
            }
            else if (dam != None && sire == None && several.Length == 0)
            {
                sire = Unknown($"sire {dam} {clutch}");
            }

            sires.Add(sire);
            dams.Add(dam);
            possible.Add(several);
        }

        for (var i = 0; i < unknown; i++)
        {
            records.Add(null);
            sires.Add(None);
            dams.Add(None);
            possible.Add([]);
            choices.Add(None);
        }

        var sexes = records.Select(r => r?.Sex).ToArray();
        for (var node = 0; node < recorded; node++)
        {
            foreach (var sire in sires[node] == None ? possible[node] : [sires[node]])
            {
                Play(sire, Sex.Male, node);
            }

            if (dams[node] != None)
            {
                Play(dams[node], Sex.Female, node);
            }
        }

        return new([.. records], [.. sires], [.. dams], [.. possible], [.. choices], [.. choiceWeights], sexes, recorded);

        int Unknown(string key)
        {
            if (!unknownOf.TryGetValue(key, out var node))
            {
                unknownOf.Add(key, node = recorded + unknown++);
            }

            return node;
        }

        void Play(int parent, Sex sex, int young)
        {
            if (sexes[parent] is { } own && own != sex)
            {
                throw new ArgumentException($"{records[parent]!.Key} is {(own == Sex.Male ? "male" : "female")} and cannot be the {(sex == Sex.Male ? "sire" : "dam")} of {records[young]!.Key}.");
            }

            if (records[parent] is { Count: > 1 } several)
            {
                throw new ArgumentException($"{several.Key} stands for {several.Count} young and cannot be a parent of {records[young]!.Key}.");
            }

            sexes[parent] = sex;
        }
    }
}
