using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Pedigrees.Beliefs.Contradictions;
using Clutchwright.Testing;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Contradictions;

/// <summary>Causes of contradictions in one family, against the sum over every genotype written out.</summary>
public class ClashCauseTests
{
    private const double Error = 0.005;
    private const double Frequency = 0.05;
    private static readonly Species Snake = Describe.Species(
        SexSystem.XY, Describe.Free("pastel", Describe.Incomplete("pastel")), Describe.Free("clown", Describe.Recessive("clown")));

    [Fact]
    public void Suspects_OneFamily_HasTheProbabilityWrittenOut()
    {
        var suspects = Suspects.Of(Believe(Family([0, 0, 1])), CauseRates.Default, TestContext.Current.CancellationToken);

        Assert.Equal(Math.Log(AsRecorded([0, 0, 1])), suspects.LogLikelihood, 9);
        Assert.True(suspects.IsExact);
        Assert.Equal("y2", suspects.Animals[0].Key);

        // Of its own place: what the parents can be given all but its own look.
        var others = AsRecorded([0, 0, null]);
        Assert.Equal(Math.Log10(AsRecorded([0, 0, 1]) / others), suspects.Animals[0].Log10Probability, 9);
    }

    [Fact]
    public void Of_PastelOfTwoNormals_WeighsEveryCauseAsWrittenOut()
    {
        int?[] looks = [0, 0, 0, 1];
        var beliefs = Believe(Family(looks));
        var clash = Assert.Single(beliefs.Clashes);

        var causes = ClashCauses.Of(beliefs, clash, CauseRates.Default, TestContext.Current.CancellationToken).Causes;

        var recorded = AsRecorded(looks);
        Assert.Equal(Math.Log10(UnknownSire(looks) / recorded), Find(causes, CauseKind.UnknownSire).Log10Factor, 9);
        Assert.Equal(Math.Log10(OfDamAlone(looks) * Math.Pow(2.0, 4) / recorded), Find(causes, CauseKind.Parthenogenesis).Log10Factor, 9);
        var misread = causes.Single(c => c.Kind == CauseKind.Misread && c.Animal == "y3");
        Assert.Equal(Error, misread.PriorRate, 12);
        Assert.Equal(Math.Log10(MisreadShare(looks, 3) / Error), misread.Log10Factor, 9);
        Assert.Equal(1.0, causes.Sum(c => c.Posterior.Value), 9);
        Assert.Equal(causes.OrderByDescending(c => c.Posterior.Value).Select(c => c.Kind), causes.Select(c => c.Kind));
    }

    [Fact]
    public void Of_ThreePastelsOfTwoNormals_IsAnotherSireSoonerThanThreeMisreadings()
    {
        var beliefs = Believe(Family([1, 0, 1, 1]));

        var causes = ClashCauses.Of(beliefs, beliefs.Clashes[0], CauseRates.Default, TestContext.Current.CancellationToken).Causes;

        // By hand: with one parent misread 2 x 0.0025, with an unknown male 0.95 x 0.995, both times the same otherwise: 190 times; and 190 x 0.005 is most.
        Assert.Equal(CauseKind.UnknownSire, causes[0].Kind);
        Assert.InRange(causes[0].Log10Factor, 2.2, 2.3);
    }

    [Fact]
    public void Of_MaleYoung_AreNotOfTheirDamAlone()
    {
        var animals = Family([0, 0, 1]).Select(a => a.Key == "y0" ? a with { Sex = Sex.Male } : a).ToArray();
        var beliefs = Believe(animals);

        var causes = ClashCauses.Of(beliefs, beliefs.Clashes[0], CauseRates.Default, TestContext.Current.CancellationToken).Causes;

        Assert.DoesNotContain(causes, c => c.Kind == CauseKind.Parthenogenesis);
    }

