using Clutchwright.Desk.Looks;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using CsCheck;

namespace Clutchwright.Desk.Tests.Looks;

public class LookQueryReaderTests
{
    private static readonly ToneReader Tones = new(Shipped.Catalogue.Catalogue.Tones);

    [Theory]
    [InlineData("pattern strong yellow", "Pattern strong yellow (within 12); as an adult.")]
    [InlineData("PATTERN  Strong-Yellow within 8", "Pattern strong yellow (within 8); as an adult.")]
    [InlineData("#c8a040, hatchling", "Ground or pattern #C8A040 (within 12); as a hatchling.")]
    [InlineData("ground light grey; eyes red", "Ground light gray (within 12); eye any red (within 12); as an adult.")]
    [InlineData("white patches", "White patches; as an adult.")]
    [InlineData("patches of white", "White patches; as an adult.")]
    [InlineData("at least white patches", "White: patches or more; as an adult.")]
    [InlineData("white at most traces", "White: traces at most; as an adult.")]
    [InlineData("some white", "White: traces or more; as an adult.")]
    [InlineData("no white, saying flame", "Saying “flame”; no white; as an adult.")]
    [InlineData("all white", "All white; as an adult.")]
    [InlineData("white", "Ground or pattern white (within 12); as an adult.")]
    [InlineData("ground white, fades", "Ground white (within 12); on the hatchling, no longer on the adult.")]
    [InlineData("ground white, comes with age", "Ground white (within 12); on the adult, not yet on the hatchling.")]
    [InlineData("holds", "At every age from hatchling to adult.")]
    [InlineData("white, holds from hatchling to adult", "Ground or pattern white (within 12); at every age from hatchling to adult.")]
    [InlineData("black, as a juvenile", "Ground or pattern black (within 12); as a juvenile.")]
    [InlineData("ground saying tan, form flame, head clean", "Ground saying “tan”; form “flame”; head “clean”; as an adult.")]
    [InlineData("with Clown, without spider", "With Clown; without Spider; as an adult.")]
    [InlineData("with clown, no harm, from my stock", "With Clown; as an adult; of alleles the stock carries; without suffering or death.")]
    public void Read_Query_IsUnderstood(string query, string understood)
    {
        var (read, problems) = Read(query);

        Assert.Empty(problems);
        Assert.Equal(understood, read.Sentence(read.Stage ?? AgeStage.Adult));
    }

    [Theory]
    [InlineData("up to 3 genes, white", 3)]
    [InlineData("1 gene, white", 1)]
    [InlineData("white", null)]
    public void Read_Genes_AreCounted(string query, int? genes) => Assert.Equal(genes, Read(query).Query.Genes);

    [Theory]
    [InlineData("", "Say what is to be seen", null, null)]
    [InlineData(" , ", "Say what is to be seen", null, null)]
    [InlineData("adult", "Nothing is said of what is to be seen", null, null)]
    [InlineData("fades", "Say also which tone fades", null, null)]
    [InlineData("white patches, comes with age", "Only of tones", null, null)]
    [InlineData("strong yelow", "is no tone", 0, "strong yellow")]
    [InlineData("no white, pattern strnog yellow", "is no tone", 18, "strong yellow")]
    [InlineData("pattern #12345", "is no colour", 8, null)]
    [InlineData("pattern", "Which tone?", 0, null)]
    [InlineData("pattern white within far", "is no distance", 21, null)]
    [InlineData("pattern white within 0", "is no distance", 21, null)]
    [InlineData("with Clwn", "no gene 'Clwn'", 5, "Clown")]
    [InlineData("with Bumblebee", "more than one allele", 5, null)]
    [InlineData("Pastel", "is a gene", 0, "with Pastel")]
    [InlineData("form", "Which words?", 0, null)]
    [InlineData("white, adult, holds", "Two ages", 14, null)]
    [InlineData("no white, all white", "said twice", 10, null)]
    [InlineData("white, up to 9 genes", "1 to 3 genes", 7, null)]
    [InlineData("hlods", "is no tone", 0, "holds")]
    public void Read_WrongQuery_SaysWhatAndWhere(string query, string text, int? at, string? nearest)
    {
        var (_, problems) = Read(query);

        var problem = problems[0];
        Assert.Equal("query", problem.Where);
        Assert.Contains(text, problem.Text, StringComparison.Ordinal);
        Assert.Equal(at, problem.At);
        if (nearest is not null)
        {
            Assert.Contains(nearest, problem.DidYouMean!);
        }
    }

    [Fact]
    public void Read_AnyText_IsUnderstoodOrRefusedInPlace() => Gen.String.Sample(text => IsInPlace(text), iter: 2_000);

    [Fact]
    public void Read_AnyPhrases_AreUnderstoodOrRefusedInPlace()
    {
        string[] words =
        [
            "pattern", "ground", "eye", "strong", "yellow", "white", "patches", "or", "more", "at", "most", "within", "8", "holds", "fades", "adult", ",", ",",
            "with", "Clown", "form", "saying", "#AABBCC", "up", "to", "2", "genes", "no", "harm",
        ];
        Gen.Int[0, words.Length - 1].Select(i => words[i]).Array[0, 9].Select(w => string.Join(' ', w)).Sample(text => IsInPlace(text), iter: 5_000);
    }

    [Fact]
    public void HueOf_EveryToneOfTheTable_IsReadAgainAsAHue() => Assert.All(
        Shipped.Catalogue.Catalogue.Tones, t => Assert.NotNull(Tones.Read(ToneReader.HueOf(t))));

    private static bool IsInPlace(string text)
    {
        var (read, problems) = Read(text);
        return problems.Count > 0
            ? problems.All(p => p.At is not { } at || (at >= 0 && at + p.Length <= text.Length))
            : read.Sentence(AgeStage.Adult).Length > 0 && read.SaysALook;
    }

    private static (LookQuery Query, List<AskedWrongly> Problems) Read(string query)
    {
        var problems = new List<AskedWrongly>();
        return (LookQueryReader.Read(Shipped.Catalogue.Catalogue, Tones, query, 12, problems), problems);
    }
}
