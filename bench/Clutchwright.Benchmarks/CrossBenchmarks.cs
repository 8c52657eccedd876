using BenchmarkDotNet.Attributes;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Tests.Twin;
using Clutchwright.Genetics.Wants;
using Clutchwright.Testing;

namespace Clutchwright.Benchmarks;

/// <summary>One whole question: the cross of two animals that have one copy at many incompletely dominant loci, with the 1,000 likeliest
/// looks, the chance of one wanted set, and its odds in a clutch.</summary>
[MemoryDiagnoser]
public class CrossBenchmarks
{
    private static readonly GoodEggs Clutch = GoodEggs.Of(
        [0.0, 0.02, 0.04, 0.1, 0.18, 0.2, 0.2, 0.14, 0.08, 0.04],
        Probability.From(0.8),
        ClutchRate.Of(0.9, 0.1),
        ClutchRate.Of(0.9, 0.1));

    private static readonly Probability[] Confidences =
        [Probability.Half, Probability.Ratio(9, 10), Probability.Ratio(95, 100), Probability.Ratio(99, 100)];

    private readonly Question _twenty = new(20);
    private readonly Question _eight = new(8);

    [Benchmark(Description = "20 loci, lazily")]
    public double TwentyLoci() => _twenty.Answer();

    [Benchmark(Description = "8 loci, lazily")]
    public double EightLoci() => _eight.Answer();

    [Benchmark(Baseline = true, Description = "8 loci, slow twin in doubles")]
    public double EightLociSlowTwin() => _eight.AnswerByTwin<FloatNumber>();

    [Benchmark(Description = "8 loci, slow twin in fractions")]
    public double EightLociExactSlowTwin() => _eight.AnswerByTwin<ExactNumber>();

    private sealed class Question
    {
        private readonly SpeciesDefinition _definition;
        private readonly Genotype _sire;
        private readonly Genotype _dam;
        private readonly Want _want;

        public Question(int loci)
        {
            _definition = new("sample", SexSystem.XY, Enumerable.Range(0, loci).Select(i => Describe.Free($"L{i}", Describe.Incomplete($"m{i}"))).ToArray());
            var species = Species.From(_definition);
            var pairs = Enumerable.Range(0, loci).Select(i => $"m{i}/+").ToArray();
            (_sire, _dam) = (Describe.Male(species, pairs), Describe.Female(species, pairs));
            _want = Describe.Want(species, "m0/m0", "m1/m1", "m2/+", "m2/m2", "m3/+");
        }

        public double Answer()
        {
            var cross = Cross.Of(Mating.Of(_sire, _dam));
            var sum = cross.Looks().Take(1000).Sum(l => l.ChanceOfHatchling.Value);
            return sum + cross.ChanceOf(_want).Value + Odds(cross.SharedChanceOf(_want));
        }

        /// <summary>The full table, which is all the twin knows how to make, and the same odds.</summary>
        public double AnswerByTwin<T>()
            where T : struct, ITwinNumber<T>
        {
            var twin = new SlowTwin<T>(_definition, [(Animal(_sire), Animal(_dam), T.One)]);
            var looks = twin.Looks(AgeStage.Hatchling);
            var sum = looks.Values.OrderByDescending(l => twin.Over(l.ByCase).ToDouble()).Take(1000).Sum(l => twin.Over(l.ByCase).ToDouble());
            var wanted = twin.Over(twin.Hatched(c =>
                c.Pair(0) == (1, 1) && c.Pair(1) == (1, 1) && c.Pair(2) != (0, 0) && c.Pair(3) is (0, 1) or (1, 0))).ToDouble();
            return sum + wanted + Odds(SharedChance.Certain(Probability.From(wanted)));
        }

        private static double Odds(SharedChance wanted) =>
            wanted.AtLeastOne(Clutch).Value
            + wanted.AtLeast(2, Clutch).Value
            + wanted.NumberIn(Clutch).Sum()
            + Confidences.Sum(c => wanted.EggsFor(c) ?? 0)
            + Confidences.Sum(c => wanted.ClutchesFor(c, Clutch) ?? 0);

        private static TwinAnimal Animal(Genotype genotype)
        {
            var (first, second) = SampleParents.Strands(genotype);
            return new(genotype.Sex, TwinAnimal.Code(first), TwinAnimal.Code(second));
        }
    }
}
