using System.Text;
using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Tests.Carry;

public sealed class ListCarryTests
{
    private const string Family = """
        id,sex,sire,dam,hatched,seen,told
        S,m,,,2019,normal,het Clown
        D,f,,,2019,normal,het Clown
        Y,f,S,D,2022,normal,66% het Clown
        """;

    // Mendel: of normal-looking young of het and het two in three are het, docs/model/beliefs.md.
    [Fact]
    public async Task RunAsync_File_GivesExactChancesWithoutOpeningTheStock()
    {
        var answer = await AskAsync(Family);

        Assert.Equal([("clown/+", Probability.Ratio(2, 3)), ("+/+", Probability.Ratio(1, 3))], Of(answer, "Y", "clown-group"));
        Assert.Equal(["66% het Clown"], answer.Animals[2].NotCounted);
        Assert.True(answer.IsExact);
        Assert.Equal(0.0, answer.StandardError);

        // Both parents are as told; of their young 3/4 look normal.
        Assert.Equal(Math.Log(0.75), answer.LogLikelihood, 12);
    }

    /// <summary>A normal young weighs the Clown-het sire (7/10) by 3/4: 21/33. The unseen clutchmate is by the same: 3/4 x 21/33 + 1/2 x 12/33 het or Clown.</summary>
    [Fact]
    public async Task RunAsync_PossibleSiresWithChances_AreWeighed()
    {
        var answer = await AskAsync("""
            id,sex,sire,dam,hatched,seen,told
            A,m,,,2019,normal,het Clown
            B,m,,,2019,normal,
            D,f,,,2019,normal,het Clown
            Y,f,A:0.7|B:0.3,D,2022,normal,
            Z,f,B:30%|A:70%,D,2022,,
            """);

        var wild = Of(answer, "Z", "clown-group").Single(g => g.Item1 == "+/+").Item2;
        Assert.Equal((0.25 * 0.7 * 0.75 + 0.5 * 0.3) / (0.7 * 0.75 + 0.3), wild.Value, 1e-12);
    }

    [Fact]
    public async Task RunAsync_Stock_GivesTheSameAsItsFile()
    {
        using var desk = await TestDesk.WithAsync(Family);

        var stock = (await desk.Get<ListCarry>().RunAsync(new() { Animals = ["y"] }, TestDesk.Cancel)).Value!;
        var file = await AskAsync(Family);

        Assert.Equal("Y", Assert.Single(stock.Animals).Id);
        Assert.Equal(3, stock.Total);
        Assert.Equal(Of(file, "Y", "clown-group"), Of(stock, "Y", "clown-group"));
        Assert.Equal(file.LogLikelihood, stock.LogLikelihood, 12);
    }

    // A possible het told 2/3, bred to a Clown with five normal young: (2/3)(1/2)^5 against 1/3, docs/model/beliefs.md.
    [Fact]
    public async Task RunAsync_RowWithACount_WeighsAsSoManyYoung()
    {
        const string Parents = "id,sex,sire,dam,seen,told,count\nS,m,,,,66% het Clown,\nD,f,,,Clown,,\n";

        var counted = await AskAsync(Parents + "K,,S,D,normal,,5\n");
        var single = await AskAsync(Parents + string.Concat(Enumerable.Range(1, 5).Select(i => $"K{i},,S,D,normal,,\n")));

        Assert.Equal([("+/+", Probability.Ratio(16, 17)), ("clown/+", Probability.Ratio(1, 17))], Of(counted, "S", "clown-group"));
        Assert.Equal(Of(counted, "S", "clown-group"), Of(single, "S", "clown-group"));
        Assert.Equal(5, counted.Animals[2].Count);
        Assert.Equal(single.LogLikelihood, counted.LogLikelihood, 10);
    }

    [Fact]
    public async Task RunAsync_LociInPlay_AreListedForEveryAnimal()
    {
        var answer = await AskAsync("id,sex,told,ruled_out\nA,m,male maker Banana,\nB,f,,Pied\nC,m,het Clown,\n");

        Assert.All(answer.Animals, a => Assert.Equal(["piebald", "clown-group", "banana"], a.Loci.Select(l => l.Id)));
        Assert.Equal([("X +/Y Banana", Probability.Certain)], Of(answer, "A", "banana"));
        Assert.Equal([("+/+", Probability.Certain)], Of(answer, "B", "banana"));
        Assert.Equal([("+/+", Probability.Certain)], Of(answer, "C", "banana"));
        Assert.Equal([false, true, false], answer.Animals[2].Loci.Select(l => l.HasMore));
    }

