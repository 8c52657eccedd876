using System.Text;
using Clutchwright.Desk.Kin;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Desk.Words;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Desk.Tests.Kin;

public sealed class AskKinTests
{
    private const string Stock = """
        id,sex,sire,dam,hatched,status
        GS,m,,,2010,Died
        GD,f,,,2010,Sold
        S,m,GS,GD,2014,Kept
        D,f,GS,GD,2014,Kept
        X,f,,,2015,Kept
        C1,m,S,X,2018,Kept
        C2,f,S|C1,D,2020,Kept
        C3,,S|C1,D,2020,Kept
        C4,f,S|C1,D,2021,Kept
        """;

    /// <summary>Full sibs 1/4, parent and young 1/4: Wright S (1922), Am Nat 56: 330-338 [computed]. One clutch by S (3/8) or by C1 (5/16): the mean
    /// of the two; two clutches: 1/4 (1/2 + 2 (1/4 + 1/8) / 2 + (1/2 + 1/2 + 2/4) / 4).</summary>
    [Theory]
    [InlineData("S", "D", 0.25, "full sister", true)]
    [InlineData("GS", "S", 0.25, "son", false)]
    [InlineData("S", "GD", 0.25, "dam", true)]
    [InlineData("C1", "D", 0.125, "aunt", true)]
    [InlineData("D", "C1", 0.125, "nephew", true)]
    [InlineData("X", "D", 0.0, null, false)]
    [InlineData("C1", "GS", 0.125, "grandsire", false)]
    [InlineData("C2", "C3", 11.0 / 32, "full sibling", true)]
    [InlineData("C2", "C4", 5.0 / 16, "full or half sister", false)]
    public async Task PairAsync_TwoOfTheStock_GivesKinshipAndRelation(string first, string second, double kinship, string? relation, bool canBePaired)
    {
        using var desk = await TestDesk.WithAsync(Stock);

        var pair = (await desk.Get<ShowKinTable>().PairAsync(first, second, 10, TestDesk.Cancel)).Value!;

        Assert.Equal((kinship, relation, canBePaired), (pair.Kinship, pair.Relation, pair.CanBePaired));
        Assert.Equal(kinship, pair.Descent.Routes.Sum(r => r.Contribution) + pair.Descent.MoreContribution, 1e-12);
    }

    private const string Founders = """
        id,sex,sire,dam
        A,m,,
        B,f,,
        C,m,,
        Y,f,A:0.7|C:0.3,B
        """;

