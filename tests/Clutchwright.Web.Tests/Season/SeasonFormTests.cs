using System.Text.Json.Nodes;
using Clutchwright.Web.Season;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;
using Xunit;

namespace Clutchwright.Web.Tests.Season;

public sealed class SeasonFormTests
{
    private const string Everything = """
        {
          "on": "2026-10-01",
          "goals": [
            { "name": "golden", "want": "Enchi Clown", "weight": 10, "least": 0.75 },
            { "holdback": "0.1 Clown het Pied", "atLeast": 2, "weight": 4, "route": "01a21a2dc8137f46abebfae079b0aae6" },
            { "prove": "T-301", "gene": "Clown", "least": 0.5 },
            { "expect": "Piebald", "weight": 0.1 },
            { "name": "sales", "value": { "each": 50, "Clown": 250 }, "weight": 0.0001 }
          ],
          "limits": { "matingsPerMale": 3, "clutches": 14, "hatchlings": 60, "inbreeding": 0.125, "meanInbreeding": 0.06, "restMonths": 12 },
          "animals": { "T-112": { "leaveOut": true }, "T-113": { "hold": "off her food", "massGrams": 1400 }, "T-1": { "matings": 2, "use": true }, "T-2": { "lastClutch": "2026-05-01" } },
          "pin": [ { "sire": "T-205", "dam": "T-210" } ],
          "ban": [ { "sire": "T-101", "dam": "T-102", "because": "done in 2020" } ],
          "lift": [ { "sire": "T-7", "dam": "T-8", "because": "known to me" } ],
          "tradeOff": ["golden", "sales"],
          "note": "a note"
        }
        """;

    [Fact]
    public void Read_EveryPartOfAGoalsFile_ComesBack()
    {
        var form = SeasonGoals.Read(Everything);

        var written = JsonNode.Parse(SeasonGoals.Write(form).Content.Span)!;

        // Names that were left out are written out.
        var expected = JsonNode.Parse(Everything)!;
        expected["goals"]![1]!["name"] = "2 0.1 Clown het Pied";
        expected["goals"]![2]!["name"] = "T-301: Clown";
        expected["goals"]![3]!["name"] = "Piebald";
        Assert.True(JsonNode.DeepEquals(expected, written), written.ToJsonString());
    }

    [Fact]
    public void Link_OfAnyForm_ReadsBackTheSame()
    {
        var form = SeasonGoals.Read(Everything) with { Year = "2027", From = "abc" };

        var again = SeasonForm.Read(Query(form.Link));

        Assert.True(SeasonGoals.IsSame(form, again));
        Assert.Equal(("2027", "abc", true), (again.Year, again.From, again.IsDraft));
        Assert.Equal(form.Link, again.Link);
    }

    [Theory]
    [InlineData("Clown", "want", "Clown", null, null)]
    [InlineData("Enchi Clown*10", "want", "Enchi Clown", "10", null)]
    [InlineData("Enchi Clown*10*2", "want", "Enchi Clown", "10", "2")]
    [InlineData("holdback|0.1 Clown**3", "holdback", "0.1 Clown", null, "3")]
    [InlineData("prove|T-1: Clown", "prove", "T-1: Clown", null, null)]
    public void Read_GoalOfTheAddress_IsUnderstood(string text, string kind, string want, string? weight, string? count)
    {
        var row = SeasonGoalRow.Read(text);

        Assert.Equal((kind, want, weight, count), (row.Kind, row.Want, row.Weight, row.Count));
        Assert.Equal(text, row.ToString());
    }

    [Fact]
    public void Read_RowsOfTheForm_AreGoalsAnimalsAndALift()
    {
        var form = SeasonForm.Read(Query(
            "/season?draft=yes&kind1=expect&want1=Clown&count1=1&weight1=0.2&kind2=want&want2=&animal1=T-1&what1=hold&value1=mites&animal2=&what2=hold&lift-sire=A&lift-dam=B&lift-why=mine&trade-for=1&trade-of=2"));

        Assert.Equal(("expect", "Clown"), (Assert.Single(form.Goals).Kind, form.Goals[0].Want));
        Assert.Equal(new SeasonAnimalRow("T-1", "hold", "mites"), Assert.Single(form.Animals));
        Assert.Equal(new SeasonCouple("A", "B", "mine"), Assert.Single(form.Lifted));
        Assert.Equal("2|1", form.TradeOff);
    }

    [Theory]
    [InlineData("season, goals[1].want", "want1")]
    [InlineData("season, goals[1].atLeast", "count1")]
    [InlineData("season, goals[1].weight", "weight1")]
    [InlineData("season, goals[1].least", "floor1")]
    [InlineData("season, limits.inbreeding", "inbreeding")]
    [InlineData("season, limits.meanInbreeding", "mean-inbreeding")]
    [InlineData("season, animals.T-9.massGrams", "animal1")]
    [InlineData("season, on", "on")]
    [InlineData("season, pin[1].sire", null)]
    public void FieldOf_Problem_IsTheFieldItStandsIn(string where, string? field)
    {
        var form = new SeasonForm { Goals = [new("Clown")], Animals = [new("T-9", "massGrams", "x")] };

        Assert.Equal(field, form.FieldOf(new(where, "wrong")));
    }

    [Fact]
    public void Pin_BannedPair_IsPinnedAndNoLongerBanned()
    {
        var form = new SeasonForm { Banned = [new("A", "B", "done")] };

        var pinned = form.Pin("a", "b");

        Assert.True(pinned.IsPinned("A", "B"));
        Assert.False(pinned.IsBanned("A", "B"));
        Assert.False(pinned.Free("A", "B").IsPinned("A", "B"));
    }

    private static QueryCollection Query(string address) => new(QueryHelpers.ParseQuery(address[address.IndexOf('?', StringComparison.Ordinal)..]));
}
