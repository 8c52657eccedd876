using Clutchwright.Desk.Words;
using Clutchwright.Web.Crosses;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;
using Xunit;

namespace Clutchwright.Web.Tests.Crosses;

public sealed class CrossFormTests
{
    [Theory]
    [InlineData("90", 0.9)]
    [InlineData("90%", 0.9)]
    [InlineData("0.9", 0.9)]
    [InlineData("87,5 %", 0.875)]
    [InlineData("1%", 0.01)]
    public void Question_Fertility_IsReadAsPeopleWriteIt(string text, double share)
    {
        var problems = new List<AskedWrongly>();

        var question = (new CrossForm { Sire = "a", Dam = "b", Fertility = text }).Question(problems);

        Assert.Empty(problems);
        Assert.Equal(share, question.Clutch.Fertility!.Value, 12);
    }

    [Fact]
    public void Question_NumbersThatAreNone_AreEachNamed()
    {
        var problems = new List<AskedWrongly>();

        _ = (new CrossForm { Eggs = "many", AtLeast = "0", Fertility = "120", Hatch = "-3" }).Question(problems);

        Assert.Equal(["eggs", "atleast", "fertility", "hatch"], problems.Select(p => p.Where));
    }

    [Fact]
    public void Link_OfWhatWasRead_AsksTheSame()
    {
        const string address = "/cross?sire=1.0%20het%20Clown&dam=D%2F1%20%26%20co&want=Clown&want=Pied&eggs=6&atleast=2";

        var form = CrossForm.Read(new QueryCollection(QueryHelpers.ParseQuery(address[6..])));

        Assert.Equal(address, form.Link());
    }
}
