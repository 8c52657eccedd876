using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Clutches;
using Clutchwright.Desk.Happenings;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Tests.Clutches;

public sealed class HatchDayTests
{
    private const string Hets = "id,sex,hatched,seen,told\nM,m,2020,normal,66% het Clown\nF,f,2020,Pastel,66% het Clown\n";

    [Fact]
    public async Task EnterAsync_FirstVisual_MakesBothParentsCertainAndMovesTheOdds()
    {
        using var desk = await WithClutchAsync(Hets);

        // 2/3 x 2/3 x 1/4 of a Clown before anything is known; with both parents proven 1/4 (Mendel).
        Assert.Equal(1.0 / 9.0, await ChanceAsync(desk, "Clown") + await ChanceAsync(desk, "Pastel Clown"), 12);
        var answer = await EnterAsync(desk, new() { Look = "Clown", Sex = "m", MassGrams = "61,5" });

        Assert.Equal(("C1-1", "Clown"), (answer.Tag, answer.Words!.Text));
        Assert.Equal("het Clown", await desk.TextAsync("M"));
        Assert.Equal(0.25, await ChanceAsync(desk, "Clown") + await ChanceAsync(desk, "Pastel Clown"), 12);
        Assert.Equal(1, (await ShowAsync(desk)).Looks.Single(l => l.Name == "Clown").Hatched);
    }

    /// <summary>Young kept as a number tell of their parents exactly what the same young tell one by one.</summary>
    [Fact]
    public async Task Counted_SameYoungOneByOne_GiveTheSameBeliefs()
    {
        using var counted = await WithClutchAsync(Hets);
        using var single = await WithClutchAsync(Hets);
        var form = (await counted.Get<WriteClutch>().FormAsync("C1", TestDesk.Cancel))!;

        Assert.Empty((await counted.Get<WriteClutch>().EditAsync("C1", form with { Hatched = "2026-04-30", Counted = "3 normal\n1.1 Pastel" }, TestDesk.Who, TestDesk.Cancel)).Problems);
        foreach (var (look, sex) in new[] { ("normal", ""), ("Normal", ""), ("normal", ""), ("Pastel", "m"), ("Pastel", "f") })
        {
            await EnterAsync(single, new() { Look = look, Sex = sex });
        }

        // P(both het | 5 without Clown) = (4/9)(3/4)^5 / (5/9 + (4/9)(3/4)^5), and each is het by that and half of the rest that holds one het.
        var both = 4.0 / 9.0 * Math.Pow(0.75, 5);
        var het = (both + (2.0 / 9.0)) / (both + (5.0 / 9.0));
        foreach (var parent in new[] { "M", "F" })
        {
            Assert.Equal(het, await HetAsync(counted, parent), 12);
            Assert.Equal(het, await HetAsync(single, parent), 12);
        }

        Assert.Equal(5, (await ShowAsync(counted)).Clutch.HatchedCount);
        Assert.Equal(2, (await ShowAsync(counted)).Looks.Where(l => l.Name == "Pastel").Sum(l => l.Hatched));
    }

    [Fact]
    public async Task EnterAsync_LookThatCannotBe_IsAskedTwiceAndKeptWithTheDoubt()
    {
        using var desk = await WithClutchAsync(Hets);
        var form = new HatchlingForm { Id = Guid.CreateVersion7(), Clutch = "C1", Look = "Banana", Sex = "f" };
        var deeds = await DeedsAsync(desk);

        var first = (await desk.Get<HatchDay>().EnterAsync(form, TestDesk.Who, TestDesk.Cancel)).Value!;
        Assert.Null(first.Animal);
        Assert.Contains("cannot be from these parents", Assert.Single(first.AskAgain), StringComparison.Ordinal);
        Assert.Equal(deeds, await DeedsAsync(desk));

        var second = (await desk.Get<HatchDay>().EnterAsync(form with { IsAgain = true }, TestDesk.Who, TestDesk.Cancel)).Value!;
        Assert.True(second.Animal!.HasProblem);
        Assert.Contains("Asked twice on hatch day", (await desk.ShowAsync("C1-1")).Notes, StringComparison.Ordinal);

        // The same sent a third time, since its answer was lost.
        Assert.Null((await desk.Get<HatchDay>().EnterAsync(form with { IsAgain = true }, TestDesk.Who, TestDesk.Cancel)).Value!.Deed);
        Assert.Equal(deeds + 1, await DeedsAsync(desk));
    }

