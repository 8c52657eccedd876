using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Genetics.Genotypes;
using Xunit;

namespace Clutchwright.Catalogue.Tests.TradeTexts;

public sealed class TradeTextWantTests
{
    [Theory]
    [InlineData("Clown", "1.0 Clown", true)]
    [InlineData("Clown", "1.0 het Clown", false)]
    [InlineData("Clown", "0.1 Clown Pastel", true)]
    [InlineData("Pastel", "0.1 Pastel", true)]
    [InlineData("Pastel", "0.1 Super Pastel", false)]
    [InlineData("Super Pastel", "0.1 Super Pastel", true)]
    [InlineData("Spider", "0.1 Super Spider", true)]
    [InlineData("Super Spider", "0.1 Spider", false)]
    [InlineData("Cryptic", "0.1 Cryptic het Clown", true)]
    [InlineData("Cryptic/+", "0.1 Cryptic het Clown", false)]
    [InlineData("het Clown", "0.1 het Clown", true)]
    [InlineData("het Clown", "0.1 Clown", false)]
    [InlineData("BEL", "0.1 Super Lesser", true)]
    [InlineData("BEL", "0.1 Lesser/Mojave", true)]
    [InlineData("BEL", "0.1 Mystic Potion", false)]
    [InlineData("Lesser/Mojave", "0.1 Super Lesser", false)]
    [InlineData("Lesser Mojave", "0.1 Lesser/Mojave", true)]
    [InlineData("Bumblebee", "1.0 Pastel Super Spider", true)]
    [InlineData("Bumblebee or Clown", "1.0 Clown", true)]
    [InlineData("Bumblebee | Clown", "1.0 Pastel", false)]
    [InlineData("0.1 Clown", "1.0 Clown", false)]
    [InlineData("male maker Banana", "1.0 male maker Banana", true)]
    [InlineData("male maker Banana", "1.0 female maker Banana", false)]
    [InlineData("male maker Banana", "0.1 Banana", false)]
    [InlineData("(X Banana/Y +)", "1.0 female maker Banana", true)]
    [InlineData("Normal", "0.1 het Clown", true)]
    [InlineData("Normal", "0.1 Pastel", false)]
    [InlineData("Normal het Clown", "0.1 Normal", false)]
    [InlineData("0.1", "0.1 Pastel", true)]
    public void ReadWant_Text_MeansThisGenotypeOrNot(string want, string animal, bool expected)
    {
        var genotype = Genotype(animal);

        Assert.Equal(expected, SampleSpecies.Trade.ReadWant(want).Value!.IsMetBy(genotype));
    }

    [Theory]
    [InlineData("66% het Clown", TextProblemKind.NotHere, 0, 13)]
    [InlineData("Clown or possible het Pied", TextProblemKind.NotHere, 9, 17)]
    [InlineData("Clown or", TextProblemKind.Empty, 8, 0)]
    [InlineData("", TextProblemKind.Empty, 0, 0)]
    [InlineData("Clwon", TextProblemKind.UnknownWord, 0, 5)]
    [InlineData("0.1 male maker Banana", TextProblemKind.NotAMaker, 4, 17)]
    [InlineData("BEL Lesser", TextProblemKind.Contradiction, 4, 6)]
    [InlineData("Normal Pastel", TextProblemKind.Contradiction, 7, 6)]
    [InlineData("(Left Right/+ +)", TextProblemKind.NotHere, 0, 16)]
    public void ReadWant_Fault_IsToldAtItsPlace(string text, TextProblemKind kind, int position, int length)
    {
        var problem = SampleSpecies.Trade.ReadWant(text).Problem!;

        Assert.Equal((kind, position, length), (problem.Kind, problem.Position, problem.Length));
    }

    [Fact]
    public void ReadWant_ElevenAlternatives_AreTooMany() =>
        Assert.Equal(
            TextProblemKind.NotHere,
            SampleSpecies.Trade.ReadWant(string.Join(" or ", Enumerable.Repeat("Clown", 11))).Problem!.Kind);

    private static Genotype Genotype(string text)
    {
        var animal = SampleSpecies.Trade.Read(text).Value!;
        return animal.ToBelief(animal.Sex!.Value).Value!.MostLikely();
    }
}
