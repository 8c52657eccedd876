using System.Text;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Sheets;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using CsCheck;

namespace Clutchwright.Desk.Tests.Sheets;

public sealed class LabelTextTests
{
    private const string Parents = "H1,m,,,2020,normal,het Clown\nH2,f,,,2020,normal,het Clown\nV,f,,,2020,Clown,\nN,f,,,2020,normal,\n";

    // het x het, het x normal, and what comes of them: the trade's bookkeeping of possible hets (common practice, no source; 2/3, 1/2, 1/3, 1/4 by Mendel).
    [Theory]
    [InlineData("A,f,H1,H2,2023,normal,\n", "A", "Normal, 66% het Clown (2 in 3, computed from what was told)")]
    [InlineData("A,f,H1,N,2023,normal,\n", "A", "Normal, 50% het Clown (1 in 2, computed from what was told)")]
    [InlineData("A,m,H1,H2,2023,normal,\nB,f,A,N,2025,normal,\n", "B", "Normal, 33% het Clown (1 in 3, computed from what was told)")]
    [InlineData("A,m,H1,N,2023,normal,\nB,f,A,N,2025,normal,\n", "B", "Normal, 25% het Clown (1 in 4, computed from what was told)")]
    [InlineData("A,m,H1,N,2023,normal,\nB,m,A,N,2025,normal,\nC,m,B,N,2026,normal,\n", "C", "Normal, 12% het Clown (1 in 8, computed from what was told)")]
    public async Task Of_PossibleHets_TheTradesFigureWithTheExactChanceBeside(string animals, string tag, string words) =>
        Assert.Equal(words, (await WordsAsync(Parents + animals, tag)).Text);

    [Fact]
    public async Task Of_YoungOfAVisual_IsHetForCertainByDescent()
    {
        var words = await WordsAsync(Parents + "A,f,H1,V,2023,normal,\n", "A");

        Assert.Equal("Normal, 100% het Clown (by descent)", words.Text);
        Assert.Equal(LabelBasis.Proven, words.Parts[1].Basis);
    }

    [Fact]
    public async Task Of_HetOnTheBreedersWord_IsNoHundredPercent()
    {
        var words = await WordsAsync(Parents, "H1");

        Assert.Equal("Normal, het Clown (told by the breeder or seller)", words.Text);
        Assert.Equal((LabelBasis.Told, null), (words.Parts[1].Basis, words.Parts[1].Figure));
    }

    [Fact]
    public async Task Of_HetOnTheBreedersWordThatBredAVisual_IsProvenByItsYoung() =>
        Assert.Equal("Normal, 100% het Clown (proven by its young)", (await WordsAsync(Parents + "A,f,H1,V,2023,Clown,\n", "H1")).Text);

    // Three normal young with a visual: (2/3)(1/2)^3 / ((2/3)(1/2)^3 + 1/3) = 1/5.
    [Fact]
    public async Task Of_PossibleHetWithNormalYoung_SaysWhatIsLeft() => Assert.Equal(
        "Normal, 20% het Clown (1 in 5, computed from what was told)",
        (await WordsAsync(Parents + "A,m,H1,H2,2022,normal,\nY1,f,A,V,2024,normal,\nY2,f,A,V,2024,normal,\nY3,f,A,V,2024,normal,\n", "A")).Text);

    [Fact]
    public async Task Of_ToldFigureBetweenTheTrades_IsRoundedDownWithTheWordBeside() =>
        Assert.Equal("Normal, 66% het Clown (9 in 10, told by the breeder or seller)", (await WordsAsync("A,f,,,2023,normal,90% het Clown\n", "A")).Text);

    [Fact]
    public async Task Of_LookNobodyLookedAt_SaysSo()
    {
        var text = (await WordsAsync("S,m,,,2020,Clown,\nD,f,,,2020,Clown,\nA,f,S,D,2023,,\nB,f,,,2023,,Pastel\n", "A")).Text;

        Assert.Equal("Clown (by descent, not looked at)", text);
        Assert.Equal("Pastel (told by the breeder or seller)", (await WordsAsync("B,f,,,2023,,Pastel\n", "B")).Text);
    }

    [Fact]
    public async Task Of_YoungNotLookedAt_ClaimsNoPairForCertain() =>
        Assert.Equal(
            "100% het Clown (by descent), 50% possible visual Clown (1 in 2, computed)",
            (await WordsAsync("S,m,,,2020,Clown,\nD,f,S2,S3,2020,normal,\nS2,m,,,2018,Clown,\nS3,f,,,2018,normal,\nA,f,S,D,2023,,\n", "A")).Text);

    // A son has his Y, and what lies on it, of his sire.
    [Fact]
    public async Task Of_MakerByDescent_IsApartFromTheLook()
    {
        var words = await WordsAsync("S,m,,,2018,Banana,male maker Banana\nN,f,,,2018,normal,\nA,m,S,N,2020,Banana,\nB,f,S,N,2020,normal,\n", "A");

        Assert.Equal(["Banana"], words.Seen.Select(p => p.Text));
        var maker = Assert.Single(words.Carried);
        Assert.EndsWith("male maker Banana", maker.Text, StringComparison.Ordinal);
        Assert.False(maker.IsSeen);
    }

