using Clutchwright.Desk.Sheets;
using Clutchwright.Desk.Words;
using Clutchwright.Web.Sheets;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;
using Xunit;

namespace Clutchwright.Web.Tests.Sheets;

public sealed class SheetsFormTests
{
    [Fact]
    public void Link_OfWhatWasRead_IsReadAsTheSame()
    {
        var form = Read(("sheet", "sale"), ("tag", "T 1/2"), ("tag", "T&3"), ("supplier", "A. Keeper"), ("source", "C"), ("find", "Clown"));

        var again = Read([.. QueryOf(form.Link("/sheets"))]);

        Assert.Equal(("sale", "A. Keeper", "C", "Clown"), (again.Kind, again["supplier"], again["source"], again["find"]));
        Assert.Equal(["T 1/2", "T&3"], again.Tags);
    }

    [Fact]
    public void Read_Nonsense_IsLabels()
    {
        var form = Read(("sheet", "poster"), ("tag", " "), ("tag", "A"), ("tag", "a"));

        Assert.Equal("label", form.Kind);
        Assert.Equal(["A"], form.Tags);
    }

    [Fact]
    public void Labels_CodeAsked_HoldsWordsLinkOrNothing()
    {
        Assert.Equal((true, null), (Read(("link", "http://h")).Labels().WithCode, Read(("link", "http://h")).Labels().Link));
        Assert.Equal("http://h", Read(("link", "http://h"), ("code", "link")).Labels().Link);
        Assert.False(Read(("code", "none")).Labels().WithCode);
    }

    [Fact]
    public void Sheets_GenerationsNotANumber_IsAProblem()
    {
        var problems = new List<AskedWrongly>();

        Assert.Equal(SheetKind.Lineage, Read(("sheet", "lineage"), ("generations", "many")).Sheets(problems).Kind);
        Assert.Equal("generations", Assert.Single(problems).Where);
    }

    private static SheetsForm Read(params (string Name, string Value)[] query) => SheetsForm.Read(new QueryCollection(
        query.GroupBy(q => q.Name).ToDictionary(g => g.Key, g => new StringValues([.. g.Select(q => q.Value)]))));

    private static IEnumerable<(string Name, string Value)> QueryOf(string link) => link.Split('?')[1].Split('&')
        .Select(p => (p.Split('=')[0], Uri.UnescapeDataString(p.Split('=')[1])));
}
