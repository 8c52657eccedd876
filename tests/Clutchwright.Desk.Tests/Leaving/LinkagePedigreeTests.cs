using Clutchwright.Desk.Leaving;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Tests.Leaving;

/// <summary>Linkage format: what is seen as allele numbers where looking tells both, whole pairs of parents, and all else said in the legend.</summary>
public sealed class LinkagePedigreeTests
{
    private const string Family =
        """
        id,sex,sire,dam,hatched,seen,told
        S1,m,,,2018,Pastel Clown,
        S2,m,,,2018,,
        D1,u,,,2018,normal,het Clown
        K1,f,S1,D1,2022,Super Pastel,
        K 2,u,S1,,2022,Clown,
        K3,u,S1|S2,D1,2022,,
        """;

    [Fact]
    public async Task Of_Family_IsWrittenAsLinkageFormatAsks()
    {
        var pedigree = await OfAsync(Family);

        Assert.Equal(
            """
            book dam_of_K_2 0 0 2 0 0 0 0 0
            book sire_of_K3 0 0 1 0 0 0 0 0
            book D1 0 0 2 0 1 1 0 0
            book K_2 S1 dam_of_K_2 0 0 1 1 2 2
            book K1 S1 D1 2 0 2 2 0 0
            book K3 sire_of_K3 D1 0 0 0 0 0 0
            book S1 0 0 1 0 1 2 2 2
            book S2 0 0 1 0 0 0 0 0

            """,
            pedigree.Ped);
        Assert.Equal("0 pastel 0 0\n0 clown-group 0 0\n", pedigree.Map);
        Assert.Equal(
            """
            FID IID pastel clown-group
            book D1 1 1
            book K_2 1 2
            book K1 2 1
            book K3 0 0
            book S1 2 2
            book S2 0 0

            """,
            pedigree.Phenotypes);
    }

    [Fact]
    public async Task Of_Family_SaysInTheLegendWhatTheFormatCannotHold()
    {
        var legend = (await OfAsync(Family)).Legend;

        Assert.Contains("columns 7 8   pastel   1 = +, 2 = pastel\n", legend, StringComparison.Ordinal);
        Assert.Contains("columns 9 10   clown-group   1 = +, 2 = clown, ", legend, StringComparison.Ordinal);
        Assert.EndsWith(
            """

            Ids that are not the tag as it is
            K_2 is K 2

            Stand for a parent that is not known
            dam_of_K_2
            sire_of_K3

            Several possible sires, of which none is named as the father
            K3: S1, S2

            Unsexed, and given the sex of the parent they are
            D1

            """,
            legend,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_TagsAlikeButForSpaces_GetDifferentIds()
    {
        var pedigree = await OfAsync("id,sex,sire,dam,hatched,seen\nA 1,m,,,2018,\nA_1,m,,,2018,\n0,m,,,2018,\n");

        Assert.Equal(["0_2", "A_1", "A_1_2"], pedigree.Ped.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(' ')[1]).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Of_HiddenLocus_IsNotKnown()
    {
        // A blue-eyed white shows nothing of what lies beneath it.
        var pedigree = await OfAsync("id,sex,sire,dam,hatched,seen\nA,m,,,2018,Super Mojave\nB,m,,,2018,Pastel\n");

        Assert.Equal("FID IID bel pastel\nbook A 2 0\nbook B 1 2\n", pedigree.Phenotypes);
    }

    [Fact]
    public async Task Of_SeenButNotForCertain_IsLeftOutAndSaid()
    {
        var pedigree = await OfAsync("id,sex,sire,dam,hatched,seen,statements\nA,m,,,2018,Pastel,\"[{\"\"kind\"\":\"\"seen\"\",\"\"text\"\":\"\"Clown\"\",\"\"sure\"\":0.7}]\"\n");

        Assert.Equal("0 pastel 0 0\n", pedigree.Map);
        Assert.Contains("\nSeen, and not told here\nA: \"seen: Clown\" is not certain\n", pedigree.Legend, StringComparison.Ordinal);
    }

    private static async Task<LinkagePedigree> OfAsync(string csv)
    {
        using var desk = await TestDesk.WithAsync(csv);
        return LinkagePedigree.Of(Shipped.Catalogue, (await new AllAnimals(desk.Get<OpenBook>().Book).RunAsync(TestDesk.Cancel)).Value!);
    }
}
