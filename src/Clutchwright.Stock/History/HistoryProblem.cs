namespace Clutchwright.Stock.History;

/// <summary>A record that is no longer as the deed to be undone left it: what it was called then, and the last deed that
/// changed it.</summary>
public sealed record ChangedRecord(RecordKind Kind, Guid RecordId, string Label, DeedId LastDeed, string LastWords)
{
    /// <summary>The fields that differ; empty if the record is gone or came back.</summary>
    public required IReadOnlyList<string> Fields { get; init; }
}

/// <summary>Why a deed cannot be undone.</summary>
public abstract record HistoryProblem : Problem
{
    private HistoryProblem()
    {
    }

    public sealed record NoSuchDeed(DeedId Deed) : HistoryProblem;

    /// <summary>Records that the deed wrote have changed since; undoing it would lose those changes.</summary>
    public sealed record ChangedSince(DeedId Deed) : HistoryProblem
    {
        public required IReadOnlyList<ChangedRecord> Records { get; init; }
    }

    /// <summary>A record that the deed added, and that would go, is named by another now.</summary>
    public sealed record StillUsed(DeedId Deed, string Label, string UsedBy) : HistoryProblem;

    /// <summary>Another record has had the name since.</summary>
    public sealed record NameTaken(string Name) : HistoryProblem;

    /// <summary>The state before would break a rule today.</summary>
    public sealed record NoLongerAllowed(DeedId Deed, string Label, Problem Because) : HistoryProblem;
}