    [Fact]
    public async Task Of_StatementWithNameAndDay_SaysWhoAndWhen()
    {
        using var desk = await TestDesk.WithAsync("id,sex,hatched,seen\nA,f,2020,normal\n");
        Assert.Empty((await desk.Get<Desk.Animals.AddStatement>().RunAsync("A", new("Told", "het Clown", "a breeder", "2021-03-04"), TestDesk.Who, TestDesk.Cancel)).Problems);
        Assert.Empty((await desk.Get<Desk.Animals.AddStatement>().RunAsync("A", new("ProvenByBreeding", "het Pied", "a keeper", "2024"), TestDesk.Who, TestDesk.Cancel)).Problems);

        var words = await desk.Get<PrintLabels>().RunAsync(new(["A"]), TestDesk.Cancel);

        Assert.Equal("Normal, 100% het Piebald (proven by breeding by a keeper, 2024), het Clown (told by a breeder, 2021-03-04)", Assert.Single(words.Value!.Labels).Words.Text);
    }

    [Fact]
    public async Task Of_TheDemo_NoLabelClaimsMoreThanIsBelieved()
    {
        using var desk = await TestDesk.WithDemoAsync();

        Check(await desk.StateAsync());
    }

    [Fact]
    public void Of_RandomStocks_NoLabelClaimsMoreThanIsBelieved() =>
        Gen.Select(Animal(0, 4).Array[4], Animal(4, 12).Array[8]).Sample(
            (founders, young) => Check(State(string.Concat(founders.Concat(young).Select((a, i) => a(i))))),
            iter: 120);

    // One line of a pedigree file: parents among those before it, a look and a word that need not fit each other.
    private static Gen<Func<int, string>> Animal(int from, int to) => Gen.Select(
        Gen.Int[0, 99], Gen.Int[0, 99],
        Of("", "normal", "normal", "Clown", "Pied", "Pastel", "Super Pastel", "Pastel Clown", "Mojave", "Lesser", "Banana"),
        Of("", "", "", "het Clown", "66% het Clown", "50% het Pied", "90% het Clown", "Pastel", "33% het Clown 25% het Pied", "poss het Pied"),
        (a, b, seen, told) => (Func<int, string>)(i =>
        {
            var (sire, dam) = (2 * (a % Math.Max(1, i / 2)), (2 * (b % Math.Max(1, i / 2))) + 1);
            var known = from > 0 && dam < i;
            return $"X{i},{(i % 2 == 0 ? "m" : "f")},{(known ? $"X{sire}" : "")},{(known && b % 5 > 0 ? $"X{dam}" : "")},{2000 + i},{seen},{told}\n";
        }));

    private static Gen<string> Of(params string[] all) => Gen.Int[0, all.Length - 1].Select(i => all[i]);

    private static void Check(StockState state)
    {
        var proven = new ProvenBeliefs().Of(state, CancellationToken.None);
        var text = new LabelText(Shipped.Catalogue, state, proven, new(2026, 5, 1));
        foreach (var animal in state.Animals)
        {
            foreach (var part in text.Of(animal).Parts)
            {
                var allele = part.GeneId is { } id ? Shipped.Species.FindAllele(id) : null;
                if (part.Figure is { } figure)
                {
                    Assert.StartsWith($"{figure}% ", part.Text, StringComparison.Ordinal);
                    Assert.True(Percentages.Read($"{figure}")!.Value.Value <= part.Chance.Value + Probability.RoundingTolerance, $"{animal.Animal.Tag}: {part}");
                    Assert.Equal(figure == 100, part.Chance.IsCertain && part.Basis == LabelBasis.Proven);
                    if (allele is not null)
                    {
                        var carried = animal.Belief.Genotype.ChanceOfCarrying(allele);
                        Assert.True(Percentages.Read($"{figure}")!.Value.Value <= carried.Value + Probability.RoundingTolerance, $"{animal.Animal.Tag}: {part}, {carried}");
                    }

                    if (figure == 100 && part.GeneId is not null)
                    {
                        // Certain from what was seen alone: nobody's word in the whole book is needed.
                        Assert.NotNull(allele);
                        Assert.True(WithoutWords(state)[animal.Key].Genotype.ChanceOfCarrying(allele).IsCertain, $"{animal.Animal.Tag}: {part}");
                    }
                }
                else
                {
                    Assert.True(part.Chance.IsCertain, $"{animal.Animal.Tag}: {part}");
                }
            }
        }
    }

    // The slow twin of ProvenBeliefs: the book read anew, without what was told or tested.
    private static PedigreeBeliefs WithoutWords(StockState state) => PedigreeBeliefs.Of(
        Shipped.Species,
        [.. state.Record.Animals.Select(a => a with { Observations = [.. a.Observations.Where(o => o is Observation.Seen or Observation.RuledOut or Observation.Said { Basis: StatementBasis.ProvenByBreeding })] })],
        state.Beliefs.Settings);

    private static Task<LabelWords> WordsAsync(string animals, string tag)
    {
        var state = State(animals);
        return Task.FromResult(new LabelText(Shipped.Catalogue, state, new ProvenBeliefs().Of(state, TestContext.Current.CancellationToken), new(2026, 5, 1)).Of(state.Find(tag)!));
    }

    private static StockState State(string animals)
    {
        var file = new Desk.Words.NamedFile("test.csv", Encoding.UTF8.GetBytes("id,sex,sire,dam,hatched,seen,told\n" + animals));
        var read = PedigreeFile.StateAsync(Shipped.Catalogue, file, () => throw new InvalidOperationException(), CancellationToken.None).GetAwaiter().GetResult();
        Assert.Empty(read.Problems);
        return read.Value!;
    }
}
