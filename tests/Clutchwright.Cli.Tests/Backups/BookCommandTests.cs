using Clutchwright.Cli.Backups;
using Xunit;

namespace Clutchwright.Cli.Tests.Backups;

/// <summary><c>book</c>: backup, restore and check from the command line.</summary>
public sealed class BookCommandTests
{
    private const string Animals = "id,sex,sire,dam,hatched,seen\nM1,m,,,2018,Amber\nF1,f,,,2018,Thorn\nK1,f,M1,F1,2024-07-01,normal\n";

    [Fact]
    public async Task Backup_ThenRestoreElsewhere_HoldsTheSame()
    {
        using var data = await FilledAsync();
        var made = await RunAsync(data, "book", "backup", Path.Combine(data.Path, "b.clutchwright"), "--json");
        using var other = new DataFolder();

        var shown = await RunAsync(other, "book", "restore", File(made), "--json");
        var before = await RunAsync(other, "stock", "list", "--json");
        var done = await RunAsync(other, "book", "restore", File(made), "--yes", "--json");
        var after = await RunAsync(other, "book", "backup", "--json");

        Assert.Equal((ExitCode.Answered, string.Empty), (made.Code, made.Error));
        Assert.Equal(3, (int)made.Json["book"]!["counts"]!["animals"]!);
        Assert.Equal((false, 1, 0), ((bool)shown.Json["restored"]!, (int)shown.Json["deedsGained"]!, (int)shown.Json["deedsLost"]!));
        Assert.Equal(0, (int)before.Json["total"]!);
        Assert.True((bool)done.Json["restored"]!);
        Assert.Null(done.Json["before"]);
        Assert.Equal((string?)made.Json["book"]!["digest"], (string?)after.Json["book"]!["digest"]);
        Assert.Contains("clutchwright-20", File(after), StringComparison.Ordinal);
        Assert.EndsWith("-by-hand.clutchwright", File(after), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Restore_BookWentOn_SaysWhatIsLostAndKeepsIt()
    {
        using var data = await FilledAsync();
        var file = Path.Combine(data.Path, "b.clutchwright");
        await RunAsync(data, "book", "backup", file);
        await RunAsync(data, "stock", "note", "M1", "noted", "--text", "sulks", "--who", "Keeper");

        var shown = await RunAsync(data, "book", "restore", file);
        var done = await RunAsync(data, "book", "restore", file, "--yes", "--json");
        var log = await RunAsync(data, "stock", "log", "--json");
        var back = await RunAsync(data, "book", "restore", File(done, "before"), "--yes", "--json");
        var logBack = await RunAsync(data, "stock", "log", "--json");

        Assert.Contains("1 deed of the book would be lost, 0 deeds would come.", shown.Output, StringComparison.Ordinal);
        Assert.Contains("Keeper: Wrote of M1: noted: sulks", shown.Output, StringComparison.Ordinal);
        Assert.Contains("Nothing was written.", shown.Output, StringComparison.Ordinal);
        Assert.Empty(log.Json["happenings"]!.AsArray());
        Assert.Equal((ExitCode.Answered, string.Empty), (back.Code, back.Error));
        Assert.Single(logBack.Json["happenings"]!.AsArray());
    }

    [Fact]
    public async Task Book_WithoutAndWithABackup_SaysSo()
    {
        using var data = await FilledAsync();

        var without = await RunAsync(data, "book");
        await RunAsync(data, "book", "backup");
        var with = await RunAsync(data, "book");
        var json = await RunAsync(data, "book", "--json");

        Assert.Contains("There is none yet.", without.Output, StringComparison.Ordinal);
        Assert.Contains("Nothing was done since the latest of them.", with.Output, StringComparison.Ordinal);
        Assert.Contains("asked for", with.Output, StringComparison.Ordinal);
        Assert.Single(json.Json["backups"]!["files"]!.AsArray());
        Assert.Equal(3, (int)json.Json["book"]!["counts"]!["animals"]!);
    }

    [Fact]
    public async Task Check_SoundBook_IsSound()
    {
        using var data = await FilledAsync();

        var text = await RunAsync(data, "book", "check");
        var json = await RunAsync(data, "book", "check", "--json");

        Assert.Equal((ExitCode.Answered, string.Empty), (text.Code, text.Error));
        Assert.DoesNotContain("not sound", text.Output, StringComparison.Ordinal);
        Assert.True((bool)json.Json["sound"]!);
        Assert.Equal(3, json.Json["checks"]!.AsArray().Count);
    }

    [Fact]
    public async Task Restore_WhatIsNoBackup_CouldNotBeDone()
    {
        using var data = await FilledAsync();
        var picture = data.Write("snake.jpg", "a picture");

        var none = await RunAsync(data, "book", "restore", "nowhere.clutchwright", "--yes");
        var wrong = await RunAsync(data, "book", "restore", picture, "--yes");

        Assert.Equal((ExitCode.CouldNotBeDone, "There is no file nowhere.clutchwright.\n"), (none.Code, none.Error));
        Assert.Equal(ExitCode.CouldNotBeDone, wrong.Code);
        Assert.StartsWith($"{picture} is no backup of a book", wrong.Error, StringComparison.Ordinal);
        Assert.Single(wrong.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public async Task Backup_FileIsThere_CouldNotBeDone()
    {
        using var data = await FilledAsync();
        var taken = data.Write("taken", "mine");

        var run = await RunAsync(data, "book", "backup", taken);

        Assert.Equal(ExitCode.CouldNotBeDone, run.Code);
        Assert.Equal("mine", await System.IO.File.ReadAllTextAsync(taken, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("--backup-hour", "24")]
    [InlineData("--backup-hour", "noon")]
    [InlineData("--backup-keep", "7,5")]
    [InlineData("--backup-keep", "0,0,0")]
    public async Task Serve_BackupSettingThatWillNotDo_IsAskedWrongly(string option, string value)
    {
        var run = await Run.ShippedAsync("serve", option, value);

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.StartsWith($"{option}: '{value}'", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, 3)]
    [InlineData("0", 0)]
    [InlineData("23", 23)]
    [InlineData("off", null)]
    public void Read_Hour_IsAsSet(string? hour, int? read) => Assert.Equal(read, BackupVariables.Read("data", hour: hour).Hour);

    [Fact]
    public void Read_Keep_IsAsSet()
    {
        var settings = BackupVariables.Read("data", folder: "elsewhere", keep: "1, 2,3");

        Assert.Equal((1, 2, 3), (settings.Daily, settings.Weekly, settings.Monthly));
        Assert.Equal(Path.GetFullPath("elsewhere"), settings.Folder);
    }

    private static string File(Run run, string? part = null) => (string)(part is null ? run.Json : run.Json[part]!)["file"]!;

    private static async Task<DataFolder> FilledAsync()
    {
        var data = new DataFolder();
        await RunAsync(data, "stock", "import", data.Write("animals.csv", Animals), "--who", "Keeper");
        return data;
    }

    private static Task<Run> RunAsync(DataFolder data, params string[] args) => Run.MadeUpAsync([.. args, "--data", data.Path]);
}
