using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Statements;

public sealed class StatementTests
{
    [Fact]
    public async Task AddStatement_EverythingGiven_IsFoundAgain()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A");
        var entry = new StatementEntry
        {
            Kind = StatementKind.DnaTest,
            Text = "het Clown",
            When = DateRange.Read("about May 2025").Expect(),
            Confidence = 0.75,
            By = "the laboratory",
            Test = new DnaTest(Found: false, Sensitivity: 0.99, Specificity: 0.995),
        };

        (await book.TrySayAsync(animal, entry)).Expect();

        Assert.Equal(entry, Assert.Single((await book.FindAsync(animal)).Statements).ToEntry());
        Assert.Equal(entry, Assert.Single((await book.AllAsync()).Single().Statements).ToEntry());
    }

    [Theory]
    [InlineData("normal")]
    [InlineData(" NORMAL ")]
    public async Task AddStatement_SeenNormal_IsLookedAtNormal(string text)
    {
        using var book = await TestBook.NewAsync();

        var statement = await book.SayAsync(await book.AddAsync("A"), StatementKind.Seen, text);

        Assert.Equal((StatementKind.LookedAtNormal, ""), (statement.Kind, statement.Text));
    }

    [Fact]
    public async Task AddStatement_Unreadable_IsRefusedWithTheReadersWords()
    {
        using var book = await TestBook.NewAsync();

        var outcome = await book.TrySayAsync(await book.AddAsync("A"), new StatementEntry { Kind = StatementKind.RuledOut, Text = "?" });

        var problem = Refusals.Only<StatementProblem.TextUnreadable>(outcome.Problem, AnimalField.RuledOut);
        Assert.Equal(new TradeTextProblem("no such gene in ruled_out", "Pastel", 0), problem.Trade);
    }

    public static TheoryData<StatementEntry, Type> Wrong => new()
    {
        { new() { Kind = StatementKind.Told }, typeof(StatementProblem.TextMissing) },
        { new() { Kind = StatementKind.LookedAtNormal, Text = "Pastel" }, typeof(StatementProblem.TextNotWanted) },
        { new() { Kind = StatementKind.Told, Text = "a\nb" }, typeof(StatementProblem.TextInvalid) },
        { new() { Kind = StatementKind.Told, Text = "a", By = "b\tc" }, typeof(StatementProblem.ByInvalid) },
        { new() { Kind = StatementKind.Told, Text = "a", Confidence = 0 }, typeof(StatementProblem.ConfidenceOutOfRange) },
        { new() { Kind = StatementKind.Told, Text = "a", Confidence = 1.01 }, typeof(StatementProblem.ConfidenceOutOfRange) },
        { new() { Kind = StatementKind.Told, Text = "a", Confidence = double.NaN }, typeof(StatementProblem.ConfidenceOutOfRange) },
        { new() { Kind = StatementKind.DnaTest, Text = "a" }, typeof(StatementProblem.TestNotFitting) },
        { new() { Kind = StatementKind.Told, Text = "a", Test = new(true, 1, 1) }, typeof(StatementProblem.TestNotFitting) },
        { new() { Kind = StatementKind.DnaTest, Text = "a", Test = new(true, 1.5, 1) }, typeof(StatementProblem.TestRateOutOfRange) },
        { new() { Kind = (StatementKind)99, Text = "a" }, typeof(StatementProblem.KindUnknown) },
    };

    [Theory]
    [MemberData(nameof(Wrong), DisableDiscoveryEnumeration = true)]
    public async Task AddStatement_AgainstTheRules_IsRefused(StatementEntry entry, Type problem)
    {
        using var book = await TestBook.NewAsync();

        var outcome = await book.TrySayAsync(await book.AddAsync("A"), entry);

        Assert.IsType(problem, Assert.Single(Assert.IsType<AnimalProblem.Refused>(outcome.Problem).Problems).Problem);
    }

    [Fact]
    public async Task AddStatement_AnimalInBin_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A");
        await book.TryBinAsync(animal);

        var outcome = await book.TrySayAsync(animal, new StatementEntry { Kind = StatementKind.Told, Text = "Clown" });

        Assert.Equal(new AnimalProblem.NotFound(animal.AnimalId), outcome.Problem);
    }

    [Fact]
    public async Task WithdrawStatement_Twice_IsRefusedTheSecondTime()
    {
        using var book = await TestBook.NewAsync();
        var statement = await book.SayAsync(await book.AddAsync("A"), StatementKind.Told, "Clown");

        Assert.True((await book.TryWithdrawAsync(statement)).IsDone);

        Assert.Empty((await book.FindAsync("A")).Statements);
        Assert.Equal(new StatementProblem.AlreadyWithdrawn(statement.StatementId), (await book.TryWithdrawAsync(statement)).Problem);
    }
}
