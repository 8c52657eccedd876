namespace Clutchwright.Pedigrees.Beliefs.Contradictions;

/// <summary>Compares what was seen of each animal with what all other records make of it.</summary>
internal sealed class SuspectRanking
{
    private readonly FallibleModel _model;
    private readonly FallibleReckoning _reckoning;
    private readonly Dictionary<string, double[][]> _looks = new(StringComparer.Ordinal);
    private readonly string?[] _lookOf;
    private readonly double[][][] _others;

    /// <summary>Takes every animal's own looks out of its posterior.</summary>
    public SuspectRanking(FallibleModel model, FallibleReckoning reckoning)
    {
        (_model, _reckoning) = (model, reckoning);
        var frame = reckoning.Frame;
        _lookOf = new string?[frame.RecordedCount];
        _others = new double[model.Groups.Length][][];
        for (var node = 0; node < frame.RecordedCount; node++)
        {
            var seen = frame.Records[node]!.Observations.OfType<Observation.Seen>().ToArray();
            if (seen.Length == 0)
            {
                continue;
            }

            var key = string.Join('|', seen.Select(s => string.Join(',', s.Forms.Select(f => f.Id).Order(StringComparer.Ordinal))));
            _lookOf[node] = key;
            if (!_looks.ContainsKey(key))
            {
                _looks.Add(key, [.. model.Groups.Select(g => seen.Select(s => g.Weights.Of(s)).Aggregate((a, b) => [.. a.Zip(b, (x, y) => x * y)]))]);
            }
        }

        for (var g = 0; g < _others.Length; g++)
        {
            _others[g] = new double[frame.RecordedCount][];
            for (var node = 0; node < frame.RecordedCount; node++)
            {
                var belief = reckoning.BeliefOf(g, node);
                var own = _lookOf[node] is { } look ? _looks[look][g] : null;
                var total = 0.0;
                for (var s = 0; s < belief.Length; s++)
                {
                    belief[s] = belief[s] == 0.0 ? 0.0 : belief[s] / (own?[s] ?? 1.0);
                    total += belief[s];
                }

                for (var s = 0; s < belief.Length; s++)
                {
                    belief[s] /= total;
                }

                _others[g][node] = belief;
            }
        }
    }

    /// <summary>All animals that were looked at, the most surprising first.</summary>
    public IReadOnlyList<Suspect> Rank()
    {
        var frame = _reckoning.Frame;
        var ofStock = _looks.Keys.ToDictionary(k => k, OfStock, StringComparer.Ordinal);
        var exchange = new ExchangeFactors(_model.Rates, frame, _lookOf, Log10);
        var ranked = new Dictionary<string, Suspect>(StringComparer.Ordinal);
        for (var node = 0; node < frame.RecordedCount; node++)
        {
            if (_lookOf[node] is not { } look)
            {
                continue;
            }

            var own = Log10(look, node);
            var suspect = new Suspect(frame.Records[node]!.Key, own, Mean(ofStock[look] - own, exchange.Of(node)));
            if (!ranked.TryGetValue(suspect.Key, out var known) || known.Log10Factor < suspect.Log10Factor)
            {
                ranked[suspect.Key] = suspect;
            }
        }

        return [.. ranked.Values.OrderByDescending(s => s.Log10Factor).ThenBy(s => s.Key, StringComparer.Ordinal)];
    }

    /// <summary>The base-10 logarithm of the chance that a node would show what is recorded of another, or of itself.</summary>
    /// <returns><c>null</c> where the other was not looked at.</returns>
    public double? Log10(int node, int asRecordedOf) => _lookOf[asRecordedOf] is { } look ? Log10(look, node) : null;

    // Two ways in which a look may have come to the wrong animal, equally probable before.
    private static double Mean(double ofStock, double? exchanged) => exchanged is not { } other
        ? ofStock
        : Math.Max(ofStock, other) + Math.Log10(0.5 * (1.0 + Math.Pow(10.0, -Math.Abs(ofStock - other))));

    private double Log10(string look, int node)
    {
        var log = 0.0;
        for (var g = 0; g < _others.Length; g++)
        {
            log += Math.Log10(Dot(_others[g][node], _looks[look][g]));
        }

        return log;
    }

    // Of an animal drawn from the stock, group by group.
    private double OfStock(string look)
    {
        var log = 0.0;
        for (var g = 0; g < _others.Length; g++)
        {
            var weights = _looks[look][g];
            log += Math.Log10(_others[g].Average(o => Dot(o, weights)));
        }

        return log;
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
