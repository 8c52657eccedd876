using System.IO.Compression;
using Xunit;

namespace Clutchwright.Cli.Tests.Leaving;

/// <summary><c>book export</c> and <c>book import</c>: leaving with everything, and coming back.</summary>
public sealed class WholeBookCommandTests
{
    private const string Animals = "id,sex,sire,dam,hatched,seen\nM1,m,,,2018,Amber\nF1,f,,,2018,Thorn\nK1,f,M1,F1,2024-07-01,normal\n";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("book.zip")]
    [InlineData("book.json")]
    public async Task Export_ThenImportElsewhere_HoldsTheSame(string name)
    {
        using var data = await FilledAsync();
        var file = Path.Combine(data.Path, name);
        var left = await RunAsync(data, "book", "export", file, "--json");
        using var other = new DataFolder();

        var shown = await RunAsync(other, "book", "import", file, "--json");
        var before = await RunAsync(other, "stock", "list", "--json");
        var done = await RunAsync(other, "book", "import", file, "--yes", "--who", "Keeper");
        var history = await RunAsync(other, "stock", "history");
        var again = Path.Combine(other.Path, name);
        await RunAsync(other, "book", "export", again);

        Assert.Equal((ExitCode.Answered, string.Empty), (left.Code, left.Error));
        Assert.Equal((3, 0), ((int)left.Json["counts"]!["animals"]!, (int)left.Json["pictures"]!));
        Assert.Equal((3, true, false), ((int)shown.Json["counts"]!["animals"]!, (bool)shown.Json["empty"]!, (bool)shown.Json["written"]!));
        Assert.Equal(0, (int)before.Json["total"]!);
        Assert.Equal((ExitCode.Answered, string.Empty), (done.Code, done.Error));
        Assert.Contains("Everything came back. The book was empty before.", done.Output, StringComparison.Ordinal);
        Assert.Contains($"Came back with everything from {name}", history.Output, StringComparison.Ordinal);
        Assert.Equal(await File.ReadAllBytesAsync(file, Cancel), await File.ReadAllBytesAsync(again, Cancel));
    }

    [Fact]
    public async Task Import_BookThatIsNotEmpty_NeedsToBeReplacedAndIsBackedUp()
    {
        using var data = await FilledAsync();
        var file = Path.Combine(data.Path, "book.zip");
        await RunAsync(data, "book", "export", file);
        await RunAsync(data, "stock", "note", "M1", "noted", "--text", "sulks", "--who", "Keeper");

        var shown = await RunAsync(data, "book", "import", file);
        var refused = await RunAsync(data, "book", "import", file, "--yes");
        var done = await RunAsync(data, "book", "import", file, "--yes", "--replace", "--json");
        var log = await RunAsync(data, "stock", "log", "--json");
        await RunAsync(data, "book", "restore", (string)done.Json["before"]!["file"]!, "--yes");
        var logBack = await RunAsync(data, "stock", "log", "--json");

        Assert.Contains("It is not empty.", shown.Output, StringComparison.Ordinal);
        Assert.Equal(
            (ExitCode.AskedWrongly, "The book is not empty: it holds 3 animals and 2 deeds. Fill an empty book, or say that all it holds is to be replaced; it is backed up first. --replace does that.\n"),
            (refused.Code, refused.Error));
        Assert.True((bool)done.Json["written"]!);
        Assert.Empty(log.Json["happenings"]!.AsArray());
        Assert.Single(logBack.Json["happenings"]!.AsArray());
    }

    [Fact]
    public async Task Import_FileThatIsWrong_SaysWhereInOneLine()
    {
        using var data = await FilledAsync();
        var file = Path.Combine(data.Path, "book.json");
        await RunAsync(data, "book", "export", file);
        var text = await File.ReadAllTextAsync(file, Cancel);
        var wrong = data.Write("wrong.json", text.Replace("\"sex\":\"male\"", "\"sex\":3", StringComparison.Ordinal));
        var orphan = data.Write("orphan.json", text.Replace("\"tag\":\"M1\"", "\"tag\":\"F1\"", StringComparison.Ordinal));
        var newer = data.Write("newer.json", text.Replace("\"version\": 1", "\"version\": 2", StringComparison.Ordinal));
        using var other = new DataFolder();

        var said = new List<(int Code, string Error)>();
        foreach (var path in new[] { wrong, orphan, newer, data.Write("snake.zip", "a picture") })
        {
            var run = await RunAsync(other, "book", "import", path, "--yes");
            said.Add((run.Code, run.Error));
        }

        Assert.All(said, s => Assert.Equal(ExitCode.AskedWrongly, s.Code));
        Assert.Matches(@"^wrong\.json, line \d+, animals\[\d\]\.sex: the value is not of the kind that belongs here\n$", said[0].Error);
        Assert.Matches(@"^orphan\.json, animals\[\d\] \(F1\): Another animal has the id F1\. Ids differ by more than upper and lower case;", said[1].Error);
        Assert.Equal("newer.json: it is of version 2, made by a newer program; this one reads version 1\n", said[2].Error);
        Assert.StartsWith("snake.zip, line 1: it is no JSON", said[3].Error, StringComparison.Ordinal);
        Assert.Equal(0, (int)(await RunAsync(other, "stock", "list", "--json")).Json["total"]!);
    }

    [Fact]
    public async Task Export_Pedigree_HasItsCompanions()
    {
        using var data = await FilledAsync();

        var run = await RunAsync(data, "book", "export", Path.Combine(data.Path, "kin.ped"), "--json");

        Assert.Equal(["kin.ped", "kin.map", "kin.phe", "kin.txt"], run.Json["files"]!.AsArray().Select(f => Path.GetFileName((string)f!)));
        Assert.StartsWith("book F1 0 0 2 0", await File.ReadAllTextAsync(Path.Combine(data.Path, "kin.ped"), Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Export_WhatCannotBe_SaysSo()
    {
        using var data = await FilledAsync();
        var taken = data.Write("taken.zip", "mine");

        var wrong = await RunAsync(data, "book", "export", Path.Combine(data.Path, "book.xls"));
        var there = await RunAsync(data, "book", "export", taken);
        var none = await RunAsync(data, "book", "import", "nowhere.zip", "--yes");

        Assert.Equal((ExitCode.AskedWrongly, "file: 'book.xls' does not say what to write; did you mean book.zip, book.json or book.ped?\n"), (wrong.Code, wrong.Error));
        Assert.Equal((ExitCode.CouldNotBeDone, $"{taken} is there already. Give the file another name.\n"), (there.Code, there.Error));
        Assert.Equal((ExitCode.CouldNotBeDone, "There is no file nowhere.zip.\n"), (none.Code, none.Error));
        Assert.Equal("mine", await File.ReadAllTextAsync(taken, Cancel));
    }

    [Fact]
    public async Task Export_Zip_HoldsWhatTheReadmeSays()
    {
        using var data = await FilledAsync();
        var file = Path.Combine(data.Path, "book.zip");
        await RunAsync(data, "book", "export", file);

        await using var zip = await ZipFile.OpenReadAsync(file, Cancel);
        using var readme = new StreamReader(await zip.GetEntry("README.txt")!.OpenAsync(Cancel));
        var said = await readme.ReadToEndAsync(Cancel);

        Assert.All(zip.Entries.Where(e => e.FullName != "README.txt"), e => Assert.Contains(e.FullName, said, StringComparison.Ordinal));
    }

    private static async Task<DataFolder> FilledAsync()
    {
        var data = new DataFolder();
        await RunAsync(data, "stock", "import", data.Write("animals.csv", Animals), "--who", "Keeper");
        return data;
    }

    private static Task<Run> RunAsync(DataFolder data, params string[] args) => Run.MadeUpAsync([.. args, "--data", data.Path]);
}
