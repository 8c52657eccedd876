using Clutchwright.Planning.Expectations;

namespace Clutchwright.Planning.Tests.Expectations;

/// <summary>The model of an interval, from its definition: draws of everything unknown from the prior, each weighed with the chance of the records.</summary>
internal sealed class IntervalTwin
{
    private readonly List<(double Weight, double Middle, double Sd)> _draws = [];

    /// <param name="prior">The prior.</param>
    /// <param name="records">The records.</param>
    /// <param name="female">Whose next interval is asked for; her running ones do not count.</param>
    /// <param name="draws">How many draws.</param>
    /// <param name="seed">The seed of them.</param>
    public IntervalTwin(IntervalPrior prior, IReadOnlyList<IntervalRecord> records, string? female, int draws, int seed)
    {
        // The figures of the normal-inverse-gamma prior: the prediction has the mean and variance stated.
        var variance = Math.Log(1.0 + Math.Pow(prior.SdDays / prior.MeanDays, 2.0));
        var centre = Math.Log(prior.MeanDays) - (variance / 2.0);
        var shape = prior.Weight / 2.0;
        var scale = variance * (shape - 1.0) / (1.0 + (1.0 / prior.Weight));
        var random = new Random(seed);
        var counted = records.Where(r => r.Female != female || !double.IsPositiveInfinity(r.MostDays)).ToArray();
        var females = counted.Select(r => r.Female).Append(female ?? "any").Distinct().ToArray();
        for (var n = 0; n < draws; n++)
        {
            var share = Share(random);
            var v = scale / Gamma(random, (int)shape);
            var middle = centre + (Normal(random) * Math.Sqrt(v / prior.Weight));
            var own = females.ToDictionary(f => f, _ => middle + (Normal(random) * Math.Sqrt(share * v)));
            var sd = Math.Sqrt((1.0 - share) * v);
            var weight = 1.0;
            foreach (var record in counted)
            {
                weight *= Chance(record, own[record.Female] + Math.Log(record.Pace), sd);
            }

            _draws.Add((weight, own[female ?? "any"], sd));
        }
    }

    /// <summary>The chance of so many days or fewer, with its standard error.</summary>
    public (double Chance, double Error) AtMost(int days)
    {
        var total = _draws.Sum(d => d.Weight);
        var values = _draws.Select(d => (d.Weight, Value: Below((Math.Log(days + 0.5) - d.Middle) / d.Sd))).ToArray();
        var mean = values.Sum(d => d.Weight * d.Value) / total;
        return (mean, Math.Sqrt(values.Sum(d => d.Weight * d.Weight * (d.Value - mean) * (d.Value - mean))) / total);
    }

    internal static double Normal(Random random) => Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble())) * Math.Cos(2.0 * Math.PI * random.NextDouble());

    internal static double Gamma(Random random, int shape) => Enumerable.Range(0, shape).Sum(_ => -Math.Log(1.0 - random.NextDouble()));

    // One of eight shares, in proportion to 1 less the share.
    internal static double Share(Random random)
    {
        var at = random.NextDouble() * Enumerable.Range(0, 8).Sum(k => 1.0 - ((k + 0.5) / 8.0));
        for (var k = 0; k < 8; k++)
        {
            at -= 1.0 - ((k + 0.5) / 8.0);
            if (at <= 0.0)
            {
                return (k + 0.5) / 8.0;
            }
        }

        return 15.0 / 16.0;
    }

    private static double Chance(IntervalRecord record, double middle, double sd) =>
        record.LeastDays == record.MostDays ? Math.Exp(-Math.Pow((Math.Log(record.LeastDays) - middle) / sd, 2.0) / 2.0) / sd
        : double.IsPositiveInfinity(record.MostDays) ? 1.0 - (record.WillEnd * Below((Math.Log(record.LeastDays) - middle) / sd))
        : Below((Math.Log(record.MostDays) - middle) / sd) - Below((Math.Log(record.LeastDays) - middle) / sd);

    // The error function by its power series, or its asymptotic tail: slow, and not the product's.
    private static double Below(double z)
    {
        if (Math.Abs(z) > 6.0)
        {
            return z > 0.0 ? 1.0 : 0.0;
        }

        var (sum, term) = (z, z);
        for (var k = 1; k < 120 && Math.Abs(term) > 1e-18; k++)
        {
            term *= z * z / ((2 * k) + 1);
            sum += term;
        }

        return 0.5 + (sum * Math.Exp(-z * z / 2.0) / Math.Sqrt(2.0 * Math.PI));
    }
}
