using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Crosses;

/// <summary>What is asked wrongly is told all at once, each with its place.</summary>
public class AskCrossProblemTests
{
    [Fact]
    public async Task RunAsync_EverythingWrong_ListsEveryProblem()
    {
        var answer = await Shipped.AskAsync("1.0 Pastle", "0.1 Mojave/Lesser/Phantom", q => q with
        {
            Wants = ["Clown", "Clwn", "66% het Clown"],
            Clutch = new(-1, 1.5, double.NaN),
            Recombination = new Dictionary<string, double> { ["Banana"] = 0.6, ["Clown"] = 0.1, ["Bananna"] = 0.1 },
            AtLeast = 0,
            Most = 0,
        });

        Assert.Null(answer.Value);
        Assert.Equal(
            ["at-least", "dam", "eggs", "fertility", "hatch-rate", "most", "recombination", "recombination", "recombination", "sire", "want 2", "want 3"],
            answer.Problems.Select(p => p.Where).Order(StringComparer.Ordinal));
        Assert.All(answer.Problems, p => Assert.NotEmpty(p.Text));
    }

    [Fact]
    public async Task RunAsync_UnknownWord_PointsAtItWithTheNearestSpelling()
    {
        var problem = Assert.Single((await Shipped.AskAsync("1.0 Mojave Pastle", "0.1 Clown")).Problems);

        Assert.Equal(("sire", 11, 6), (problem.Where, problem.At, problem.Length));
        Assert.Contains("Pastel", problem.DidYouMean!);
    }

    [Theory]
    [InlineData("0.1 Clown", "0.1 Clown", "sire")]
    [InlineData("1.0 Clown", "1.0 Clown", "dam")]
    [InlineData("1.0 Clown", "0.1 male maker Banana", "dam")]
    [InlineData("1.0 Clown", "male maker Banana", "dam")]
    [InlineData("1.0 Clown", "0.1 female maker Banana", "dam")]
    public async Task RunAsync_TextOfTheWrongSex_IsRefused(string sire, string dam, string where) =>
        Assert.Equal(where, Assert.Single((await Shipped.AskAsync(sire, dam)).Problems).Where);

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("Lesser Mojave Phantom")]
    [InlineData("Normal Clown")]
    [InlineData("Mojave/Clown")]
    [InlineData("male maker Clown")]
    [InlineData("1.2 Clown")]
    public async Task RunAsync_TextThatIsNoAnimal_IsRefused(string sire)
    {
        var problem = Assert.Single((await Shipped.AskAsync(sire, "0.1 Normal")).Problems);

        Assert.Equal("sire", problem.Where);
        Assert.InRange(problem.At ?? 0, 0, sire.Length);
        Assert.InRange((problem.At ?? 0) + problem.Length, 0, sire.Length);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(201)]
    [InlineData(int.MaxValue)]
    public async Task RunAsync_EggsOutOfRange_IsRefused(int eggs) => Assert.Equal(
        "eggs", Assert.Single((await Shipped.AskAsync("1.0 Clown", "0.1 Clown", q => q with { Clutch = new(eggs, null, null) })).Problems).Where);

    [Theory]
    [InlineData(0)]
    [InlineData(200)]
    public async Task RunAsync_EggsAtTheEndsOfTheRange_IsAnswered(int eggs)
    {
        var want = await Shipped.WantAsync("1.0 het Clown", "0.1 Clown", "Clown", eggs);

        Assert.Equal(eggs == 0, want.AtLeastOne.IsImpossible);
    }
}
