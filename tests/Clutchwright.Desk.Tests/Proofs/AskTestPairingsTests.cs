using Clutchwright.Desk.Proofs;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Proofs;

public class AskTestPairingsTests
{
    private const int Eggs = 4;

    /// <summary>M1 and F1 are brother and sister of a sire that is het with 1/2 and a dam that is het; F2 is their dam, F3 is no kin.</summary>
    private const string Room = """
        id,sex,sire,dam,hatched,seen,told
        S,m,,,2015,normal,50% het Clown
        F2,f,,,2015,normal,het Clown
        M1,m,S,F2,2019,normal,
        F1,f,S,F2,2019,normal,
        F3,f,,,2019,normal,50% het Clown
        """;

    [Fact]
    public async Task RunAsync_MatesThatAreKin_EqualsWritingOutEveryParentYoungAndEgg()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var answer = await AskAsync(desk, "M1", null);

        // By hand: a normal young of two hets is het with 2/3, of one het with 1/2; two normal young make the sire het with (9/16) / (9/16 + 1) = 9/25.
        Assert.Equal((9.0 / 25.0 * 2.0 / 3.0) + (16.0 / 25.0 / 2.0), answer.Prior.Value, 1e-12);
        Assert.Equal(["F1", "F2", "F3"], answer.Pairings.Select(p => p.Name).Order());
        foreach (var pairing in answer.Pairings)
        {
            var (yes, drop) = WriteOut(pairing.Name);
            Assert.Equal(yes, pairing.Worth.ChanceOfYes, 1e-12);
            Assert.Equal(drop, pairing.Worth.EntropyDrop, 1e-12);
        }
    }

    [Fact]
    public async Task RunAsync_SisterOfTheAnimal_IsSaidToCarryMoreIfItDoes()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var words = (await AskAsync(desk, "M1", null)).Pairings.ToDictionary(p => p.Name, p => p.Words);

        // P(both het) = 9/25 x 4/9 + 16/25 x 1/4 = 8/25, P(M1 het) = 14/25: given that, 4/7.
        Assert.Equal("56% het Clown; if the animal is het, 57% het Clown", Plain(words["F1"]));
        Assert.Equal("het Clown", words["F2"]);
        Assert.Equal("50% het Clown", Plain(words["F3"]));

        static string Plain(string text) => System.Text.RegularExpressions.Regex.Replace(text, @"[.,]\d+(?=%)", string.Empty);
    }

    [Fact]
    public async Task RunAsync_PriorThatIsGiven_LeavesWhatTheMateIsIfTheAnimalIsHet()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var sister = (await AskAsync(desk, "M1", "50%")).Pairings.Single(p => p.Name == "F1");

        // Given that he is het she is with 4/7: at least one visual of four eggs.
        Assert.Equal(0.5 * 4.0 / 7.0 * (1.0 - Math.Pow(0.75, Eggs)), sister.Worth.ChanceOfYes, 1e-12);
    }

    private static async Task<TestPairingsAnswer> AskAsync(TestDesk desk, string animal, string? prior)
    {
        var answer = await desk.Get<AskTestPairings>().RunAsync(
            new() { Animal = animal, Gene = "Clown", Prior = prior, Sure = "95%", Clutch = new(Eggs, null, null) }, TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }

    /// <summary>The definition: every genotype of the sire, the two young and the stranger, and every number of visual eggs.</summary>
    private static (double Yes, double Drop) WriteOut(string mate)
    {
        var joint = new Dictionary<(bool Het, int Visual), double>();
        var total = 0.0;
        for (var code = 0; code < 16; code++)
        {
            var (sire, he, she, stranger) = ((code & 1) > 0, (code & 2) > 0, (code & 4) > 0, (code & 8) > 0);
            var weight = 0.25 * Young(sire, he) * Young(sire, she);
            total += weight;
            var mateHet = mate switch { "F1" => she, "F2" => true, _ => stranger };
            var visual = he && mateHet ? 0.25 : 0.0;
            for (var n = 0; n <= Eggs; n++)
            {
                joint[(he, n)] = joint.GetValueOrDefault((he, n)) + (weight * Choose(n) * Math.Pow(visual, n) * Math.Pow(1.0 - visual, Eggs - n));
            }
        }

        var prior = joint.Where(j => j.Key.Het).Sum(j => j.Value) / total;
        var (yes, expected) = (0.0, 0.0);
        for (var n = 0; n <= Eggs; n++)
        {
            var (so, not) = (joint[(true, n)] / total, joint[(false, n)] / total);
            yes += so >= 0.95 * (so + not) ? so + not : 0.0;
            expected += (so + not) * Entropy(so / (so + not));
        }

        return (yes, Entropy(prior) - expected);

        // A normal young of the dam, who is het: of a sire who is het too 1/4 and 2/4, of one who is not 1/2 and 1/2.
        static double Young(bool sire, bool het) => (sire, het) switch { (true, true) => 0.5, (true, false) => 0.25, _ => 0.5 };

        static double Choose(int n) => n switch { 0 or Eggs => 1.0, 1 or 3 => 4.0, _ => 6.0 };

        static double Entropy(double p) => p is 0.0 or 1.0 ? 0.0 : -((p * Math.Log2(p)) + ((1.0 - p) * Math.Log2(1.0 - p)));
    }
}
