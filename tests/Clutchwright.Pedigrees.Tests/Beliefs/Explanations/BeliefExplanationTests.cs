using System.Diagnostics;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Pedigrees.Beliefs.Explanations;
using Clutchwright.Testing;
using Clutchwright.Testing.Stocks;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Explanations;

/// <summary>Explanations of beliefs, worked by hand and against every genotype written out.</summary>
public class BeliefExplanationTests(ITestOutputHelper output)
{
    private static readonly Species Snake = Describe.Species(
        SexSystem.XY, Describe.Free("clown", Describe.Recessive("clown")), Describe.SexLinked("banana", 0.0, Describe.Incomplete("banana")));

    private static readonly Allele Clown = Describe.Mutant(Snake, "clown");

    [Fact]
    public void Of_FiveNormalsFromAVisual_IsThirtyTwoTimesLessLikely()
    {
        // [computed] methods.md: prior 1/2, 5 normal from the homozygous mate: 1/33.
        var explanation = Explain(
            "s",
            [
                Animal("s", Sex.Male, Normal(), PossibleHet(1, 2)),
                Animal("d", Sex.Female, Visual()),
                .. Enumerable.Range(0, 5).Select(i => Young($"y{i}", "s", "d", Normal())),
            ]);

        Assert.Equal(new RecordPlace("s", 1), explanation.Start);
        Assert.Equal("0", explanation.BeforeStart.ToString());
        Assert.Equal("1/2", explanation.Prior.ToString());
        var step = Assert.Single(explanation.Steps);
        Assert.Equal((StepKind.Clutch, 5), (step.Kind, step.Records.Count));
        Assert.Equal(1.0 / 32.0, step.Factor, 12);
        Assert.Equal(1.0 / 32.0, step.RestsOn, 12);
        Assert.Equal("1/33", step.Chance.ToString());
        Assert.Equal([new RecordPlace("s", 0)], explanation.Silent);
    }

    [Fact]
    public void Of_NormalYoungOfTwoHets_StartsFromMendel()
    {
        // Mendel: 3/4 carry; looked at and normal, the quarter that shows goes: odds 3 to 2, a factor of 2/3.
        var explanation = Explain("y", [Het("s", Sex.Male), Het("d", Sex.Female), Young("y", "s", "d", Normal(), PossibleHet(2, 3))]);

        Assert.Equal("3/4", explanation.Prior.ToString());
        Assert.Null(explanation.Start);
        Assert.Equal([new("s", 0), new("d", 0)], explanation.ParentStarts);
        var step = Assert.Single(explanation.Steps);
        Assert.Equal(StepKind.Own, step.Kind);
        Assert.Equal(2.0 / 3.0, step.Factor, 12);
        Assert.Equal("2/3", explanation.Chance.ToString());
        Assert.Equal([new RecordPlace("y", 1)], explanation.NotCounted);
    }

    [Fact]
    public void Of_HatchlingThatShowsIt_MakesItCertain()
    {
        var explanation = Explain("s", [Animal("s", Sex.Male, PossibleHet(1, 2)), Het("d", Sex.Female), Young("y", "s", "d", Visual())]);

        Assert.Equal(double.PositiveInfinity, Assert.Single(explanation.Steps).Factor);
        Assert.Equal("1", explanation.Chance.ToString());
    }

    [Fact]
    public void Of_RuledOut_IsAFactorOfZero()
    {
        var explanation = Explain("y", [Het("s", Sex.Male), Het("d", Sex.Female), Young("y", "s", "d", new Observation.RuledOut([Clown]))]);

        Assert.Equal(0.0, Assert.Single(explanation.Steps).Factor);
        Assert.Equal("0", explanation.Chance.ToString());
    }

    [Fact]
    public void Of_VisualYoungOfAnimalsNobodySpokeOf_IsDecisive()
    {
        var explanation = Explain("s", [Animal("s", Sex.Male, Normal()), Animal("d", Sex.Female, Normal()), Young("y", "s", "d", Visual())]);

        Assert.Equal("0", explanation.Prior.ToString());
        Assert.True(explanation.HasAllelesLetIn);
        Assert.True(explanation.Steps.Single(s => s.Kind == StepKind.Clutch).Factor > ExplanationStep.Decisive);
        Assert.Equal("1", explanation.Chance.ToString());
    }

