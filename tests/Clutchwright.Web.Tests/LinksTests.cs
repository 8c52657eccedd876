using Xunit;

namespace Clutchwright.Web.Tests;

public sealed class LinksTests
{
    [Theory]
    [InlineData("T-101", "/stock/T-101")]
    [InlineData("24/03", "/stock/24%2F03")]
    [InlineData("import", "/stock/animal/import")]
    [InlineData("NEW", "/stock/animal/NEW")]
    [InlineData("animal", "/stock/animal/animal")]
    [InlineData("Moved", "/stock/animal/Moved")]
    [InlineData("a b&c", "/stock/a%20b%26c")]
    public void Animal_AnyTag_HasAnAddressOfItsOwn(string tag, string address) => Assert.Equal(address, Links.Animal(tag));

    [Fact]
    public void With_ValuesThatAreEmpty_LeavesThemOut() =>
        Assert.Equal("/stock?find=het%20Pied", Links.With("/stock", ("find", "het Pied"), ("sex", null), ("status", "")));
}
