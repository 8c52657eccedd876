using System.CommandLine;
using System.Text.RegularExpressions;
using Clutchwright.Cli;
using Clutchwright.Cli.Words;
using Xunit;

namespace Clutchwright.Architecture.Tests.Docs;

/// <summary>What the program can do is written down, and what is written down is there.</summary>
public sealed partial class DocsTests
{
    private const string CommandLinePage = "docs/how-to/command-line.md";

    public static TheoryData<string> Commands => [.. AllCommands().Select(c => c.Path)];

    [Theory]
    [MemberData(nameof(Commands))]
    public void Command_IsDocumented(string path) =>
        Assert.Contains($"## `{path}", Checkout.Read(CommandLinePage), StringComparison.Ordinal);

    [Theory]
    [MemberData(nameof(Commands))]
    public void Options_OfACommand_AreDocumentedUnderIt(string path)
    {
        var section = Section(Checkout.Read(CommandLinePage), path);
        var command = AllCommands().Single(c => c.Path == path).Command;

        Assert.All(command.Options.Where(o => !o.Recursive), o => Assert.Contains($"`{o.Name}", section, StringComparison.Ordinal));
        Assert.All(command.Arguments, a => Assert.Contains(a.Name, section, StringComparison.Ordinal));
    }

    [Fact]
    public void OptionsOfEveryCommand_AreDocumented()
    {
        var page = Checkout.Read(CommandLinePage);

        Assert.All(Root().Options.Where(o => o.Recursive), o => Assert.Contains($"`{o.Name}", page, StringComparison.Ordinal));
    }

    [Fact]
    public void ReferenceKeys_InCodeAndDocs_StandInTheReferences()
    {
        var known = ReferenceEntry().Matches(Checkout.Read("docs/references.md")).Select(m => m.Groups["key"].Value).ToHashSet(StringComparer.Ordinal);

        var used = Checkout.Files("src", ".cs", ".razor").Concat(Checkout.Files("tests", ".cs")).Concat(Checkout.Files("docs", ".md"))
            .SelectMany(f => ReferenceKey().Matches(Checkout.Read(f)).Select(m => $"{m.Groups["key"].Value} in {f}"))
            .ToArray();

        Assert.NotEmpty(used);
        Assert.All(used, u => Assert.Contains(u.Split(' ')[0], known));
    }

    [Fact]
    public void EnvironmentVariables_AreDocumentedForDevelopers()
    {
        var page = Checkout.Read("DEVELOPERS.md");

        var used = Checkout.Files("src", ".cs", ".razor").Concat(Checkout.Files("tests", ".cs")).Concat(Checkout.Files("build")).Concat(["run", "test", "clutchwright"])
            .SelectMany(f => Variable().Matches(Checkout.Read(f)).Select(m => m.Value))
            .Distinct(StringComparer.Ordinal);

        Assert.All(used, v => Assert.Contains(v, page, StringComparison.Ordinal));
    }

    [Fact]
    public void Links_InDocs_LeadToFiles()
    {
        var pages = Checkout.Files("docs", ".md").Concat(["README.md", "CHANGELOG.md", "DEVELOPERS.md"]);

        var broken = from page in pages
                     from link in Link().Matches(Checkout.Read(page)).Select(m => m.Groups["target"].Value)
                     where !link.Contains("://", StringComparison.Ordinal) && !link.StartsWith('#')
                     let target = Path.Combine(Checkout.Root, Path.GetDirectoryName(page)!, link.Split('#')[0])
                     where !Path.Exists(target)
                     select $"{page}: {link}";

        Assert.Empty(broken);
    }

    [Fact]
    public void ModelPages_HaveTheirSixParts()
    {
        string[] parts = ["Assumes", "Does not model", "Formula", "Source", "Worked example", "Checked against"];

        var pages = Checkout.Files("docs/model", ".md").ToArray();

        Assert.NotEmpty(pages);
        Assert.All(pages, page => Assert.All(parts, part =>
            Assert.Contains($"## {part}", Checkout.Read(page), StringComparison.Ordinal)));
    }

    [Fact]
    public void CommittedText_NamesNoPathOfAMachine()
    {
        string[] texts = [".cs", ".razor", ".md", ".yaml", ".yml", ".json", ".csproj", ".props", ".slnx", ".css", ".js", ".csv", ".txt", ".sh", ".html", ".svg"];

        var found = Checkout.Files(string.Empty, texts).Concat(["run", "test", "clutchwright", ".ci/run"])
            .Where(f => MachinePath().IsMatch(Checkout.Read(f)));

        Assert.Empty(found);
    }

    private static string Section(string page, string path)
    {
        var start = page.IndexOf($"## `{path}", StringComparison.Ordinal);
        var end = start < 0 ? -1 : page.IndexOf("\n## ", start, StringComparison.Ordinal);
        return start < 0 ? string.Empty : end < 0 ? page[start..] : page[start..end];
    }

    private static RootCommand Root() => CommandLine.Create(new Terminal(TextWriter.Null, TextWriter.Null, IsStyled: false, Width: 80));

    private static IEnumerable<(string Path, Command Command)> AllCommands() => Leaves(Root(), string.Empty);

    private static IEnumerable<(string Path, Command Command)> Leaves(Command command, string path) => command.Subcommands.Count == 0
        ? [(path, command)]
        : command.Subcommands.SelectMany(c => Leaves(c, path.Length == 0 ? c.Name : $"{path} {c.Name}"));

    // A name and a year, as [Haldane1919]; what is defined begins a line of the list.
    [GeneratedRegex(@"\[(?<key>[A-Z][A-Za-z]+[0-9]{4}[a-z]?)\]")]
    private static partial Regex ReferenceKey();

    [GeneratedRegex(@"^- \*\*\[(?<key>[A-Z][A-Za-z]+[0-9]{4}[a-z]?)\]\*\*", RegexOptions.Multiline)]
    private static partial Regex ReferenceEntry();

    [GeneratedRegex("CLUTCHWRIGHT_[A-Z_]+")]
    private static partial Regex Variable();

    [GeneratedRegex(@"\]\((?<target>[^)\s]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"(?<![\w.])/(work|root|home/[a-z]+)/|[A-Z]:\\Users", RegexOptions.ExplicitCapture)]
    private static partial Regex MachinePath();
}