    [Fact]
    public async Task EnterAsync_SentAgainAfterItWentToTheBin_SaysSo()
    {
        using var desk = await WithClutchAsync(Hets);
        var form = new HatchlingForm { Id = Guid.CreateVersion7(), Clutch = "C1", Look = "Clown" };
        await desk.Get<HatchDay>().EnterAsync(form, TestDesk.Who, TestDesk.Cancel);
        Assert.Empty((await desk.Get<BinAnimal>().RunAsync("C1-1", TestDesk.Who, TestDesk.Cancel)).Problems);

        Assert.Contains("lies in the bin", Assert.Single((await desk.Get<HatchDay>().EnterAsync(form, TestDesk.Who, TestDesk.Cancel)).Problems).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task EnterAsync_NotQuiteSure_BreaksNothing()
    {
        using var desk = await WithClutchAsync(Hets);

        var answer = await EnterAsync(desk, new() { Look = "Banana", IsUnsure = true });

        Assert.False(answer.Animal!.HasProblem);
        Assert.Equal(0.9, Assert.Single((await desk.ShowAsync("C1-1")).Statements).Confidence);
    }

    [Theory]
    [InlineData("Clwn", null, null, "look")]
    [InlineData("Clown", "x", null, "sex")]
    [InlineData("Clown", "m", "much", "mass")]
    [InlineData("Clown", "m", "-3", "mass")]
    [InlineData("Clown", "m", "1,450", "mass")]
    public async Task EnterAsync_AskedWrongly_SaysWhere(string look, string? sex, string? mass, string where)
    {
        using var desk = await WithClutchAsync(Hets);

        var answer = await desk.Get<HatchDay>().EnterAsync(
            new() { Id = Guid.CreateVersion7(), Clutch = "C1", Look = look, Sex = sex, MassGrams = mass }, TestDesk.Who, TestDesk.Cancel);

        Assert.Equal(where, Assert.Single(answer.Problems).Where);
    }

    /// <summary>What a look is called can be written down as seen, and is read as that look.</summary>
    [Theory]
    [InlineData("1.0 Pastel Mojave het Clown", "0.1 Lesser Spider het Clown")]
    [InlineData("1.0 male maker Banana Enchi", "0.1 Yellow Belly Pinstripe")]
    [InlineData("1.0 Super Pastel het Piebald", "0.1 Bumblebee het Piebald")]
    public async Task Looks_NameWrittenAsSeen_IsReadAsThatLook(string sire, string dam)
    {
        using var desk = new TestDesk();
        foreach (var (tag, text) in new[] { ("M", sire), ("F", dam) })
        {
            Assert.Empty((await desk.Get<SaveAnimal>().RunAsync(
                new() { Tag = tag, Sex = tag == "M" ? "m" : "f", Hatched = "2020", Told = text[4..] }, null, TestDesk.Who, TestDesk.Cancel)).Problems);
        }

        Assert.Empty((await desk.Get<WriteClutch>().RecordAsync(new() { Tag = "C1", Dam = "F", Sire = "M", Laid = "2026-03-01" }, TestDesk.Who, TestDesk.Cancel)).Problems);
        var looks = (await ShowAsync(desk)).Looks;

        Assert.True(looks.Count >= 6);
        foreach (var look in looks)
        {
            var answer = await EnterAsync(desk, new() { Look = look.Seen, Sex = look.Sex == Sex.Male ? "m" : look.Sex == Sex.Female ? "f" : null });
            Assert.Equal(1, (await ShowAsync(desk)).Looks.Where(l => l.Name == look.Name && l.Sex == look.Sex).Sum(l => l.Hatched));
            Assert.Empty((await desk.Get<UndoDeed>().RunAsync(answer.Deed!.Id, TestDesk.Who, TestDesk.Cancel)).Problems);
        }
    }

    [Fact]
    public async Task WriteHappening_Laid_IsAClutchOfTheMalesThatLocked()
    {
        using var desk = await TestDesk.WithAsync("id,sex,hatched\nM1,m,2020\nM2,m,2020\nM3,m,2020\nF,f,2020\n");
        foreach (var (kind, mate, day) in new[] { ("Introduced", "M3", "2026-01-01"), ("Locked", "M1", "2026-01-05"), ("Locked", "M2", "2026-01-20"), ("Locked", "M3", "2024-01-20") })
        {
            Assert.Empty((await desk.Get<WriteHappening>().RunAsync(new("F", kind, day, null, mate, null), TestDesk.Who, TestDesk.Cancel)).Problems);
        }

        Assert.Empty((await desk.Get<WriteHappening>().RunAsync(new("F", "laid", "2026-04-20", "7", null, "a long night"), TestDesk.Who, TestDesk.Cancel)).Problems);

        var clutch = Assert.Single(await desk.Get<ListClutches>().RunAsync(inBin: false, TestDesk.Cancel));
        Assert.Equal(("26-01", "F", 7, "a long night", ClutchStage.Eggs, 11), (clutch.Tag, clutch.Dam, clutch.GoodEggs, clutch.Notes, clutch.Stage, clutch.Days));
        Assert.Equal(["M1", "M2"], clutch.Sires);
        Assert.Equal("laid 7 eggs", (await desk.Get<ListHappenings>().RunAsync("F", [], 10, TestDesk.Cancel)).Value![0].What);
        Assert.Empty((await desk.Get<WriteHappening>().RunAsync(new("F", "candled", "2026-04-30", "6", null, null) { Clutch = "26-01" }, TestDesk.Who, TestDesk.Cancel)).Problems);
        Assert.Equal("candled 6 good eggs", Assert.Single((await desk.Get<ShowClutch>().RunAsync("26-01", TestDesk.Cancel)).Value!.Log).What);
    }

    [Fact]
    public async Task EnterAsync_YoungOfARouteFollowed_IsToBeHeldBack()
    {
        using var desk = await TestDesk.WithAsync("id,sex,hatched,seen,told\nM,m,2020,Clown,\nF,f,2020,Pastel,\nG,f,2021,normal,\n");
        var question = new RoutesQuestion("Pastel Clown") { Seasons = 4 };
        var routes = (await desk.Get<PlanRoute>().RunAsync(question, null, TestDesk.Cancel)).Value!;
        var route = routes.Routes.First(r => r.Steps.Any(s => r.Animals[s.Sire].Tags.Contains("M") && r.Animals[s.Dam].Tags.Contains("F")));
        Assert.Empty((await desk.Get<AdoptedRoutes>().AdoptAsync(question, route, TestDesk.Who, TestDesk.Cancel)).Problems);
        await LayAsync(desk);

        var needed = await EnterAsync(desk, new() { Look = "Pastel" });
        var spare = await EnterAsync(desk, new() { Look = "normal" });

        Assert.Contains(needed.Advice, a => a.IsHoldBack && a.Text.Contains("Pastel Clown", StringComparison.Ordinal));
        Assert.Equal(new Advice(false, "No route you follow asks for it."), Assert.Single(spare.Advice));
    }

    private static async Task<TestDesk> WithClutchAsync(string csv)
    {
        var desk = await TestDesk.WithAsync(csv);
        await LayAsync(desk);
        return desk;
    }

    private static async Task LayAsync(TestDesk desk) =>
        Assert.Empty((await desk.Get<WriteClutch>().RecordAsync(new() { Tag = "C1", Dam = "F", Sire = "M", Laid = "2026-03-01", GoodEggs = "6" }, TestDesk.Who, TestDesk.Cancel)).Problems);

    private static async Task<HatchlingAnswer> EnterAsync(TestDesk desk, HatchlingForm form)
    {
        var answer = await desk.Get<HatchDay>().EnterAsync(form with { Id = Guid.CreateVersion7(), Clutch = "C1" }, TestDesk.Who, TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        Assert.Empty(answer.Value!.AskAgain);
        return answer.Value;
    }

    private static async Task<ClutchAnswer> ShowAsync(TestDesk desk) => (await desk.Get<ShowClutch>().RunAsync("C1", TestDesk.Cancel)).Value!;

    private static async Task<double> ChanceAsync(TestDesk desk, string look) => (await ShowAsync(desk)).Looks.Where(l => l.Name == look).Sum(l => l.PerHatchling.Value);

    private static async Task<double> HetAsync(TestDesk desk, string tag)
    {
        var state = await desk.StateAsync();
        return state.Find(tag)!.Belief.Genotype.ChanceOfCarrying(Shipped.Catalogue.Catalogue.FindAllele("Clown")!.Allele).Value;
    }

    private static async Task<int> DeedsAsync(TestDesk desk) => (await desk.Get<ListDeeds>().RunAsync(null, 100, TestDesk.Cancel)).Count;
}
