using Xunit;

namespace Clutchwright.Cli.Tests.Proofs;

/// <summary>The readable and the JSON answers of <c>proof</c>, whole.</summary>
public sealed class ProofGoldenTests
{
    public static TheoryData<string, string[]> Questions => new()
    {
        { "proof-segregation", ["proof", "segregation", "--observed", "round yellow=315,wrinkled yellow=101,round green=108,wrinkled green=32", "--expected", "9:3:3:1"] },
        { "proof-segregation-clutches", ["proof", "segregation", "--observed", "45,12", "--observed", "27,8", "--observed", "4,3", "--expected", "3:1"] },
        { "proof-het", ["proof", "het", "--prior", "66%", "--mate", "visual", "--normals", "3"] },
        { "proof-het-mates", ["proof", "het", "--prior", "1/2", "--mate", "66% het", "--normals", "4", "--mate", "visual", "--normals", "2", "--below", "5%"] },
        { "proof-het-proven", ["proof", "het", "--prior", "0.5", "--mate", "het", "--normals", "5", "--visuals", "1"] },
        { "proof-linkage-known", ["proof", "linkage", "--recombinants", "1", "--meioses", "6"] },
        { "proof-linkage-unknown", ["proof", "linkage", "--recombinants", "1", "--meioses", "6", "--phase", "unknown"] },
        { "proof-linkage-families", ["proof", "linkage", "--family", "1/20", "--family", "3/30", "--family", "6/12"] },
        { "proof-linkage-intercross", ["proof", "linkage", "--intercross", "284,21,21,55"] },
        { "proof-maker", ["proof", "maker", "--sons-with", "18", "--sons-without", "2", "--daughters-with", "1", "--daughters-without", "19"] },
        { "proof-allelism", ["proof", "allelism", "--cross", "visual-het", "--telling", "0", "--others", "4", "--prior", "10%"] },
        { "proof-mode", ["proof", "mode", "--clutch", "Rex shows x Ada normal: sons 5 shows 4 normal, daughters 3 shows 6 normal", "--clutch", "Rex shows x Bea shows: unsexed 10 shows 3 normal 3 super"] },
        { "proof-design", ["proof", "design", "--mate", "visual", "--mate", "het", "--mate", "50% het", "--prior", "66%", "--eggs", "6"] },
        { "proof-design-linkage", ["proof", "design", "--about", "linkage", "--mate", "known", "--mate", "unknown", "--r", "0.02", "--eggs", "6"] },
    };

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task Proof_ReadableAnswer_IsAsItsFile(string name, string[] question)
    {
        var run = await Run.MadeUpAsync(question);

        Assert.Equal(string.Empty, run.Error);
        Assert.Equal(ExitCode.Answered, run.Code);
        Golden.Equal($"{name}.txt", run.Output);
    }

    [Theory]
    [InlineData("proof-segregation-clutches")]
    [InlineData("proof-het-mates")]
    [InlineData("proof-linkage-families")]
    [InlineData("proof-linkage-intercross")]
    [InlineData("proof-maker")]
    [InlineData("proof-allelism")]
    [InlineData("proof-mode")]
    [InlineData("proof-design")]
    public async Task Proof_JsonAnswer_IsAsItsFile(string name)
    {
        var question = Questions.Select(q => q.Data).Single(q => q.Item1 == name).Item2;

        var run = await Run.MadeUpAsync([.. question, "--json"]);

        Assert.Equal(string.Empty, run.Error);
        Assert.Equal(ExitCode.Answered, run.Code);
        Golden.Equal($"{name}.json", run.Output);
    }
}