    /// <summary>A is B's full sib (1/4) and C no kin: F of the young is 7/10 x 1/4; A's own F is 1/8 [computed].</summary>
    [Fact]
    public async Task RunAsync_FoundersKinshipAndChancesOfSires_AreReckonedIn()
    {
        var kin = (await AskAsync(Founders, "a,b,kinship\nA,b,1/4\nA,A,9/16\n", null)).Value!;

        Assert.Equal(["1/8", "0", "0", "7/40"], kin.Animals.Select(a => a.Exact.ToString()));
        Assert.Equal(0.175, kin.Animals[3].Inbreeding, 1e-12);
        Assert.Contains(kin.Notes, n => n.Contains("with its chance from the file", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("a,b,kinship\nA,B,x\n", "k.csv, line 2, column kinship", "'x' is no kinship")]
    [InlineData("a,b,kinship\nA,Q,1/4\n", "k.csv, line 2, column b", "There is no animal 'Q'")]
    [InlineData("a,b,kinship\n\nA,Y,1/4\n", "k.csv, line 3, column b", "Y is no founder")]
    [InlineData("a,b,kinship\nA,B,1/4\nB,a,1/8\n", "k.csv, line 3", "stand in line 2 already")]
    [InlineData("a,b,kinship\nA,A,1/4\n", "k.csv, line 2, column kinship", "at least 1/2")]
    [InlineData("a,b,kinship\nA,,1/4\n", "k.csv, line 2, column b", "A founder is missing")]
    [InlineData("a,b\nA,B\n", "k.csv, line 1", "a,b,kinship")]
    [InlineData("a,b,kinship\nA,B\n", "k.csv, line 2", "2 cells")]
    [InlineData("", "k.csv", "a, b, kinship")]
    [InlineData("a,b,kinship\nA,B,1/2\nB,C,1/2\n", "k.csv", "contradict each other")]
    public async Task RunAsync_FoundersKinshipThatCannotBe_SaysWhere(string kinship, string where, string text)
    {
        var problem = Assert.Single((await AskAsync(Founders, kinship, null)).Problems);

        Assert.Equal(where, problem.Where);
        Assert.Contains(text, problem.Text, StringComparison.Ordinal);
    }

    /// <summary>At r = 0 a sire gives his X to every daughter: two half sisters by him share it wholly, 1/2 x 1/2 + ... = 1/4 of draws from two X
    /// each (Grossman and Eisen 1989); at r = 1/2 it is the autosomal 1/8.</summary>
    [Theory]
    [InlineData("0", 0.25)]
    [InlineData("1/2", 0.125)]
    [InlineData("50%", 0.125)]
    public async Task RunAsync_SexLinked_IsAsByHand(string r, double kinship)
    {
        var answer = await new AskKin(new AnimalSource(() => throw new InvalidOperationException(), Shipped.Catalogue)).RunAsync(
            new()
            {
                File = File("h.csv", "id,sex,sire,dam\nS,m,,\nD,f,,\nE,f,,\nX,f,S,D\nY,f,S,E\n"),
                Pair = ("X", "Y"),
                SexLinked = r,
            },
            TestDesk.Cancel);

        Assert.Equal((kinship, kinship, "X"), (answer.Value!.SexLinked!.Kinship, answer.Value.SexLinked.SharedKinship, answer.Value.SexLinked.Chromosome));
    }

    [Theory]
    [InlineData("Banana", null)]
    [InlineData("0.6", "0 to 0.5")]
    [InlineData("Clown", "does not ride with sex")]
    [InlineData("Qwerty", "no gene")]
    public async Task RunAsync_SexLinkedAt_TakesAFractionOrASexLinkedGene(string asked, string? problem)
    {
        var answer = await AskAsync(Founders, null, asked);

        Assert.Equal(problem is null, answer.Value is not null);
        Assert.Contains(problem ?? string.Empty, answer.Problems.Count > 0 ? answer.Problems[0].Text : string.Empty, StringComparison.Ordinal);
    }

    private static NamedFile File(string name, string csv) => new(name, Encoding.UTF8.GetBytes(csv));

    private static Task<Answer<KinAnswer>> AskAsync(string csv, string? kinship, string? sexLinked) =>
        new AskKin(new AnimalSource(() => throw new InvalidOperationException("The stock stays shut."), Shipped.Catalogue)).RunAsync(
            new() { File = File("herd.csv", csv), FounderKinship = kinship is null ? null : File("k.csv", kinship), SexLinked = sexLinked },
            TestDesk.Cancel);

    [Fact]
    public async Task RunAsync_KinTable_HasTheRoomsMalesAndFemales()
    {
        using var desk = await TestDesk.WithAsync(Stock);

        var table = await desk.Get<ShowKinTable>().RunAsync(TestDesk.Cancel);

        Assert.Equal(["C1", "S"], table.Males.Select(m => m.Animal.Tag));
        Assert.Equal(["C2", "C4", "D", "X"], table.Females.Select(f => f.Animal.Tag));
        Assert.Equal(1, table.Unsexed);
        Assert.Equal(0.25, table.Kinships[1][2]);
        Assert.Equal(0.0, table.Kinships[1][3]);
        Assert.Equal(0.25, table.Kinships[0][3]);
    }

    [Fact]
    public async Task RunAsync_Relatives_AreListedClosestFirst()
    {
        using var desk = await TestDesk.WithAsync(Stock);

        var answer = (await desk.Get<ShowRelatives>().RunAsync("s", 10, TestDesk.Cancel)).Value!;

        Assert.Equal("S", answer.Animal.Animal.Tag);
        Assert.Equal(["C1", "GS", "GD", "D"], answer.Relatives.Where(r => r.Kinship == 0.25).Select(r => r.Animal.Tag).OrderBy(t => t.Length == 1).ThenBy(t => t == "GD").ThenBy(t => t));
        Assert.DoesNotContain(answer.Relatives, r => r.Animal.Tag is "X" or "S");
        Assert.Empty(answer.Descent!.Routes);
        Assert.Equal(answer.Relatives.OrderByDescending(r => r.Kinship), answer.Relatives);
    }

    [Fact]
    public async Task RunAsync_UnknownTag_IsAskedWrongly()
    {
        using var desk = await TestDesk.WithAsync(Stock);

        var problem = Assert.Single((await desk.Get<ShowRelatives>().RunAsync("GS2", 10, TestDesk.Cancel)).Problems);

        Assert.Equal(["GS"], problem.DidYouMean!.Take(1));
    }

    [Fact]
    public async Task RunAsync_Founders_CountTheAnimalsInTheRoom()
    {
        using var desk = await TestDesk.WithAsync(Stock);

        var founders = (await desk.Get<AskKin>().RunAsync(new KinQuestion { WithFounders = true }, TestDesk.Cancel)).Value!.Founders!;

        Assert.Equal(7, founders.GroupCount);
        Assert.Equal(["GD", "GS", "X"], founders.Founders.Select(f => f.Animal.Tag).Order(StringComparer.Ordinal));
        Assert.Equal(1.0, founders.Founders.Sum(f => f.Share), 1e-12);
        Assert.InRange(founders.EffectiveFounders, 1.0, 3.0);
        Assert.NotNull(founders.MeanKinship);
    }

    /// <summary>The figures that several other programs gave for this generated pedigree.</summary>
    [Fact]
    public async Task RunAsync_KennelOfTenThousandFromAFile_GivesThePublishedFigures()
    {
        using var desk = new TestDesk();
        var file = new Desk.Words.NamedFile("kennel.csv", Encoding.UTF8.GetBytes(Kennels.Kennel(10_000).ToPedigreeFile()));

        var answer = (await desk.Get<AskKin>().RunAsync(new KinQuestion { File = file, Pair = ("9999", "10000"), WithFounders = true }, TestDesk.Cancel)).Value!;

        Assert.Equal(0.0529329989, answer.Animals.Average(a => a.Inbreeding), 10);
        Assert.Equal(0.104038432093, answer.Animals[^1].Inbreeding, 12);
    }
}
