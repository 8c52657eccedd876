using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Carry;

/// <summary>Which entry surprises most.</summary>
public class ListSuspectsTests
{
    private const string TwoFamilies = """
        id,sex,sire,dam,hatched,seen
        S,m,,,2019,Mojave
        D,f,,,2019,normal
        A1,f,S,D,2022,Mojave
        A2,m,S,D,2022,normal
        A3,f,S,D,2022,Mojave
        T,m,,,2019,normal
        E,f,,,2019,normal
        B1,f,T,E,2022,normal
        B2,m,T,E,2022,normal
        """;

    [Fact]
    public async Task RunAsync_HatchlingThatCannotBe_StandsFirst()
    {
        using var desk = await TestDesk.WithAsync(TwoFamilies + "\nB3,f,T,E,2022,Mojave\n");

        var suspects = (await desk.Get<ListSuspects>().RunAsync(5, TestDesk.Cancel)).Animals;

        Assert.Equal("B3", suspects[0].Animal.Tag);
        Assert.True(suspects[0].Log10Factor > 1.0);
    }

    [Fact]
    public async Task RunAsync_NothingWrong_IsEmpty()
    {
        using var desk = await TestDesk.WithAsync(TwoFamilies);

        var answer = await desk.Get<ListSuspects>().RunAsync(5, TestDesk.Cancel);

        Assert.Empty(answer.Animals);
        Assert.True(answer.IsExact);
    }
}
