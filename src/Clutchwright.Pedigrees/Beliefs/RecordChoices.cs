namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What has been decided about records on the way to an answer.</summary>
internal sealed class RecordChoices
{
    private const int MostEased = 5;
    private readonly HashSet<(int Group, int Kin)> _raised = [];
    private readonly HashSet<(int Node, int Group)> _cut = [];
    private readonly HashSet<(int Node, int Group)> _uncut = [];
    private readonly HashSet<(string Key, int Index)> _soft = [];
    private readonly HashSet<(int Node, int Index)> _shared = [];

    /// <summary>Gets the records that cannot be true beside others, by animal and place in its list.</summary>
    public IReadOnlyCollection<(string Key, int Index)> Soft => _soft;

    /// <summary>Whether founders of a kin may carry what nobody spoke of, since the records cannot be true otherwise.</summary>
    public bool IsRaised(int group, int kin) => _raised.Contains((group, kin));

    /// <summary>Lets founders of a kin carry what nobody spoke of.</summary>
    /// <returns>Whether that is new.</returns>
    public bool Raise(int group, int kin) => _raised.Add((group, kin));

    /// <summary>Whether an animal is taken by its label at a group, and not as young of its parents.</summary>
    public bool IsCut(int node, int group) => _cut.Count > 0 && _cut.Contains((node, group));

    /// <summary>Takes an animal by its label.</summary>
    public void Cut(int node, int group) => _cut.Add((node, group));

    /// <summary>Whether an animal must not be taken by its label, since the records cannot be true then.</summary>
    public bool IsUncut(int node, int group) => _uncut.Contains((node, group));

    /// <summary>Takes the animals of a kin as young of their parents again, for good.</summary>
    /// <returns>Whether there were any.</returns>
    public bool Uncut(int group, int kin, int[] kinOf)
    {
        var before = _cut.Where(c => c.Group == group && kinOf[c.Node] == kin).ToArray();
        _uncut.UnionWith(before);
        _cut.ExceptWith(before);
        return before.Length > 0;
    }

    /// <summary>Whether a record may be wrong since it cannot be true beside others.</summary>
    public bool IsSoft(string key, int index) => _soft.Count > 0 && _soft.Contains((key, index));

    /// <summary>Lets a record be wrong.</summary>
    /// <returns>Whether that is new.</returns>
    public bool Soften(string key, int index) => _soft.Add((key, index));

    /// <summary>Gets whether some doubted record speaks of several groups.</summary>
    public bool HasShared => _shared.Count > 0;

    /// <summary>Gets how often the weight of records that give way was brought nearer to 1, each time to its square root.</summary>
    public int Eased { get; private set; }

    /// <summary>Brings the weight of records that give way nearer to 1.</summary>
    /// <returns>Whether that may help.</returns>
    public bool Ease() => ++Eased <= MostEased;

    /// <summary>Whether a doubted record speaks of several groups.</summary>
    public bool IsShared(int node, int index) => _shared.Contains((node, index));

    /// <summary>Notes that a doubted record speaks of several groups.</summary>
    public void Share(int node, int index) => _shared.Add((node, index));
}
