using Xunit;

namespace Clutchwright.Cli.Tests.Proofs;

/// <summary>Figures and keys that programs rely on.</summary>
public sealed class ProofMustHoldTests
{
    /// <summary>Mendel's dihybrid [Mendel1866]; exact p by R.</summary>
    [Fact]
    public async Task Segregation_OfMendelsDihybrid_HasItsKeysAndFigures()
    {
        var json = (await Run.MadeUpAsync("proof", "segregation", "--observed", "a=315,b=101,c=108,d=32", "--expected", "9:3:3:1", "--json")).Json;

        Assert.Equal(0.47002, (double)json["chiSquare"]!, 5e-6);
        Assert.Equal(3, (int)json["degreesOfFreedom"]!);
        Assert.Equal(0.92543, (double)json["pValue"]!, 5e-6);
        Assert.Equal(0.93822202461564, (double)json["exactPValue"]!, 1e-9);
    }

    [Fact]
    public async Task Linkage_OfOneInSix_HasItsKeysAndFigures()
    {
        var json = (await Run.MadeUpAsync("proof", "linkage", "--recombinants", "1", "--meioses", "6", "--json")).Json;

        Assert.Equal(1.0 / 6.0, (double)json["r"]!, 1e-12);
        Assert.Equal(0.63212, (double)json["lod"]!, 5e-6);
        Assert.Equal(2, json["interval"]!.AsArray().Count);
        Assert.Equal(0.577, (double)json["lodAt"]!["0.1"]!, 5e-4);
        Assert.True(json["lodAt"]!.AsObject().ContainsKey("0"));
        Assert.Null(json["lodAt"]!["0"]);
    }

    /// <summary>As carrier risk is reckoned in [Bridge1997].</summary>
    [Theory]
    [InlineData("66%", "visual", "3", "1/5", 4, 5, 7)]
    [InlineData("2/3", "het", "3", "27/59", 9, 11, 17)]
    [InlineData("0.5", "het", "4", "81/337", 9, 11, 17)]
    [InlineData("50%", "visual", "0", "1/2", 4, 5, 7)]
    public async Task Het_AfterNormals_HasItsKeysAndFigures(string prior, string mate, string normals, string posterior, int ninety, int ninetyFive, int ninetyNine)
    {
        var json = (await Run.MadeUpAsync("proof", "het", "--prior", prior, "--mate", mate, "--normals", normals, "--json")).Json;

        Assert.Equal(posterior, (string?)json["posteriorExact"]);
        Assert.Equal(ninety, (int)json["eggsFor"]!["90"]!);
        Assert.Equal(ninetyFive, (int)json["eggsFor"]!["95"]!);
        Assert.Equal(ninetyNine, (int)json["eggsFor"]!["99"]!);
    }

    /// <summary>A mate that is only a possible het: its state is shared by the clutch, so 1/2 (1 + (3/4)^4) and not (7/8)^4.</summary>
    [Fact]
    public async Task Het_WithAPossibleHetMate_IsAMixture()
    {
        var json = (await Run.MadeUpAsync("proof", "het", "--prior", "1/2", "--mate", "het", "--mate-prior", "50%", "--normals", "4", "--json")).Json;

        Assert.Equal("337/512", (string?)json["ifHetExact"]);
        Assert.Null(json["eggsFor"]!["90"]);
    }

