using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Clutchwright.Desk.Animals;
using Clutchwright.Web.Tests.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Clutchwright.Web.Tests.Leaving;

/// <summary>Leaving and coming back through the page of the book, as a browser without scripts sends its forms.</summary>
public sealed partial class LeavingTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("clutchwright-leaving-").FullName;
    private WebApplication _app = default!;
    private HttpClient _client = default!;
    private string _token = string.Empty;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _app = ClutchwrightWeb.Build(["--urls", "http://127.0.0.1:0"], HostFixture.CatalogueFolder(), _folder);
        await _app.StartAsync(Cancel);
        _client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(_app.Urls.First()), Timeout = TimeSpan.FromMinutes(3) };
        _token = Token().Match(await GetAsync("/book")).Groups["token"].Value;
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        await _app.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Theory]
    [InlineData("zip", "application/zip", "clutchwright-20", ".zip")]
    [InlineData("json", "application/json", "clutchwright-20", ".json")]
    [InlineData("ped", "application/zip", "clutchwright-pedigree-20", ".zip")]
    public async Task Leave_EachKind_IsSentAndNothingStaysBehind(string what, string type, string begins, string ends)
    {
        await AddAsync("A");

        using var sent = await PostAsync("/book/leave", ("what", what));
        var file = await sent.Content.ReadAsByteArrayAsync(Cancel);

        Assert.Equal((HttpStatusCode.OK, type), (sent.StatusCode, sent.Content.Headers.ContentType!.MediaType));
        Assert.StartsWith(begins, sent.Content.Headers.ContentDisposition!.FileName, StringComparison.Ordinal);
        Assert.EndsWith(ends, sent.Content.Headers.ContentDisposition.FileName, StringComparison.Ordinal);
        Assert.Equal(file.Length, sent.Content.Headers.ContentLength);
        if (ends == ".zip")
        {
            using var zip = new ZipArchive(new MemoryStream(file));
            Assert.Contains(zip.Entries, e => e.Name == "pedigree.ped");
        }

        // It goes when the answer is complete, which the client may know a moment earlier.
        for (var tries = 0; tries < 100 && Left().Length > 0; tries++)
        {
            await Task.Delay(50, Cancel);
        }

        Assert.Empty(Left());
    }

    [Fact]
    public async Task Return_IntoAnEmptyBook_IsShownThenDone()
    {
        await AddAsync("A");
        using var sent = await PostAsync("/book/leave", ("what", "zip"));
        var file = await sent.Content.ReadAsByteArrayAsync(Cancel);
        await _app.Services.GetRequiredService<UndoDeed>().RunAsync(1, "Keeper", Cancel);

        using var upload = await UploadAsync(file, "my book.zip");
        var preview = await GetAsync(upload.Headers.Location!.OriginalString);
        var done = await PostAsync(
            "/book/return", ("mark", Hidden(preview, "mark")), ("upload", Hidden(preview, "upload")), ("called", Hidden(preview, "called")), ("replace", Hidden(preview, "replace")));
        var page = await GetAsync(done.Headers.Location!.OriginalString);

        // A book in which all was undone has a history still, which gives way.
        Assert.Contains("my book.zip holds", preview, StringComparison.Ordinal);
        Assert.Contains("All of this gives way", preview, StringComparison.Ordinal);
        Assert.Contains("Everything came back.", page, StringComparison.Ordinal);
        Assert.Equal(["A"], (await _app.Services.GetRequiredService<ListAnimals>().RunAsync(new AnimalsQuestion(), Cancel)).Animals.Select(a => a.Tag));
        Assert.Empty(Directory.GetFiles(Path.Combine(_folder, "uploads")));
        Assert.Contains("Came back with everything from my book.zip", WebUtility.HtmlDecode(await GetAsync("/book")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Return_FileThatIsWrong_SaysWhereAndWritesNothing()
    {
        await AddAsync("A");

        using var upload = await UploadAsync("{\"format\": \"clutchwright-book\", \"version\": 7}"u8.ToArray(), "book.json");
        var preview = WebUtility.HtmlDecode(await GetAsync(upload.Headers.Location!.OriginalString));

        Assert.Contains("book.json: it is of version 7, made by a newer program; this one reads version 1.", preview, StringComparison.Ordinal);
        Assert.DoesNotContain("Replace the book", preview, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("upload=00000000000000000000000000000000")]
    [InlineData("upload=../x")]
    [InlineData("")]
    public async Task Return_WhatIsNotThere_SaysSo(string query) =>
        Assert.Contains("is not there any more", await GetAsync($"/book/return?{query}"), StringComparison.Ordinal);

    [Fact]
    public async Task Leave_WithoutTheToken_IsRefused()
    {
        using var response = await _client.PostAsync(new Uri("/book/leave", UriKind.Relative), new FormUrlEncodedContent([new("what", "zip")]), Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
    }

    private string[] Left() => Directory.GetFileSystemEntries(Path.Combine(_folder, "leaving"));

    private async Task AddAsync(string tag) =>
        Assert.Empty((await _app.Services.GetRequiredService<SaveAnimal>().RunAsync(new AnimalForm { Tag = tag }, null, "Keeper", Cancel)).Problems);

    private async Task<string> GetAsync(string path)
    {
        using var response = await _client.GetAsync(new Uri(path, UriKind.Relative), Cancel);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return await response.Content.ReadAsStringAsync(Cancel);
    }

    private Task<HttpResponseMessage> PostAsync(string path, params (string Name, string Value)[] fields) =>
        _client.PostAsync(
            new Uri(path, UriKind.Relative),
            new FormUrlEncodedContent([new("__RequestVerificationToken", _token), .. fields.Select(f => new KeyValuePair<string, string>(f.Name, f.Value))]),
            Cancel);

    private async Task<HttpResponseMessage> UploadAsync(byte[] file, string name)
    {
        using var content = new ByteArrayContent(file);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        using var form = new MultipartFormDataContent { { new StringContent(_token), "__RequestVerificationToken" }, { content, "file", name } };
        var response = await _client.PostAsync(new Uri("/book/return/upload", UriKind.Relative), form, Cancel);
        Assert.Equal(HttpStatusCode.Redirect, response.StatusCode);
        return response;
    }

    private static string Hidden(string page, string name) => WebUtility.HtmlDecode(
        Regex.Match(page, $"name=\"{name}\" value=\"([^\"]*)\"", RegexOptions.None, TimeSpan.FromSeconds(5)).Groups[1].Value);

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"(?<token>[^\"]+)\"")]
    private static partial Regex Token();
}
