using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>How probable each record is, by what the animal truly is at one linkage group.</summary>
/// <remarks>Kept by look, since most animals of a stock look like another.</remarks>
internal sealed class RecordWeights(Species species, StateSpace space, double misreading)
{
    private readonly KeptLooks _looks = new();
    private readonly KeptLooks _trueLooks = new();
    private readonly int[] _readings = [.. space.Group.Loci.Select((locus, i) => CountReadings(locus, space.Alleles[i]))];

    /// <summary>The weights of a record, by state; the record is taken as certain.</summary>
    public double[] Of(Observation observation) => observation switch
    {
        Observation.Seen seen => _looks.Of(seen, s => OfLook(s, misreading)),
        Observation.Said said => OfWords(said.Reading),
        Observation.RuledOut ruledOut => ByDiplotype(d => ruledOut.Alleles.Any(a => a.Locus.Group == space.Group && Copies(d, a) > 0) ? 0.0 : 1.0),
        Observation.DnaTest test when test.Allele.Locus.Group == space.Group => ByDiplotype(d => OfTest(test, d)),
        _ => ByDiplotype(_ => 1.0),
    };

    /// <summary>The weights of a look that was read rightly.</summary>
    public double[] OfTrueLook(Observation.Seen seen) => _trueLooks.Of(seen, s => OfLook(s, 0.0));

    /// <summary>Whether a record says something at this group.</summary>
    public bool Speaks(Observation observation) => observation switch
    {
        Observation.Said said => said.Reading[space.Group] is not [{ Value.IsWild: true }],
        Observation.RuledOut ruledOut => ruledOut.Alleles.Any(a => a.Locus.Group == space.Group),
        Observation.DnaTest test => test.Allele.Locus.Group == space.Group,
        _ => true,
    };

    private static int CountReadings(Locus locus, int[] alleles)
    {
        var readings = new HashSet<int>();
        foreach (var a in alleles)
        {
            foreach (var b in alleles)
            {
                foreach (var (expression, _) in locus.ExpressionsOf(a, b))
                {
                    readings.Add(expression.TellableFrom > AgeStage.Hatchling ? 0 : expression.Index);
                }
            }
        }

        return readings.Count;
    }

    private static int Copies(Diplotype diplotype, Allele allele)
    {
        var (a, b) = allele.Locus.PairOf(diplotype);
        return (a == allele.Index ? 1 : 0) + (b == allele.Index ? 1 : 0);
    }

    private static double OfTest(Observation.DnaTest test, Diplotype diplotype)
    {
        var copies = Copies(diplotype, test.Allele);
        return copies == 0
            ? (test.Copies == 0 ? test.Specificity : test.Specificity.Complement).Value
            : (test.Copies == copies ? test.Sensitivity : test.Sensitivity.Complement).Value;
    }

    private double[] OfWords(GenotypeBelief reading)
    {
        var weights = new double[space.Count];
        var possible = reading[space.Group];
        if (possible is [{ Value.IsWild: true }])
        {
            Array.Fill(weights, 1.0);
            return weights;
        }

        foreach (var (diplotype, _) in possible)
        {
            foreach (var state in StatesOf(diplotype, reading.IsHeterogametic))
            {
                weights[state] = 1.0;
            }
        }

        return weights;
    }

    /// <summary>The states that words about one diplotype may mean: words read for one sex hold for the other as well.</summary>
    public IEnumerable<int> StatesOf(Diplotype diplotype, bool heterogametic)
    {
        if (!space.Group.IsSex)
        {
            return Known([space.Of(diplotype, heterogametic: false)]);
        }

        var other = heterogametic
            ? [space.Of(diplotype, heterogametic: false)]
            : new[] { space.Of(diplotype, heterogametic: true), space.Of(new(diplotype.Second, diplotype.First), heterogametic: true) };
        return Known([space.Of(diplotype, heterogametic), .. other]);

        static IEnumerable<int> Known(int[] states) => states.Where(s => s >= 0).Distinct();
    }

    private double[] OfLook(Observation.Seen seen, double error)
    {
        var weights = new double[space.Count];
        Array.Fill(weights, 1.0);
        for (var i = 0; i < space.Group.Loci.Count; i++)
        {
            if (_readings[i] < 2)
            {
                // One reading only: what is recorded here can be nothing else, unless it is a form nobody here can show.
                Multiply(weights, space.Group.Loci[i], seen, m => m);
                continue;
            }

            var others = _readings[i] - 1;
            Multiply(weights, space.Group.Loci[i], seen, m => ((1.0 - error) * m) + (error * (1.0 - m) / others));
        }

        return weights;
    }

    private void Multiply(double[] weights, Locus locus, Observation.Seen seen, Func<double, double> read)
    {
        var matches = new double[weights.Length];
        var tells = false;
        for (var s = 0; s < weights.Length; s++)
        {
            matches[s] = Match(locus, seen, space.Diplotypes[s]);
            tells |= matches[s] != 1.0;
        }

        for (var s = 0; tells && s < weights.Length; s++)
        {
            weights[s] *= read(matches[s]);
        }
    }

    // The chance that an animal of this diplotype shows at the locus what was seen; a locus that something seen hides tells nothing.
    private double Match(Locus locus, Observation.Seen seen, Diplotype diplotype)
    {
        var (a, b) = locus.PairOf(diplotype);
        var form = seen.Forms.FirstOrDefault(f => f.Locus == locus);
        var match = Probability.Impossible;
        foreach (var (expression, share) in locus.ExpressionsOf(a, b))
        {
            var agrees = form is not null
                ? expression == form
                : !expression.IsVisible || expression.TellableFrom > AgeStage.Hatchling || species.IsHidden(expression, seen.Forms);
            match += agrees ? share : Probability.Impossible;
        }

        return match.Value;
    }

    private double[] ByDiplotype(Func<Diplotype, double> weight)
    {
        var weights = new double[space.Count];
        for (var s = 0; s < weights.Length; s++)
        {
            weights[s] = weight(space.Diplotypes[s]);
        }

        return weights;
    }
}