    [Theory]
    [InlineData("'66' is no chance", "het", "--prior", "66", "--mate", "visual", "--normals", "3")]
    [InlineData("'visul' is no mate", "het", "--prior", "1/2", "--mate", "visul", "--normals", "3")]
    [InlineData("--normals: is given 1 times for 2 mates", "het", "--prior", "1/2", "--mate", "visual", "--mate", "het", "--normals", "3")]
    [InlineData("no bound", "het", "--prior", "1/2", "--mate", "visual", "--below", "0")]
    [InlineData("7 recombinants of 6", "linkage", "--recombinants", "7", "--meioses", "6")]
    [InlineData("give --recombinants K and --meioses N", "linkage")]
    [InlineData("'maybe' is none here", "linkage", "--recombinants", "1", "--meioses", "6", "--phase", "maybe")]
    [InlineData("'1-7' is not K/N", "linkage", "--family", "1-7")]
    [InlineData("has 3 classes", "linkage", "--intercross", "1,2,3")]
    [InlineData("2 counts stand against a ratio of 4", "segregation", "--observed", "1,2", "--expected", "9:3:3:1")]
    [InlineData("'x' is no count", "segregation", "--observed", "a=1,x", "--expected", "1:1")]
    [InlineData("'1:0' is no ratio", "segregation", "--observed", "1,2", "--expected", "1:0")]
    [InlineData("All counts are 0", "segregation", "--observed", "0,0", "--expected", "1:1")]
    [InlineData("No young are counted", "maker")]
    [InlineData("'both' is no phase", "maker", "--sons-with", "1", "--phase", "both")]
    [InlineData("'visual-hat' is no cross", "allelism", "--cross", "visual-hat")]
    [InlineData("has no colon", "mode", "--clutch", "Rex shows x Ada normal")]
    [InlineData("shows one thing in one clutch", "mode", "--clutch", "A shows x B normal: sons 1 shows", "--clutch", "A normal x B normal: sons 1 shows")]
    [InlineData("No mate or cross is named", "design")]
    [InlineData("There is no animal 'T-9'", "design", "T-9", "--gene", "Amber")]
    [InlineData("is no gene of the catalogue", "design", "T-9", "--gene", "Ambr")]
    [InlineData("no sureness", "design", "--mate", "visual", "--sure", "40%")]
    [InlineData("is no doubt", "design", "--about", "hat", "--mate", "visual")]
    public async Task Proof_AskedWrongly_SaysWhatInOneLine(string text, params string[] args)
    {
        var run = await Run.MadeUpAsync(["proof", .. args]);

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.Equal(string.Empty, run.Output);
        Assert.Contains(text, run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public async Task Design_OverTheStock_RanksItsMates()
    {
        using var data = new DataFolder();
        var file = data.Write("stock.csv", "id,sex,sire,dam,seen,told\nF1,m,,,normal,66% het Amber\nV1,f,,,Amber,\nH1,f,,,normal,het Amber\nN1,f,,,normal,\nP1,f,,,normal,50% het Amber\n");
        Assert.Equal(ExitCode.Answered, (await Run.MadeUpAsync("stock", "import", file, "--data", data.Path)).Code);

        var json = (await Run.MadeUpAsync("proof", "design", "F1", "--gene", "Amber", "--eggs", "6", "--json", "--data", data.Path)).Json;

        Assert.Equal("2/3", (string?)json["priorExact"]);
        Assert.Equal(["V1", "H1", "P1"], json["pairings"]!.AsArray().Select(p => (string?)p!["mate"]));
    }

    /// <summary>A carrier of unknown phase with ten young, one of them recombinant: 1/10, and the same LOD as by counts.</summary>
    [Fact]
    public async Task Maker_OfAPedigreeFile_HasItsKeysAndFigures()
    {
        using var data = new DataFolder();
        var file = data.Write("maker.csv", "id,sex,sire,dam,seen\nS,m,,,Coral\nD,f,,,normal\n"
            + string.Concat(Enumerable.Range(1, 10).Select(i => $"Y{i},{(i <= 5 ? "m" : "f")},S,D,{(i <= 5 || i == 10 ? "Coral" : "normal")}\n")));

        var json = (await Run.MadeUpAsync("proof", "maker", file, "--locus", "Coral", "--json")).Json;
        var byCounts = (await Run.MadeUpAsync("proof", "maker", "--sons-with", "5", "--daughters-with", "1", "--daughters-without", "4", "--json")).Json;

        Assert.Equal(0.1, (double)json["r"]!, 1e-3);
        Assert.Equal((double)byCounts["lod"]!, (double)json["lod"]!, 1e-3);
        Assert.Equal(10, (int)json["meioses"]!);
        Assert.Equal(2, json["interval"]!.AsArray().Count);
        Assert.Equal("exact", (string?)json["method"]);
    }

    /// <summary>A look that is in no catalogue, handed on by both sexes to half of the young.</summary>
    [Fact]
    public async Task Mode_OfAPedigreeFile_ListsEveryHypothesis()
    {
        using var data = new DataFolder();
        var file = data.Write("mode.csv", "id,sex,sire,dam,seen\nA,m,,,Zephyr\nB,f,,,normal\nC,f,A,B,Zephyr\nD,m,A,B,normal\nE,m,,,normal\n"
            + string.Concat(Enumerable.Range(1, 12).Select(i => $"F{i},{(i % 2 == 0 ? "m" : "f")},E,C,{(i % 4 < 2 ? "Zephyr" : "normal")}\n")));

        var json = (await Run.MadeUpAsync("proof", "mode", file, "--trait", "Zephyr", "--json")).Json;
        var beside = await Run.MadeUpAsync("proof", "mode", file, "--trait", "Zephyr", "--beside", "Lark", "--json");

        Assert.Equal(10, json["hypotheses"]!.AsArray().Count);
        Assert.Equal(1.0, json["hypotheses"]!.AsArray().Sum(h => (double)h!["posterior"]!), 1e-9);
        Assert.True(PosteriorOf("incomplete-dominant") > PosteriorOf("recessive"));
        Assert.Contains("No animal shows 'Lark'", beside.Error, StringComparison.Ordinal);

        double PosteriorOf(string mode) => (double)json["hypotheses"]!.AsArray()
            .Single(h => (string?)h!["placement"] == "autosomal" && (string?)h["mode"] == mode)!["posterior"]!;
    }

    /// <summary>Lark and Finch share a locus in the made-up species: their compound gives one or the other to every young.</summary>
    [Fact]
    public async Task Allelism_OfAPedigreeFile_FindsTheSharedLocus()
    {
        using var data = new DataFolder();
        var file = data.Write("allelism.csv", "id,sex,sire,dam,seen\nA,m,,,Lark Finch\nB,f,,,normal\n"
            + string.Concat(Enumerable.Range(1, 10).Select(i => $"Y{i},,A,B,{(i % 2 == 0 ? "Lark" : "Finch")}\n")));

        var json = (await Run.MadeUpAsync("proof", "allelism", file, "--genes", "Lark,Finch", "--json")).Json;

        Assert.True((double)json["posterior"]! > 0.99);
        Assert.Equal(12, (int)json["lookedAt"]!);
    }

    [Theory]
    [InlineData("FILE.csv needs --locus", "maker", "x.csv")]
    [InlineData("goes with a pedigree file", "maker", "--locus", "Coral")]
    [InlineData("give FILE.csv and --trait", "mode", "x.csv")]
    [InlineData("give FILE.csv and --trait", "mode", "--trait", "x")]
    [InlineData("needs --genes", "allelism", "x.csv", "--genes", "Lark")]
    [InlineData("give FILE.csv and --genes", "allelism")]
    public async Task Proof_OfAFileAskedWrongly_SaysWhat(string text, params string[] args)
    {
        var run = await Run.MadeUpAsync(["proof", .. args]);

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.Contains(text, run.Error, StringComparison.Ordinal);
    }
}