    [Fact]
    public void Of_AnimalsRenamed_GivesTheSameCauses()
    {
        var animals = Family([0, 1, 0]).Concat(Family([1, 1]).Select(a => Renamed(a, "q"))).ToArray();
        var there = Believe(animals);
        var back = Believe([.. animals.Reverse().Select(a => Renamed(a, "zz"))]);

        var first = ClashCauses.Of(there, there.Clashes[0], CauseRates.Default, TestContext.Current.CancellationToken).Causes;
        var clash = back.Clashes.First(c => c.Animals.Select(k => k[2..]).ToHashSet().SetEquals(there.Clashes[0].Animals));
        var second = ClashCauses.Of(back, clash, CauseRates.Default, TestContext.Current.CancellationToken).Causes;

        Assert.Equal(
            first.Select(c => (c.Kind, Math.Round(c.Log10Factor, 6))).Order(),
            second.Select(c => (c.Kind, Math.Round(c.Log10Factor, 6))).Order());
    }

    // Tables of more than two animals are over the budget, so that both the beliefs and the causes have to sample the family.
    [Fact]
    public void Of_SampledPart_TellsWhatCouldNotBeWeighed()
    {
        var exact = Weighed(Family([0, 0, 1]), BeliefSettings.Default);

        var sampled = Weighed(Family([0, 0, 1]), BeliefSettings.Default with { TableBudget = 10, WorkBudget = 1 });

        Assert.True(exact.IsExact && exact.NotWeighed.Count == 0);
        Assert.False(sampled.IsExact);
        Assert.Contains(sampled.NotWeighed, c => c.Kind == CauseKind.UnknownSire && c.Clutch.SequenceEqual(["y0", "y1", "y2"]) && c.PriorRate == exact.Causes.Single(e => e.Kind == CauseKind.UnknownSire).PriorRate);
        Assert.Equal(
            exact.Causes.Select(c => (c.Kind, c.Animal, c.Other)).Order(),
            sampled.Causes.Select(c => (c.Kind, c.Animal, c.Other)).Concat(sampled.NotWeighed.Select(c => (c.Kind, c.Animal, c.Other))).Order());
        Assert.All(sampled.Causes, c => Assert.True(double.IsFinite(c.Log10Factor)));
        Assert.Equal(1.0, sampled.Causes.Sum(c => c.Posterior.Value), 1e-9);
    }

    // A large family next door is sampled in every story alike, so that it says nothing about this one.
    [Fact]
    public void Of_SampledPartThatACauseDoesNotTouch_IsWeighedAsWithoutIt()
    {
        var alone = Weighed(Family([0, 0, 1]), BeliefSettings.Default);
        RecordedAnimal[] beside =
        [
            .. Family([1, 0, 0, 1, 0, 0, 1]).Where(a => a.Dam is null).Select(a => Renamed(a, "q") with { Observations = [Look(1)] }),
            .. Family([1, 0, 0, 1, 0, 0, 1]).Where(a => a.Dam is not null).Select(a => Renamed(a, "q")),
            .. Enumerable.Range(0, 6).Select(i => new RecordedAnimal($"z{i}", Sex.Female, [Look(i % 2)]) { Sire = "qs", Dam = $"qy{i}", Clutch = $"z{i}" }),
        ];

        var both = Weighed([.. Family([0, 0, 1]), .. beside], BeliefSettings.Default with { TableBudget = 120, WorkBudget = 1 });

        Assert.False(both.IsExact);
        var (one, other) = (Find(alone.Causes, CauseKind.UnknownSire), Find(both.Causes, CauseKind.UnknownSire));
        Assert.Equal(one.Log10Factor, other.Log10Factor, 1e-9);
        Assert.Contains(both.NotWeighed, c => c.Kind == CauseKind.OtherSire && c.Other == "qs");
    }

    private static ClashCauses Weighed(IReadOnlyList<RecordedAnimal> animals, BeliefSettings settings)
    {
        var beliefs = PedigreeBeliefs.Of(Snake, animals, settings, cancel: TestContext.Current.CancellationToken);
        return ClashCauses.Of(beliefs, beliefs.Clashes.First(c => c.Animals.Contains("y2")), CauseRates.Default, TestContext.Current.CancellationToken);
    }

