using System.Net;
using System.Text.RegularExpressions;
using Clutchwright.Web.Hosting;
using Xunit;

namespace Clutchwright.Web.Tests.Hosting;

public sealed partial class HostTests(HostFixture host) : IClassFixture<HostFixture>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/", HttpStatusCode.OK)]
    [InlineData("/stock", HttpStatusCode.OK)]
    [InlineData("/healthz", HttpStatusCode.OK)]
    [InlineData("/stock/nobody", HttpStatusCode.NotFound)]
    [InlineData("/stock/nobody/edit", HttpStatusCode.NotFound)]
    [InlineData("/catalogue/nothing", HttpStatusCode.NotFound)]
    [InlineData("/no/such/page", HttpStatusCode.NotFound)]
    [InlineData("/cross?eggs=x&atleast=-1&fertility=%25&most=1e9", HttpStatusCode.OK)]
    [InlineData("/stock?page=-4&order=x&sex=x&status=x", HttpStatusCode.OK)]
    [InlineData("/stock?deed=99999999999999999999", HttpStatusCode.OK)]
    [InlineData("/stock/history?before=x", HttpStatusCode.OK)]
    [InlineData("/kin", HttpStatusCode.OK)]
    [InlineData("/kin?animal=nobody&up=x&down=-1&gene=%F0%9F%A5%9A&most=1e9&show=x", HttpStatusCode.OK)]
    [InlineData("/kin/pairs?sire=nobody&dam=x&males=-3&females=1e9", HttpStatusCode.OK)]
    [InlineData("/kin/founders", HttpStatusCode.OK)]
    [InlineData("/kin/chart.svg", HttpStatusCode.OK)]
    [InlineData("/sheets", HttpStatusCode.OK)]
    [InlineData("/sheets?sheet=x&tag=nobody&size=-1&start=x&page=x&code=link&link=x&generations=x&eggs=x&year=x", HttpStatusCode.OK)]
    [InlineData("/sheets?sheet=clutch&sire=%F0%9F%A5%9A&dam=x&laid=x", HttpStatusCode.OK)]
    [InlineData("/sheets/print.pdf?tag=nobody", HttpStatusCode.BadRequest)]
    [InlineData("/sheets/print.pdf?sheet=season", HttpStatusCode.OK)]
    [InlineData("/kin/chart.svg?animal=nobody", HttpStatusCode.BadRequest)]
    [InlineData("/pairs?want=%F0%9F%A5%9A", HttpStatusCode.OK)]
    public async Task Get_AnyAddress_AnswersUnderTheStrictPolicy(string path, HttpStatusCode expected)
    {
        using var answer = await host.Client.GetAsync(path, Cancel);

        Assert.Equal(expected, answer.StatusCode);
        Assert.Equal([SecurityHeaders.ContentSecurityPolicy], answer.Headers.GetValues("Content-Security-Policy"));
        Assert.Equal(["nosniff"], answer.Headers.GetValues("X-Content-Type-Options"));
        Assert.DoesNotContain("unsafe", SecurityHeaders.ContentSecurityPolicy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_UnderAnotherName_IsRefused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/") { Headers = { Host = "rebound.example" } };

        using var answer = await host.Client.SendAsync(request, Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Theory]
    [InlineData("/deeds/demo")]
    [InlineData("/deeds/undo")]
    [InlineData("/deeds/bin")]
    [InlineData("/deeds/withdraw")]
    [InlineData("/theme")]
    [InlineData("/stock/new")]
    public async Task Post_WithoutTheFormsToken_IsRefused(string path)
    {
        using var form = new FormUrlEncodedContent([new("id", "1"), new("tag", "A"), new("theme", "dark")]);

        using var answer = await host.Client.PostAsync(path, form, Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("Nothing has changed", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.DoesNotContain(answer.Headers, h => h.Key == "Set-Cookie" && h.Value.Any(v => v.StartsWith("clutchwright-theme", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("//elsewhere.example/")]
    [InlineData("/\\elsewhere.example/")]
    [InlineData("https://elsewhere.example/")]
    [InlineData("")]
    public async Task Post_BackToElsewhere_GoesToTheStart(string back)
    {
        using var answer = await PostAsync("/theme", [new("theme", "dark"), new("back", back)]);

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Equal("/", answer.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task Post_DeedThatCannotBeUndone_SaysWhy()
    {
        using var answer = await PostAsync("/deeds/undo", [new("id", "4711"), new("back", "/stock")]);

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("Not done", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_Assets_AreKeptForGoodUnderTheirDigest()
    {
        var page = await host.Client.GetStringAsync("/", Cancel);
        var style = StyleAddress().Match(page).Groups[1].Value;

        using var answer = await host.Client.GetAsync(style, Cancel);
        using var old = await host.Client.GetAsync(style.Replace(style.Split('/')[2], "0123456789ab", StringComparison.Ordinal), Cancel);

        Assert.True(answer.Headers.CacheControl!.Public);
        Assert.Equal(TimeSpan.FromDays(365), answer.Headers.CacheControl.MaxAge);
        Assert.True(old.Headers.CacheControl!.NoCache);
    }

    [Fact]
    public async Task Get_Style_FetchesNothingFromElsewhere()
    {
        var page = await host.Client.GetStringAsync("/", Cancel);
        var address = StyleAddress().Match(page).Groups[1].Value;
        var style = await host.Client.GetStringAsync(address, Cancel);

        var fonts = FontAddress().Matches(style).Select(m => m.Groups[1].Value).Distinct().ToList();

        Assert.Equal(8, fonts.Count);
        foreach (var font in fonts)
        {
            using var answer = await host.Client.GetAsync(new Uri(new Uri(host.Address, address), font), Cancel);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal("font/woff2", answer.Content.Headers.ContentType!.MediaType);
        }

        Assert.DoesNotContain("http", style, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Get_Complete_GivesWhatToPutInAndWhere()
    {
        var answer = await host.Client.GetStringAsync("/complete?text=1.0%20het%20clow&caret=12", Cancel);

        Assert.Contains("{\"text\":\"Clown\",\"from\":8,\"length\":4,", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/complete")]
    [InlineData("/complete?text=a&caret=-7")]
    [InlineData("/complete?text=a&caret=many")]
    public async Task Get_CompleteAskedOddly_StillAnswersAList(string path) =>
        Assert.StartsWith("[", await host.Client.GetStringAsync(path, Cancel), StringComparison.Ordinal);

    [Fact]
    public async Task Get_InTheReadersCulture_WritesItsDecimals()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/cross?sire=1.0%20het%20Clown&dam=0.1%20het%20Clown&want=Clown&eggs=6");
        request.Headers.AcceptLanguage.ParseAdd("de-DE");

        using var answer = await host.Client.SendAsync(request, Cancel);

        // 1 - (3/4)^6 = 0.822021
        Assert.Contains("82,2%", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    private async Task<HttpResponseMessage> PostAsync(string path, List<KeyValuePair<string, string>> fields)
    {
        using var page = await host.Client.GetAsync("/stock/new", Cancel);
        var token = Token().Match(await page.Content.ReadAsStringAsync(Cancel)).Groups[1].Value;
        using var request = new HttpRequestMessage(HttpMethod.Post, path)
        {
            Content = new FormUrlEncodedContent([.. fields, new("__RequestVerificationToken", token)]),
        };
        request.Headers.Add("Cookie", page.Headers.GetValues("Set-Cookie").Select(c => c.Split(';')[0]));
        return await host.Client.SendAsync(request, Cancel);
    }

    [GeneratedRegex("rel=\"stylesheet\" href=\"([^\"]+)\"")]
    private static partial Regex StyleAddress();

    [GeneratedRegex(@"url\((fonts/[^)]+)\)")]
    private static partial Regex FontAddress();

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