    [Fact]
    public void Of_SonOfAMaleWithItOnHisY_RidesOnIt()
    {
        var banana = Describe.Mutant(Snake, "banana");
        var seen = new Observation.Seen([banana.Locus.ExpressionOf(0, 1)], GenotypeBelief.Certain(Describe.Animal(Snake, Sex.Male, "+/banana")));
        var beliefs = PedigreeBeliefs.Of(Snake, [Animal("s", Sex.Male, seen), Animal("d", Sex.Female, Normal()), Young("y", "s", "d", seen) with { Sex = Sex.Male }], cancel: TestContext.Current.CancellationToken);

        // From looks alone either strand was as likely; a son that shows it settles that.
        var explanation = BeliefExplanation.Of(beliefs, "s", new GenotypeClaim.RidesOnUnshared(banana), TestContext.Current.CancellationToken);

        Assert.Equal("1/2", explanation.Prior.ToString());
        Assert.Equal("1", explanation.Chance.ToString());
    }

    [Fact]
    public void Of_AlleleNobodySpeaksOf_HasNoSteps()
    {
        var explanation = Explain("s", [Animal("s", Sex.Male, Normal())]);

        Assert.Equal("0", explanation.Chance.ToString());
        Assert.Empty(explanation.Steps);
    }

    [Fact]
    public void For_UntestedHet_TestSettlesAndSixYoungTellLess()
    {
        var beliefs = PedigreeBeliefs.Of(
            Snake, [Animal("s", Sex.Male, PossibleHet(1, 2), Normal()), Animal("d", Sex.Female, Visual())], cancel: TestContext.Current.CancellationToken);

        var settling = SettlingRecord.For(beliefs, "s", new GenotypeClaim.Carries(Clown), SettlingOptions.Default, TestContext.Current.CancellationToken);

        Assert.Equal([SettlingKind.DnaTest, SettlingKind.TestPairing], settling.Select(s => s.Kind));
        Assert.Equal(1.0, settling[0].Bits, 12);
        Assert.Equal("1", settling[0].Settles.ToString());
        Assert.Equal(["d"], settling[1].Mates);

        // By hand: 6 normal with 1/2 + 1/2 x 2^-6 = 65/128 leave 1/65, above 1 %; a visual settles it.
        Assert.Equal(63.0 / 128.0, settling[1].Settles.Value, 12);
        var left = -((1.0 / 65.0 * Math.Log2(1.0 / 65.0)) + (64.0 / 65.0 * Math.Log2(64.0 / 65.0)));
        Assert.Equal(1.0 - (65.0 / 128.0 * left), settling[1].Bits, 12);
    }

    // The second is spent after some steps, the third before the first.
    [Theory]
    [InlineData(4e4, 3000)]
    [InlineData(150.0, 1000)]
    [InlineData(0.0, 1000)]
    public void Of_AnySmallStock_EveryStepIsThePosteriorOfWhatWasHeard(double budget, int iterations) => SmallStock.Any.Sample(stock =>
    {
        var settings = BeliefSettings.Default with { ExplanationBudget = budget };
        var beliefs = PedigreeBeliefs.Of(Snake, stock.Animals, settings, cancel: TestContext.Current.CancellationToken);
        foreach (var animal in stock.Animals)
        {
            var explanation = BeliefExplanation.Of(beliefs, animal.Key, new GenotypeClaim.Carries(Clown), TestContext.Current.CancellationToken);
            var heard = new HashSet<RecordPlace>(stock.Starts);
            Close(stock.Carries(animal.Key, heard), explanation.Prior.Value);
            var odds = explanation.PriorOdds;
            foreach (var step in explanation.Steps)
            {
                heard.UnionWith(step.Records);
                Close(stock.Carries(animal.Key, heard), step.Chance.Value);
                odds *= step.Factor;
            }

            Close(beliefs[animal.Key].Genotype.ChanceOfCarrying(Clown).Value, explanation.Chance.Value);
            Assert.True(odds == explanation.Odds || Math.Abs(Math.Log(odds / explanation.Odds)) < 1e-9);
            Assert.True(budget > 0.0 || explanation.Steps.Count <= 2);
        }
    }, iter: iterations);

