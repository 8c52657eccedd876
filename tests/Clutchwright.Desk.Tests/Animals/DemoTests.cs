using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Calendar;
using Clutchwright.Desk.Condition;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Animals;

/// <summary>The demo stock is made up: what is checked is that the program reads it, not that it is true.</summary>
public class DemoTests
{
    [Fact]
    public async Task RunAsync_EmptyStock_LoadsWithoutAProblem()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var state = await desk.StateAsync();
        var today = await desk.Get<ShowToday>().RunAsync(TestDesk.Cancel);

        Assert.True(state.Animals.Count >= 40);
        Assert.All(state.Animals, a => Assert.Empty(a.Problems));
        Assert.Equal(0, today.WithProblems);
        Assert.True(today.IsDemo);
        Assert.True(today.PossibleHets > 0);
        Assert.Equal(state.Animals.Count(a => a.IsHere), today.Males + today.Females + today.Unsexed);
    }

    [Fact]
    public async Task ListAnimals_Demo_EveryTextReadsBackAsWhatIsBelieved()
    {
        using var desk = await TestDesk.WithDemoAsync();

        foreach (var line in await desk.AllAsync())
        {
            var sex = line.Sex switch { Genetics.Loci.Sex.Male => "1.0 ", Genetics.Loci.Sex.Female => "0.1 ", null => "" };
            var read = Shipped.Catalogue.Catalogue.Trade.Read(sex + line.Words.Text);
            Assert.True(read.IsRead, $"{line.Tag}: {line.Words.Text}: {read.Problem?.Text}");

            var belief = (await desk.StateAsync()).Find(line.Tag)!.Belief.Genotype;
            var back = read.Value.ToBelief(belief.Sex);
            Assert.True(back.IsRead, $"{line.Tag}: {line.Words.Text}");
            Assert.Equal(belief.MostLikely(), back.Value!.MostLikely());
        }
    }

    [Fact]
    public async Task ShowAnimal_EveryAnimalOfTheDemo_IsExplained()
    {
        using var desk = await TestDesk.WithDemoAsync();

        foreach (var line in await desk.AllAsync())
        {
            var animal = await desk.ShowAsync(line.Tag);
            Assert.All(animal.Beliefs, b =>
            {
                Assert.Equal(1.0, b.Possibilities.Sum(p => p.Chance.Value), 1e-9);
                Assert.NotEmpty(b.Why);
                Assert.All(b.Possibilities, p => Assert.NotEmpty(p.Text));
                Assert.Equal(b.Possibilities.Count, b.Possibilities.Select(p => (p.Text, p.Notation)).Distinct().Count());
            });
            Assert.NotEmpty(animal.Look.Stages);
            Assert.False(animal.IsInBin);
        }
    }

    [Fact]
    public async Task ShowAnimal_YoungOfAClownAndAHet_IsHet()
    {
        using var desk = await TestDesk.WithDemoAsync();

        // Burnet looks normal and comes of a Clown: het for certain, told by nobody.
        var burnet = await desk.ShowAsync("T-203");

        Assert.Equal("het Clown", burnet.Line.Words.Text);
        Assert.False(burnet.Line.Words.Parts[0].IsSeen);
        Assert.Equal(("T-101", "T-102"), (burnet.Sire!.Tag, burnet.Dam!.Tag));
    }

    [Fact]
    public async Task ShowAnimal_SonOfAMaker_IsAMaker()
    {
        using var desk = await TestDesk.WithDemoAsync();

        Assert.Contains("male maker Banana", await desk.TextAsync("T-213"), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("maker", await desk.TextAsync("T-216"), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task RunAsync_LoadedTwice_AddsNothing()
    {
        using var desk = await TestDesk.WithDemoAsync();
        var before = await desk.ExportAsync();

        var again = await desk.Get<LoadDemo>().RunAsync(TestDesk.Who, TestDesk.Cancel);

        Assert.NotEmpty(again.Problems);
        Assert.Equal(before, await desk.ExportAsync());
    }

    [Fact]
    public async Task RunAsync_UndoneAtOnce_LeavesAnEmptyStock()
    {
        using var desk = new TestDesk();
        var loaded = (await desk.Get<LoadDemo>().RunAsync(TestDesk.Who, TestDesk.Cancel)).Value!;
        Assert.Equal(3, loaded.Deeds.Count);

        // The animals alone cannot go: their clutches and their log name them.
        Assert.NotEmpty((await desk.Get<UndoDeed>().RunAsync(loaded.Deeds[0], TestDesk.Who, TestDesk.Cancel)).Problems);
        var undone = (await desk.Get<UndoDeed>().RunAsync(loaded.Deeds, TestDesk.Who, TestDesk.Cancel)).Value!;

        Assert.Equal(0, (await desk.Get<ShowToday>().RunAsync(TestDesk.Cancel)).Animals);

        // And that is undone at once as well.
        Assert.Empty((await desk.Get<UndoDeed>().RunAsync(undone, TestDesk.Who, TestDesk.Cancel)).Problems);
        Assert.Equal(54, (await desk.Get<ShowToday>().RunAsync(TestDesk.Cancel)).Animals);
    }

    [Fact]
    public async Task RunAsync_LogOfTheLastMonths_GivesTheCalendarAndTheWatchSomethingToTell()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var calendar = (await desk.Get<ShowCalendar>().RunAsync(null, 60, asOnThatDay: false, TestDesk.Cancel)).Value!;
        var watch = await desk.Get<ShowWatch>().RunAsync(TestDesk.Cancel);

        Assert.Contains(calendar.Due, d => d.Tag == "T-222" && d.What.StartsWith("Eggs", StringComparison.Ordinal));
        Assert.Contains(watch.Lines, l => l.Tag == "T-211" && l.Level >= WatchLevel.Look);
        Assert.InRange(watch.Lines.Count(l => l.Level >= WatchLevel.Look), 1, 5);
    }
}
