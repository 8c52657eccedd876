namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What has been decided about records on the way to an answer.</summary>
/// <param name="groupCount">How many linkage groups the species has.</param>
internal sealed class RecordChoices(int groupCount)
{
    private readonly int[] _levels = new int[groupCount];
    private readonly HashSet<(int Node, int Group)> _cut = [];
    private readonly HashSet<(string Key, int Index)> _soft = [];
    private readonly HashSet<(int Node, int Index)> _shared = [];

    /// <summary>Gets the records that cannot be true beside others, by animal and place in its list.</summary>
    public IReadOnlyCollection<(string Key, int Index)> Soft => _soft;

    /// <summary>Whether founders may carry what nobody spoke of: 0 no, 1 where the records cannot be true otherwise.</summary>
    public int Level(int group) => _levels[group];

    /// <summary>Lets founders carry what nobody spoke of.</summary>
    public void Raise(int group) => _levels[group] = 1;

    /// <summary>Whether an animal is taken by its label at a group, and not as young of its parents.</summary>
    public bool IsCut(int node, int group) => _cut.Contains((node, group));

    /// <summary>Takes an animal by its label.</summary>
    public void Cut(int node, int group) => _cut.Add((node, group));

    /// <summary>Whether a record may be wrong since it cannot be true beside others.</summary>
    public bool IsSoft(string key, int index) => _soft.Count > 0 && _soft.Contains((key, index));

    /// <summary>Lets a record be wrong.</summary>
    /// <returns>Whether that is new.</returns>
    public bool Soften(string key, int index) => _soft.Add((key, index));

    /// <summary>Whether a doubted record speaks of several groups.</summary>
    public bool IsShared(int node, int index) => _shared.Contains((node, index));

    /// <summary>Notes that a doubted record speaks of several groups.</summary>
    public void Share(int node, int index) => _shared.Add((node, index));
}