    // Hardy and Weinberg: of normal-looking animals 2pq / (p² + 2pq) = 2q / (1 + q) are het; with q = 1/10 that is 2/11.
    [Fact]
    public async Task RunAsync_Frequency_IsTheStartOfFounders()
    {
        var answer = await AskAsync("id,seen\nA,normal\n", q => q with { Frequencies = new Dictionary<string, double> { ["clown"] = 0.1 } });

        var (genotype, chance) = Of(answer, "A", "clown-group")[1];
        Assert.Equal("clown/+", genotype);
        Assert.Equal(2.0 / 11.0, chance.Value, 12);
        Assert.Null(chance.Exact);
    }

    // The eye takes a het for a Clown with chance e where the only other reading is right: e against 1 - e for a Clown, each told as likely.
    [Fact]
    public async Task RunAsync_Misreading_LeavesRoomForOtherGenotypes()
    {
        const string File = "id,sire,dam,seen,told\nS,,,,het Clown\nD,,,,het Clown\nY,S,D,normal,\n";

        var sure = await AskAsync(File);
        var doubted = await AskAsync(File, q => q with { Misreading = 0.1 });

        Assert.DoesNotContain(Of(sure, "Y", "clown-group"), g => g.Genotype == "clown/clown");

        // Of normal-looking young: 3/4 · 0.9 are normal, 1/4 · 0.1 are Clowns read wrongly.
        Assert.Equal(0.025 / 0.7, Of(doubted, "Y", "clown-group").Single(g => g.Genotype == "clown/clown").Chance.Value, 12);
    }

    [Fact]
    public async Task RunAsync_RecordsThatCannotAllBeTrue_AreTold()
    {
        var answer = await AskAsync("id,sex,sire,dam,seen,ruled_out\nS,m,,,Clown,\nD,f,,,normal,Clown\nY,f,S,D,Clown,\n");

        var contradiction = Assert.Single(answer.Contradictions);
        Assert.Contains("D", contradiction.Animals);
        Assert.NotEmpty(contradiction.Causes);
        Assert.Contains(contradiction.Records, r => r.StartsWith("Y: ", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Y2", null, null, null, "animal: test.csv has no 'Y2'. [Y]")]
    [InlineData(null, 0.6, null, null, "misreading: 0.6 is no chance of a misreading. Write a number from 0 to 0.5. []")]
    [InlineData(null, null, "Clwn", 0.1, "frequency: 'Clwn' is no gene of the catalogue. [Clown]")]
    [InlineData(null, null, "Clown", 1.5, "frequency: 1.5 is no frequency of Clown. Write a number from 0 to 1. []")]
    public async Task RunAsync_AskedWrongly_SaysWhatWouldBeRight(string? animal, double? misreading, string? allele, double? frequency, string problem)
    {
        var question = new CarryQuestion
        {
            File = FileOf(Family),
            Animals = animal is null ? [] : [animal],
            Misreading = misreading,
            Frequencies = allele is null ? new Dictionary<string, double>() : new Dictionary<string, double> { [allele] = frequency!.Value },
        };

        var answer = await Question().RunAsync(question, TestDesk.Cancel);

        var found = Assert.Single(answer.Problems);
        Assert.Equal(problem, $"{found.Where}: {found.Text} [{string.Join(' ', (found.DidYouMean ?? []).Take(1))}]");
    }

    [Fact]
    public async Task RunAsync_FrequenciesOfOneLocusAboveOne_AreRefused()
    {
        var answer = await Question().RunAsync(
            new() { File = FileOf(Family), Frequencies = new Dictionary<string, double> { ["Mojave"] = 0.6, ["Lesser"] = 0.6 } }, TestDesk.Cancel);

        Assert.Contains("sum to 1.2", Assert.Single(answer.Problems).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("id,count\nA,0\n", "test.csv, line 2, column count")]
    [InlineData("id,count\nA,four\n", "test.csv, line 2, column count")]
    [InlineData("id,sire,count\nA,,3\nB,A,\n", "test.csv, line 3, column sire")]
    public async Task RunAsync_CountThatCannotBe_IsToldByItsPlace(string file, string place)
    {
        var answer = await Question().RunAsync(new() { File = FileOf(file) }, TestDesk.Cancel);

        Assert.Equal(place, Assert.Single(answer.Problems).Where);
    }

    private static async Task<CarryAnswer> AskAsync(string file, Func<CarryQuestion, CarryQuestion>? with = null)
    {
        var question = new CarryQuestion { File = FileOf(file) };
        var answer = await Question().RunAsync(with?.Invoke(question) ?? question, TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }

    private static ListCarry Question() => new(Shipped.Catalogue, () => throw new InvalidOperationException("The stock stays shut."));

    private static NamedFile FileOf(string text) => new("test.csv", Encoding.UTF8.GetBytes(text));

    private static (string Genotype, Probability Chance)[] Of(CarryAnswer answer, string animal, string locus) =>
        [.. answer.Animals.Single(a => a.Id == animal).Loci.Single(l => l.Id == locus).Genotypes.Select(g => (g.Notation, g.Chance))];
}
