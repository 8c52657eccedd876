using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.History;

/// <summary>One thing that a person did to the book, with everything that it changed. Written once and never changed.</summary>
internal sealed class Deed
{
    public const int MaxWhoLength = 200;
    public const int MaxWordsLength = 500;

    // A set: EF Core asks for each whether it is in there, and a whole book that comes back is one deed.
    private readonly HashSet<Change> _changes = new(ReferenceEqualityComparer.Instance);

    public Deed(DeedId id, DateTime when, string who, string words, DeedId? undoes)
    {
        DeedId = id;
        When = when;
        Who = TextRules.Shorten(who, MaxWhoLength);
        Words = TextRules.Shorten(words, MaxWordsLength);
        Undoes = undoes;
    }

    private Deed()
    {
    }

    public DeedId DeedId { get; private set; }

    /// <summary>UTC.</summary>
    public DateTime When { get; private set; }

    public string Who { get; private set; } = "";

    public string Words { get; private set; } = "";

    /// <summary>The deed that this one undid; null if it is none that undoes.</summary>
    public DeedId? Undoes { get; private set; }

    /// <summary>What it changed, in no order: each has its number.</summary>
    public IReadOnlyCollection<Change> Changes => _changes;

    public void Add(RecordKind kind, Guid record, string label, string? before, string? after) =>
        _changes.Add(new Change(DeedId, _changes.Count + 1, kind, record, label, before, after));
}
