using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Backups;
using Clutchwright.Web.Tests.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Clutchwright.Web.Tests.Backups;

/// <summary>Backups through the page of the book, as a browser without scripts sends its forms.</summary>
public sealed partial class BookPageTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("clutchwright-book-").FullName;
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

    [Fact]
    public async Task BackUp_IntoTheFolder_IsListed()
    {
        await AddAsync("A");

        var made = await PostAsync("/book/backup", ("to", "folder"));
        var page = await GetAsync(made.Headers.Location!.OriginalString);

        Assert.Contains("was read back", page, StringComparison.Ordinal);
        Assert.Contains("Nothing was done since.", page, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(Path.Combine(_folder, "backups")));
    }

    [Fact]
    public async Task Restore_FileThatWasDownloaded_IsShownThenDone()
    {
        await AddAsync("A");
        using var download = await PostAsync("/book/backup", ("to", "download"));
        var file = await download.Content.ReadAsByteArrayAsync(Cancel);
        Assert.EndsWith("-by-hand.clutchwright", download.Content.Headers.ContentDisposition!.FileName, StringComparison.Ordinal);
        await AddAsync("B");
        await GetAsync("/stock");

        using var sent = await UploadAsync(file);
        var preview = await GetAsync(sent.Headers.Location!.OriginalString);
        Assert.Contains("1 deed would be lost", WebUtility.HtmlDecode(preview), StringComparison.Ordinal);
        var done = await PostAsync("/book/restore", ("mark", Hidden(preview, "mark")), ("upload", Hidden(preview, "upload")));

        Assert.StartsWith("/book?restored=clutchwright-", done.Headers.Location!.OriginalString, StringComparison.Ordinal);
        Assert.Contains("-before-restoring.clutchwright", await GetAsync(done.Headers.Location.OriginalString), StringComparison.Ordinal);
        Assert.Equal(["A"], (await _app.Services.GetRequiredService<ListAnimals>().RunAsync(new AnimalsQuestion(), Cancel)).Animals.Select(a => a.Tag));
        Assert.Empty(Directory.GetFiles(Path.Combine(_folder, "uploads")));
        Assert.Empty(Directory.GetDirectories(_folder, "restoring-*"));
    }

    [Fact]
    public async Task Restore_OneOfTheFolder_IsShown()
    {
        await AddAsync("A");
        var name = (await _app.Services.GetRequiredService<BackUp>().RunAsync(null, Cancel)).Value!.File;

        var page = await GetAsync($"/book/restore?name={Path.GetFileName(name)}");

        Assert.Contains("holds just this already", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("name=../clutchwright.db")]
    [InlineData("name=%2Fetc%2Fpasswd")]
    [InlineData("name=nowhere.clutchwright")]
    [InlineData("upload=00000000000000000000000000000000")]
    [InlineData("upload=../x")]
    [InlineData("")]
    public async Task Restore_WhatIsNoBackupOfTheFolder_IsNotThere(string query) =>
        Assert.Contains("not there any more", await GetAsync($"/book/restore?{query}"), StringComparison.Ordinal);

    /// <summary>Larger than any other form may be.</summary>
    [Fact]
    public async Task Upload_LargeFileThatIsNoBackup_IsRefusedInWords()
    {
        using var sent = await UploadAsync(new byte[40 * 1024 * 1024]);

        var page = WebUtility.HtmlDecode(await GetAsync(sent.Headers.Location!.OriginalString));

        Assert.Contains("The file is no backup of a book, or is damaged", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Upload_NoFile_SaysWhatToDo()
    {
        using var sent = await UploadAsync([]);

        Assert.Equal(HttpStatusCode.Conflict, sent.StatusCode);
        Assert.Contains("Choose the file of a backup.", await sent.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/book/backup")]
    [InlineData("/book/upload")]
    [InlineData("/book/restore")]
    [InlineData("/book/download")]
    public async Task Post_WithoutTheTokenOfAForm_IsNotTaken(string path)
    {
        using var content = new MultipartFormDataContent { { new StringContent("none"), "mark" }, { new StringContent("x"), "name" } };
        using var answer = await _client.PostAsync(new Uri(path, UriKind.Relative), content, Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task Check_BookInUse_IsSound()
    {
        await AddAsync("A");

        var page = await GetAsync("/book?check=1");

        Assert.Equal(3, Regex.Count(page, "<strong[^>]*>sound</strong>", RegexOptions.None, TimeSpan.FromSeconds(5)));
    }

    private static string Hidden(string page, string name) =>
        Regex.Match(page, $"name=\"{name}\" value=\"([^\"]+)\"", RegexOptions.None, TimeSpan.FromSeconds(5)).Groups[1].Value;

    private async Task AddAsync(string tag) =>
        Assert.Empty((await _app.Services.GetRequiredService<SaveAnimal>().RunAsync(new AnimalForm { Tag = tag }, null, "Keeper", Cancel)).Problems);

    private async Task<string> GetAsync(string path)
    {
        using var answer = await _client.GetAsync(new Uri(path, UriKind.Relative), Cancel);
        return await answer.Content.ReadAsStringAsync(Cancel);
    }

    private Task<HttpResponseMessage> PostAsync(string path, params (string Name, string Value)[] fields) =>
        _client.PostAsync(
            new Uri(path, UriKind.Relative),
            new FormUrlEncodedContent(fields.Append(("__RequestVerificationToken", _token)).Select(f => new KeyValuePair<string, string>(f.Item1, f.Item2))),
            Cancel);

    private async Task<HttpResponseMessage> UploadAsync(byte[] file)
    {
        using var part = new ByteArrayContent(file);
        part.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        using var form = new MultipartFormDataContent { { new StringContent(_token), "__RequestVerificationToken" }, { part, "file", "stick.clutchwright" } };
        return await _client.PostAsync(new Uri("/book/upload", UriKind.Relative), form, Cancel);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"(?<token>[^\"]+)\"")]
    private static partial Regex Token();
}
