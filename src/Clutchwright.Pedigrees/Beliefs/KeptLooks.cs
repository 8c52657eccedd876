using System.Collections.Concurrent;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>The weights of looks that were met before.</summary>
/// <remarks>Safe to use from many threads. Found by the record itself, or else by its forms: most animals of a stock look like another.</remarks>
internal sealed class KeptLooks
{
    private const int MostRecords = 20_000;
    private readonly ConcurrentDictionary<string, double[]> _byForms = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<Observation.Seen, double[]> _byRecord = new(ReferenceEqualityComparer.Instance);
    private int _records;

    /// <summary>The weights of a look.</summary>
    /// <param name="seen">The record.</param>
    /// <param name="weigh">Reckons them; asked where the forms are new.</param>
    public double[] Of(Observation.Seen seen, Func<Observation.Seen, double[]> weigh)
    {
        if (_byRecord.TryGetValue(seen, out var known))
        {
            return known;
        }

        var forms = seen.Forms.Count switch
        {
            0 => string.Empty,
            1 => seen.Forms[0].Id,
            _ => string.Join('|', seen.Forms.Select(f => f.Id).Order(StringComparer.Ordinal)),
        };
        var weights = _byForms.TryGetValue(forms, out var kept) ? kept : _byForms.GetOrAdd(forms, weigh(seen));

        // Records come and go while this stays.
        if (Interlocked.Increment(ref _records) > MostRecords)
        {
            _byRecord.Clear();
            Interlocked.Exchange(ref _records, 1);
        }

        _byRecord[seen] = weights;
        return weights;
    }
}