    [Fact]
    public void Of_KennelOfThreeHundred_FactorsMultiplyToTheBelief()
    {
        var stock = BredStock.Of(BredStock.Snake, seed: 7, females: 10, males: 3, least: 300);
        var beliefs = PedigreeBeliefs.Of(stock.Species, stock.Animals, cancel: TestContext.Current.CancellationToken);
        var clock = Stopwatch.StartNew();
        var (count, steps) = (0, 0);
        foreach (var animal in stock.Animals.Where((_, i) => i % 10 == 0))
        {
            foreach (var allele in stock.Species.Loci.Select(l => l.Alleles[1]))
            {
                var explanation = BeliefExplanation.Of(beliefs, animal.Key, new GenotypeClaim.Carries(allele), TestContext.Current.CancellationToken);
                var odds = explanation.Steps.Aggregate(explanation.PriorOdds, (product, step) => product * step.Factor);
                Close(beliefs[animal.Key].Genotype.ChanceOfCarrying(allele).Value, explanation.Chance.Value);
                Assert.True(odds == explanation.Odds || Math.Abs(Math.Log(odds / explanation.Odds)) < 1e-6, $"{animal.Key} {allele}: {odds} {explanation.Odds}");
                (count, steps) = (count + 1, steps + explanation.Steps.Count);
            }
        }

        output.WriteLine($"{count} explanations, {steps} steps, {clock.Elapsed.TotalMilliseconds / count:0.0} ms each");
    }

    // By their distance: two numbers next to each other may be rounded apart.
    private static void Close(double expected, double actual) => Assert.Equal(expected, actual, 5e-10);

    private static BeliefExplanation Explain(string key, RecordedAnimal[] animals) =>
        BeliefExplanation.Of(PedigreeBeliefs.Of(Snake, animals), key, new GenotypeClaim.Carries(Clown), TestContext.Current.CancellationToken);

    private static Observation.Seen Normal() => new([], GenotypeBelief.Wild(Snake, Sex.Female));

    private static Observation.Seen Visual() =>
        new([Clown.Locus.ExpressionOf(1, 1)], GenotypeBelief.Certain(Describe.Animal(Snake, Sex.Female, "clown/clown")));

    private static Observation.Said PossibleHet(int numerator, int denominator) => new(
        Describe.PossibleHet(Snake, Sex.Female, "clown", Probability.Ratio(numerator, denominator)), StatementBasis.Told);

    private static RecordedAnimal Animal(string key, Sex sex, params Observation[] observations) => new(key, sex, observations);

    private static RecordedAnimal Het(string key, Sex sex) =>
        new(key, sex, [new Observation.Said(GenotypeBelief.Certain(Describe.Animal(Snake, Sex.Female, "clown/+")), StatementBasis.Told)]);

    private static RecordedAnimal Young(string key, string sire, string dam, params Observation[] observations) =>
        new(key, null, observations) { Sire = sire, Dam = dam };

    /// <summary>A small stock at one recessive locus, with its beliefs from every genotype of every animal written out.</summary>
    private sealed record SmallStock(IReadOnlyList<RecordedAnimal> Animals, IReadOnlyList<double[]> StartWeights)
    {
        public static Gen<SmallStock> Any { get; } = Draw.Gen(Make);

        public IEnumerable<RecordPlace> Starts => Animals.Where(a => a.Dam is null).Select(a => new RecordPlace(a.Key, 0));

        public double Carries(string key, HashSet<RecordPlace> heard)
        {
            var (all, carrying) = (0.0, 0.0);
            var states = new int[Animals.Count];
            var place = Animals.Select((a, i) => (a.Key, i)).ToDictionary(p => p.Key, p => p.i);
            for (var code = 0; code < Math.Pow(3, states.Length); code++)
            {
                var weight = 1.0;
                for (int i = 0, rest = code; i < states.Length; i++, rest /= 3)
                {
                    states[i] = rest % 3;
                }

                for (var i = 0; i < states.Length && weight > 0.0; i++)
                {
                    var animal = Animals[i];
                    weight *= animal.Dam is null ? StartWeights[i][states[i]] : Passed(states[place[animal.Sire!]], states[place[animal.Dam]], states[i]);
                    for (var o = animal.Dam is null ? 1 : 0; o < animal.Observations.Count; o++)
                    {
                        weight *= heard.Contains(new(animal.Key, o)) ? OfRecord(animal.Observations[o], states[i]) : 1.0;
                    }
                }

                all += weight;
                carrying += states[place[key]] > 0 ? weight : 0.0;
            }

            return carrying / all;
        }

