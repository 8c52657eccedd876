namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Which records are heard and which are kept back, and which animals matter then.</summary>
internal sealed class RecordHearing
{
    private readonly PedigreeFrame _frame;
    private readonly IReadOnlySet<RecordPlace> _heard;
    private readonly bool[] _needed;

    /// <summary>Hears some records.</summary>
    /// <param name="frame">The animals.</param>
    /// <param name="heard">The records that are heard.</param>
    /// <param name="asked">The node asked about; <c>null</c>: every animal matters.</param>
    /// <remarks>An animal without a record heard, and without young that matter, sums out to 1 and is left out.</remarks>
    public RecordHearing(PedigreeFrame frame, IReadOnlySet<RecordPlace> heard, int? asked)
    {
        _frame = frame;
        _heard = heard;
        _needed = new bool[frame.Count];
        if (asked is not { } node)
        {
            Array.Fill(_needed, true);
            return;
        }

        var keys = heard.Select(h => h.Key).ToHashSet(StringComparer.Ordinal);
        var open = new Stack<int>([node]);
        for (var n = 0; n < frame.RecordedCount; n++)
        {
            if (keys.Contains(frame.Records[n]!.Key))
            {
                open.Push(n);
            }
        }

        while (open.TryPop(out var n))
        {
            if (n < 0 || _needed[n])
            {
                continue;
            }

            _needed[n] = true;
            open.Push(frame.Sires[n]);
            open.Push(frame.Dams[n]);
            foreach (var male in frame.PossibleSires[n])
            {
                open.Push(male);
            }
        }
    }

    /// <summary>Whether a record is heard.</summary>
    public bool IsHeard(int node, int index) => _heard.Contains(new(_frame.Records[node]!.Key, index));

    /// <summary>Whether an animal matters.</summary>
    public bool IsNeeded(int node) => _needed[node];
}
