using Clutchwright.Genetics.Numbers;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Import;

public sealed class SireCellTests
{
    [Theory]
    [InlineData("A", "A", "")]
    [InlineData("A|B", "A B", "")]
    [InlineData("A:0.7|B:0.3", "A B", "7/10 3/10")]
    [InlineData(" A : 70% | B : 30% ", "A B", "7/10 3/10")]
    [InlineData("A:1/3|B:2/3", "A B", "1/3 2/3")]
    [InlineData("A:.25|B:.25|A:.5", "A B", "3/4 1/4")]
    [InlineData("A:0.5|A:0.5", "A", "")]
    [InlineData("Box 3:1|Box 3:2", "Box 3:1 Box 3:2", "")]
    [InlineData("A:0.7", "A:0.7", "")]
    public void Read_ASire_GivesTagsAndChances(string text, string tags, string weights)
    {
        var cell = SireCell.Read(text, tag => tag);

        Assert.True(cell.IsDone);
        Assert.Equal(tags, string.Join(' ', cell.Value.Tags));
        Assert.Equal(weights, string.Join(' ', cell.Value.Weights));
    }

    [Theory]
    [InlineData("A:0.7|B", "some possible sires a chance and some none")]
    [InlineData("A:0.7|B:0.2", "sum to 9/10")]
    [InlineData("A:0.7|B:0.7", "sum to 7/5")]
    [InlineData("A:100%|B:0%", "Each above 0")]
    public void Read_ChancesThatCannotBe_SaysWhatWouldBeRight(string text, string said)
    {
        var problem = Assert.Single(AnimalFile.Read($"id,sire\nA,\nB,\nC,{text}\n").Problems);

        Assert.Equal((4, "sire"), (problem.Line, problem.Column));
        Assert.Contains(said, ProblemWords.Say(problem.Problem).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void SireWeights_OfAFile_NameTheAnimalsByTheirRows()
    {
        var file = AnimalFile.Read("id,sex,sire\nC,,b:0.7|A:0.3\nA,m,\nB,m,\nD,,A|B\n");

        var animals = file.ToAnimals((_, _) => null).Value!.ToDictionary(a => a.Tag, a => a.AnimalId);

        var (young, weights) = Assert.Single(file.SireWeights());
        Assert.Equal(animals["C"], young);
        Assert.Equal((new Fraction(3, 10), new Fraction(7, 10)), (weights[animals["A"]], weights[animals["B"]]));
    }

    [Fact]
    public async Task RunAsync_ChancesIntoTheStock_AreRefused()
    {
        using var book = await TestBook.NewAsync();

        var problem = Assert.Single((await book.PreviewAsync("id,sex,sire\nA,m,\nB,m,\nC,,A:0.7|B:0.3\n")).Expect().Problems);

        Assert.Equal("A|B", Assert.IsType<ImportProblem.SireWeightsInStock>(problem.Problem).Plain);
    }
}
