using Clutchwright.Catalogue.TradeTexts;
using Xunit;

namespace Clutchwright.Catalogue.Tests.TradeTexts;

public sealed class TradeTextSuggestTests
{
    [Theory]
    [InlineData("Cl", "Clown")]
    [InlineData("1.0 Pastel cl", "Clown")]
    [InlineData("Black Pa", "Black Pastel")]
    [InlineData("Black ", "Black Pastel")]
    [InlineData("1.0 bl p", "Black Pastel")]
    [InlineData("66% ", "het")]
    [InlineData("66% p", "possible")]
    [InlineData("Pa", "Pastel")]
    [InlineData("bumb", "Bumblebee")]
    [InlineData("het P", "Pied")]
    [InlineData("Super M", "Super Mojave")]
    [InlineData("visual C", "Clown")]
    [InlineData("male maker ", "Banana")]
    [InlineData("Mojave/L", "Lesser")]
    [InlineData("doub", "double het")]
    public void Suggest_BeginningOfAName_OffersItFirst(string text, string first) =>
        Assert.Equal(first, SampleSpecies.Trade.Suggest(text, text.Length)[0].Text);

    [Fact]
    public void Suggest_AfterHet_OffersOnlyGenesThatCanBeCarriedUnseen() =>
        Assert.Equal(
            ["Clown", "Albino", "Candy", "Pied", "Left"],
            SampleSpecies.Trade.Suggest("1.0 het ", 8).Select(c => c.Text));

    [Fact]
    public void Suggest_CaretInsideAText_ReplacesTheWordItStandsIn()
    {
        const string Text = "Pastel Clo het Pied";

        var completion = SampleSpecies.Trade.Suggest(Text, 9)[0];

        Assert.Equal(("Clown", 7, 3), (completion.Text, completion.Start, completion.Length));
        Assert.Equal(
            "Pastel Clown het Pied",
            Text.Remove(completion.Start, completion.Length).Insert(completion.Start, completion.Text));
    }

    [Fact]
    public void Suggest_OtherSpelling_SaysWhatItIsFor()
    {
        var completion = SampleSpecies.Trade.Suggest("be", 2).First(c => c.Text == "BEL");

        Assert.Equal("Blue-eyed White", completion.For);
    }

    [Theory]
    [InlineData("kitten", "sitting", 3)] // the textbook pair of Levenshtein's distance
    [InlineData("clwon", "clown", 1)] // a swap of neighbours is one step (Damerau 1964)
    [InlineData("ca", "abc", 3)] // optimal string alignment, where the unrestricted distance is 2
    [InlineData("", "abc", 3)]
    public void Distance_Texts_IsTheFewestSteps(string a, string b, int expected)
    {
        Assert.Equal(expected, Spelling.Distance(a, b, most: 9));
        Assert.Equal(expected, Spelling.Distance(b, a, most: 9));
    }
}
