using System.IO.Compression;
using Xunit;

namespace Clutchwright.Cli.Tests.Importing;

/// <summary><c>clutch import</c>, <c>stock import-log</c> and <c>stock import-photos</c>, each from a look to what comes back.</summary>
public sealed class ImportCommandTests
{
    private const string Animals = "id,sex,hatched\nF1,f,2018\nM1,m,2018\n";

    [Fact]
    public async Task ClutchImport_File_IsShownTakenAndExportedTheSame()
    {
        using var data = new DataFolder();
        await RunAsync(data, "stock", "import", data.Write("animals.csv", Animals));
        var file = data.Write("clutches.csv", "id,dam,sire,laid,eggs,slugs,lost,tub\nK1,F1,M1,2024-05-01,6,1,2,left\n");

        var look = await RunAsync(data, "clutch", "import", file, "--dry-run");
        var taken = await RunAsync(data, "clutch", "import", file, "--json");
        var exported = await RunAsync(data, "clutch", "export");
        var again = await RunAsync(data, "clutch", "import", data.Write("again.csv", exported.Output), "--dry-run", "--json");

        Golden.Equal("clutch-import-dry-run.txt", look.Output, (data.Path, "DATA"));
        Assert.Equal((true, 1), ((bool)taken.Json["written"]!, (int)taken.Json["added"]!));
        Assert.Equal("id,dam,sire,laid,eggs,slugs,lost,mass_g,incubator,hatched,counted,young,notes\r\nK1,F1,M1,2024-05-01,6,1,2,,,,,,tub: left\r\n", exported.Output);
        Assert.True((bool)again.Json["rows"]![0]!["skipped"]!);
    }

    [Fact]
    public async Task ImportLog_MappingGivenOnce_IsRememberedAndSaid()
    {
        using var data = new DataFolder();
        await RunAsync(data, "stock", "import", data.Write("animals.csv", Animals));
        var first = await RunAsync(data, "stock", "import-log", data.Write("log.csv", "animal,date,Gramm\nF1,2024-05-01,\"1450,5\"\n"), "--map", "Gramm=mass_g");
        var second = await RunAsync(data, "stock", "import-log", data.Write("log2.csv", "date,animal,gramm\n2024-06-01,F1,1480\n"), "--json");
        var log = await RunAsync(data, "stock", "export-log");

        Assert.Equal((ExitCode.Answered, string.Empty), (first.Code, first.Error));
        Assert.NotNull((string?)second.Json["mappedAsOn"]);
        Assert.Equal("mass_g", (string?)second.Json["columns"]![2]!["field"]);
        Assert.Equal("animal,date,kind,amount,mate,clutch,text\r\nF1,2024-05-01,weighed,1450.5,,,\r\nF1,2024-06-01,weighed,1480,,,\r\n", log.Output);
    }

    [Fact]
    public async Task ImportLog_BadRow_NamesItAndWritesNothing()
    {
        using var data = new DataFolder();
        await RunAsync(data, "stock", "import", data.Write("animals.csv", Animals));

        var run = await RunAsync(data, "stock", "import-log", data.Write("log.csv", "animal,date,kind\nF1,2024-05-01,shed\nF2,2024-05-01,shed\n"));

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.Contains("row 3, animal: No animal has the id F2. Did you mean F1?", run.Error, StringComparison.Ordinal);
        Assert.Equal("animal,date,kind,amount,mate,clutch,text\r\n", (await RunAsync(data, "stock", "export-log")).Output);
    }

    [Fact]
    public async Task Import_FileEmpty_IsSaidOnce()
    {
        using var data = new DataFolder();

        var run = await RunAsync(data, "clutch", "import", data.Write("empty.csv", ""));

        Assert.EndsWith("nothing was written; the first: The file is empty. The first row names the columns: id, dam, sire, laid, eggs, slugs, lost, mass_g, incubator, hatched, counted, young, notes.", run.Error.TrimEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task ImportPhotos_WhatIsNoPicture_IsNamed()
    {
        using var data = new DataFolder();
        await RunAsync(data, "stock", "import", data.Write("animals.csv", Animals));
        var file = Path.Combine(data.Path, "set.zip");
        using (var zip = ZipFile.Open(file, ZipArchiveMode.Create))
        {
            await using var writer = new StreamWriter(zip.CreateEntry("F1_2024-05-01.jpg").Open());
            await writer.WriteAsync("no picture");
        }

        var run = await RunAsync(data, "stock", "import-photos", file, "--json");

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.Equal("F1_2024-05-01.jpg", (string?)run.Json["refused"]![0]!["where"]);
        Assert.False((bool)run.Json["written"]!);
    }

    private static Task<Run> RunAsync(DataFolder data, params string[] args) => Run.MadeUpAsync([.. args, "--data", data.Path]);
}