    private static RecordedAnimal Renamed(RecordedAnimal a, string by) => a with
    {
        Key = by + a.Key,
        Sire = a.Sire is null ? null : by + a.Sire,
        Dam = a.Dam is null ? null : by + a.Dam,
    };

    private static ClashCause Find(IReadOnlyList<ClashCause> causes, CauseKind kind) => causes.Single(c => c.Kind == kind);

    private static PedigreeBeliefs Believe(IReadOnlyList<RecordedAnimal> animals) =>
        PedigreeBeliefs.Of(Snake, animals, cancel: TestContext.Current.CancellationToken);

    // Two founders that look normal, with daughters that show so many copies of Pastel.
    private static RecordedAnimal[] Family(IReadOnlyList<int?> looks) =>
    [
        new("s", Sex.Male, [Look(0)]),
        new("d", Sex.Female, [Look(0)]),
        .. looks.Select((l, i) => new RecordedAnimal($"y{i}", Sex.Female, l is { } copies ? [Look(copies)] : []) { Sire = "s", Dam = "d", Clutch = "1" }),
    ];

    private static Observation.Seen Look(int copies)
    {
        var locus = Describe.Mutant(Snake, "pastel").Locus;
        return copies == 0
            ? new([], GenotypeBelief.Wild(Snake, Sex.Female))
            : new([locus.ExpressionOf(copies - 1, 1)], GenotypeBelief.Certain(Genotype.Wild(Snake, Sex.Female).With(locus, copies - 1, 1)));
    }

    private static double Founder(int state) => state switch
    {
        0 => (1 - Frequency) * (1 - Frequency),
        1 => 2 * Frequency * (1 - Frequency),
        _ => Frequency * Frequency,
    };

    private static double Young(int sire, int dam, int young)
    {
        var (a, b) = (sire / 2.0, dam / 2.0);
        return young switch { 0 => (1 - a) * (1 - b), 1 => (a * (1 - b)) + (b * (1 - a)), _ => a * b };
    }

    // Three looks can be read: one right, two wrong.
    private static double Read(int? look, int state) => look is null ? 1.0 : look == state ? 1 - Error : Error / 2;

    private static double AsRecorded(int?[] looks, int? wrong = null) => Sum(looks, Read, wrong);

    private static double UnknownSire(int?[] looks) => Sum(looks, (look, state) => Read(look, state), null, sireLook: (_, _) => 1.0) * SireAlone();

    private static double MisreadShare(int?[] looks, int which) => AsRecorded(looks, which) / AsRecorded(looks);

    // The sire recorded then stands for himself: his look is all there is of him, and nothing speaks of Pastel in him.
    private static double SireAlone() => Founder(0) * (1 - Error);

    private static double Sum(int?[] looks, Func<int?, int, double> read, int? wrong, Func<int?, int, double>? sireLook = null)
    {
        var total = 0.0;
        for (var s = 0; s < 3; s++)
        {
            for (var d = 0; d < 3; d++)
            {
                var product = Founder(s) * (sireLook ?? read)(0, s) * Founder(d) * read(0, d);
                for (var i = 0; i < looks.Length; i++)
                {
                    product *= Enumerable.Range(0, 3).Sum(y => Young(s, d, y) * (wrong == i && looks[i] == y ? 0.0 : read(looks[i], y)));
                }

                total += product;
            }
        }

        return total;
    }

    private static double OfDamAlone(int?[] looks)
    {
        var total = 0.0;
        for (var d = 0; d < 3; d++)
        {
            var product = Founder(d) * Read(0, d);
            foreach (var look in looks)
            {
                // Two copies of either haplotype, or with 1 in 20 both as the dam has them.
                product *= d == 1 ? (0.95 * 0.5 * (Read(look, 0) + Read(look, 2))) + (0.05 * Read(look, 1)) : Read(look, d);
            }

            total += product;
        }

        return total * SireAlone();
    }
}
