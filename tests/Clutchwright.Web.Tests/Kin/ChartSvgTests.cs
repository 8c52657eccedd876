using System.Xml.Linq;
using Clutchwright.Desk.Charts;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Web.Kin;
using Xunit;

namespace Clutchwright.Web.Tests.Kin;

public sealed class ChartSvgTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static readonly ChartAnswer Chart = new(
        "T 1/<a>",
        "Juniper & son",
        300,
        200,
        28,
        96,
        [
            Animal("T 1/<a>", Sex.Male, 60) with { IsAskedAbout = true, Filled = [1], Label = [new("T 1/<a>", LabelStyle.Tag), new("Clown", LabelStyle.Seen)], HasMoreParents = true },
            Animal("F", Sex.Female, 180) with { IsDead = true, IsHere = false, Filled = [0.25], MoreYoung = 3, Label = [new("50% het Clown", LabelStyle.Carried)] },
            new(SymbolMeaning.SeveralYoung, 120, 150) { Young = 7, Description = "7 more young" },
            new(SymbolMeaning.NotRecorded, 240, 60) { Description = "parent not recorded" },
            new(SymbolMeaning.Again, 20, 150) { Tag = "F", Sex = Sex.Female, Filled = [0.25], Description = "F, here a second time" },
        ],
        [
            new(StrokeUse.Again, [new(1, 2), new(3, 4), new(5, 6), new(7, 8)]),
            new(StrokeUse.Mating, [new(60, 60), new(180, 60)], IsDouble: true),
            new(StrokeUse.Descent, [new(120, 60), new(120, 136)], IsDashed: true),
        ],
        [new("clown", "Clown")],
        [],
        [new("T 1/<a>", null, Sex.Male, new AnimalWords([], ""), [], null, false, [Probability.Certain], 0)],
        0);

    [Fact]
    public void ForPage_EveryAnimal_IsALinkWithItsNameAndTitle()
    {
        var page = XElement.Parse(ChartSvg.ForPage(Chart));

        var links = page.Descendants(Svg + "a").Where(a => a.Attribute("class")!.Value.StartsWith("who", StringComparison.Ordinal)).ToList();
        Assert.Equal(["/stock/T%201%2F%3Ca%3E", "/stock/F", "/stock/F"], links.Select(a => a.Attribute("href")!.Value));

        // In SVG the title is the accessible name.
        Assert.Equal(["T 1/<a>, described", "F, described", "F, here a second time"], links.Select(a => a.Element(Svg + "title")!.Value));
        Assert.Equal("who asked", links[0].Attribute("class")!.Value);
        Assert.Equal("who away", links[1].Attribute("class")!.Value);
        Assert.Equal(
            ["/kin?animal=T%201%2F%3Ca%3E", "/kin?animal=F"],
            page.Descendants(Svg + "a").Where(a => a.Attribute("class")!.Value == "beyond").Select(a => a.Attribute("href")!.Value));
        Assert.Equal("Pedigree of T 1/<a> Juniper & son", page.Element(Svg + "title")!.Value);
        Assert.NotNull(page.Element(Svg + "desc"));
        Assert.DoesNotContain("style=", page.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void ForFile_IsAWholeDrawingOfItsOwn()
    {
        var text = ChartSvg.ForFile(Chart);

        var file = XElement.Parse(text);
        Assert.Empty(file.Descendants(Svg + "a"));
        Assert.DoesNotContain("class=", text, StringComparison.Ordinal);
        Assert.DoesNotContain("var(", text, StringComparison.Ordinal);
        Assert.All(file.Descendants(Svg + "path"), p => Assert.True(p.Attribute("fill") is not null));
    }

    [Fact]
    public void ForPage_KinAndPossibleSireAndDeath_HaveTheirLines()
    {
        var paths = XElement.Parse(ChartSvg.ForPage(Chart)).Descendants(Svg + "path").Select(p => (p.Attribute("class")!.Value, p.Attribute("d")!.Value)).ToList();

        Assert.Contains(("kin", "M60 60L180 60"), paths);
        Assert.Contains(("between", "M60 60L180 60"), paths);
        Assert.Contains(("line possible", "M120 60L120 136"), paths);
        Assert.Contains(("again", "M1 2C3 4 5 6 7 8"), paths);
        Assert.Contains(("line", "M162 78L198 42"), paths);
        Assert.Single(paths, p => p.Item1 == "arrow");
    }

    [Theory]
    [InlineData(0.5, "M46 46L46 74L60 74L60 46Z")]
    [InlineData(1, "M46 46L46 74L74 74L74 46Z")]
    [InlineData(0.25, "M46 46L46 74L53 74L53 46Z")]
    public void Band_OfASquare_IsFilledFromTheLeft(double share, string path) =>
        Assert.Equal(path, BandShape.Of(Sex.Male, 60, 60, 14, -14, 14, share));

    [Theory]
    [InlineData(Sex.Female)]
    [InlineData(null)]
    public void Band_OfACircleOrDiamond_StaysInside(Sex? sex)
    {
        var points = BandShape.Of(sex, 0, 0, 10, -10, 10, 0.5).Trim('M', 'Z').Split('L')
            .Select(p => p.Split(' ').Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture)).ToArray()).ToList();

        Assert.All(points, p => Assert.True(sex is null ? Math.Abs(p[0]) + Math.Abs(p[1]) < 10.02 : (p[0] * p[0]) + (p[1] * p[1]) < 100.5));
        Assert.All(points, p => Assert.True(p[0] <= 0.001));
    }

    private static ChartSymbolLine Animal(string tag, Sex sex, double x) => new(SymbolMeaning.Animal, x, 60) { Tag = tag, Sex = sex, Description = $"{tag}, described" };
}
