namespace Clutchwright.Stock.History;

/// <summary>What a deed did to one record.</summary>
internal sealed class Change
{
    public Change(DeedId deedId, int number, RecordKind kind, Guid recordId, string label, string? before, string? after)
    {
        DeedId = deedId;
        Number = number;
        Kind = kind;
        RecordId = recordId;
        Label = label;
        Before = before;
        After = after;
    }

    public DeedId DeedId { get; private set; }

    /// <summary>Counts from 1 inside the deed.</summary>
    public int Number { get; private set; }

    public RecordKind Kind { get; private set; }

    public Guid RecordId { get; private set; }

    /// <summary>What the record was called at the time.</summary>
    public string Label { get; private set; }

    /// <summary>The record before, as JSON; null if there was none.</summary>
    public string? Before { get; private set; }

    /// <summary>The record afterwards, as JSON; null if there was none any more.</summary>
    public string? After { get; private set; }
}
