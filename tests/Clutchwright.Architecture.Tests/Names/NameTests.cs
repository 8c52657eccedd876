using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Xunit;

namespace Clutchwright.Architecture.Tests.Names;

/// <summary>A name says what the thing is.</summary>
public sealed partial class NameTests
{
    public static TheoryData<string> Projects => [.. Checkout.Projects.Select(p => p.Name)];

    public static TheoryData<string> Engines => [.. Checkout.Engines.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Type_EndsWithNoWordThatSaysNothing(string project)
    {
        string[] saysNothing = ["Manager", "Helper", "Helpers", "Util", "Utils", "Utilities", "Processor", "Info", "Data"];

        var types = Checkout.Projects.Single(p => p.Name == project).Load().GetTypes()
            .Where(t => !t.IsDefined(typeof(CompilerGeneratedAttribute), inherit: false) && !t.Name.StartsWith('<'))
            .Select(t => t.Name.Split('`')[0])
            .Where(n => Array.Exists(saysNothing, e => n.EndsWith(e, StringComparison.Ordinal)));

        Assert.Empty(types);
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Folder_IsNoCatchAll(string project)
    {
        string[] catchAll = ["Services", "Models", "Interfaces", "Common", "Shared", "Misc", "Helpers", "Utils"];
        var folder = Checkout.Projects.Single(p => p.Name == project).Folder;

        var folders = Checkout.Files(folder, ".cs", ".razor").SelectMany(f => f.Split('/')).Distinct(StringComparer.Ordinal);

        Assert.Empty(folders.Intersect(catchAll));
    }

    [Theory]
    [MemberData(nameof(Engines))]
    public void PublicMember_OfAnEngine_HasADocComment(string engine)
    {
        var folder = Checkout.Engines.Single(p => p.Name == engine).Folder;

        Assert.All(Checkout.Files(folder, ".cs"), f => Assert.Empty(WithoutComment(f)));
    }

    [Theory]
    [MemberData(nameof(Engines))]
    public void ProjectFile_OfAnEngineWithCode_AsksForDocComments(string engine)
    {
        var project = Checkout.Engines.Single(p => p.Name == engine);
        if (!Checkout.Files(project.Folder, ".cs").Any())
        {
            Assert.Skip($"{engine} holds no code.");
        }

        // Directory.Build.props switches CS1591 off for the other projects.
        Assert.Contains("$(NoWarn.Replace('CS1591', ''))", project.FileText, StringComparison.Ordinal);
    }

    private static IEnumerable<string> WithoutComment(string file)
    {
        var lines = Checkout.Read(file).Split('\n');
        var isInternal = false;
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i];
            if (TypeAtTheMargin().IsMatch(line))
            {
                isInternal = !line.StartsWith("public ", StringComparison.Ordinal);
            }

            if (isInternal || !PublicMember().IsMatch(line))
            {
                continue;
            }

            var above = i - 1;
            while (above >= 0 && lines[above].TrimStart().StartsWith('['))
            {
                above--;
            }

            if (above < 0 || !lines[above].TrimStart().StartsWith("///", StringComparison.Ordinal))
            {
                yield return $"{file}:{i + 1}: {line.Trim()}";
            }
        }
    }

    [GeneratedRegex(@"^(public|internal|file) .*\b(class|struct|record|enum|interface)\b")]
    private static partial Regex TypeAtTheMargin();

    [GeneratedRegex(@"^(    )?public ")]
    private static partial Regex PublicMember();
}