        public override string ToString() => string.Join("; ", Animals.Select((a, i) =>
            $"{a.Key} = {a.Sire} x {a.Dam}, {string.Join('/', StartWeights[i])}: {string.Join(", ", a.Observations.Select(o => o is Observation.Seen s ? $"seen {s.Forms.Count}" : o.ToString()))}"));

        private static double Passed(int sire, int dam, int young)
        {
            var (a, b) = (sire / 2.0, dam / 2.0);
            return young switch { 0 => (1 - a) * (1 - b), 1 => (a * (1 - b)) + (b * (1 - a)), _ => a * b };
        }

        private static double OfRecord(Observation observation, int state) => observation switch
        {
            Observation.Seen seen => (seen.Forms.Count > 0) == (state == 2) ? 1.0 : 0.0,
            Observation.DnaTest test => state == 0
                ? (test.Copies == 0 ? test.Specificity : test.Specificity.Complement).Value
                : (test.Copies == state ? test.Sensitivity : test.Sensitivity.Complement).Value,
            _ => 1.0,
        };

        private static SmallStock Make(Draw draw)
        {
            var animals = new List<RecordedAnimal>();
            var starts = new List<double[]>();
            var truth = new List<int>();
            var count = 3 + draw.Below(4);
            for (var i = 0; i < count; i++)
            {
                var sex = i % 2 == 0 ? Sex.Male : Sex.Female;
                if (i < 3)
                {
                    // A start that leaves some carrier possible: certain het, possible het, or a visual.
                    var (weights, said) = draw.Below(3) switch
                    {
                        0 => (new[] { 0.0, 1.0, 0.0 }, GenotypeBelief.Certain(Describe.Animal(Snake, Sex.Female, "clown/+"))),
                        1 => (new[] { 0.0, 0.0, 1.0 }, GenotypeBelief.Certain(Describe.Animal(Snake, Sex.Female, "clown/clown"))),
                        _ => (new[] { 0.75, 0.25, 0.0 }, Describe.PossibleHet(Snake, Sex.Female, "clown", Probability.Ratio(1, 4))),
                    };
                    starts.Add(weights);
                    truth.Add(weights[1] == 1.0 ? 1 : weights[2] == 1.0 ? 2 : draw.Below(4) == 0 ? 1 : 0);
                    animals.Add(new($"a{i}", sex, [new Observation.Said(said, StatementBasis.Told), .. Records(draw, truth[i])]));
                }
                else
                {
                    var males = Enumerable.Range(0, i).Where(k => k % 2 == 0).ToArray();
                    var females = Enumerable.Range(0, i).Where(k => k % 2 == 1).ToArray();
                    var (sire, dam) = (draw.Of(males), draw.Of(females));
                    truth.Add(Pass(draw, truth[sire]) + Pass(draw, truth[dam]));
                    starts.Add([]);
                    animals.Add(new($"a{i}", sex, [.. Records(draw, truth[i])]) { Sire = $"a{sire}", Dam = $"a{dam}", Clutch = $"{draw.Below(2)}" });
                }

                draw.Count();
            }

            return new(animals, starts);
        }

        private static int Pass(Draw draw, int state) => state == 1 ? draw.Below(2) : state / 2;

        private static IEnumerable<Observation> Records(Draw draw, int truth)
        {
            if (draw.Chance(2, 3))
            {
                yield return truth == 2 ? Visual() : Normal();
            }

            if (draw.Chance(1, 4))
            {
                yield return new Observation.DnaTest(Clown, draw.Below(3), Probability.Ratio(9, 10), Probability.Ratio(19, 20));
            }
        }
    }
}
