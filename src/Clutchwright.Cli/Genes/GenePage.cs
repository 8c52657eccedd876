using Clutchwright.Cli.Words;
using Clutchwright.Desk.Genes;

namespace Clutchwright.Cli.Genes;

/// <summary>The readable answers of <c>catalogue</c>.</summary>
internal static class GenePage
{
    public static void Send(Terminal terminal, CatalogueCheck check, string folder)
    {
        var page = new Page(terminal);
        if (check.Problems.Count == 0)
        {
            page.Line(Page.Plain(
                $"No problem in {folder}: {check.Loci:N0} loci, {check.Alleles:N0} alleles, {check.Forms:N0} forms, "
                + $"{check.Combinations:N0} named combinations, {check.Looks:N0} looks, {check.Dangers:N0} dangers."));
        }

        foreach (var problem in check.Problems)
        {
            page.Line(Page.Plain(Place(problem)));
        }

        page.Send();
    }

    /// <summary>A problem as compilers write it.</summary>
    public static string Place(CatalogueProblemLine problem) => problem.Line > 0
        ? $"{problem.File}:{problem.Line}:{problem.Column}: {problem.Text}"
        : $"{problem.File}: {problem.Text}";

    public static void Send(Terminal terminal, IReadOnlyList<GeneLine> entries)
    {
        var page = new Page(terminal);
        if (entries.Count == 0)
        {
            page.Line("No entry.");
        }
        else
        {
            page.Table(
                ["name", "kind", "inheritance", "locus", "danger", "what it looks like"],
                [.. entries.Select(g => new[]
                {
                    Page.Seen(g.Name),
                    Page.Plain(g.Kind),
                    Page.Plain(g.Inheritance),
                    Page.Plain(g.Locus),
                    Page.Plain(g.Severity),
                    Page.Plain(g.Summary),
                })]);
        }

        page.Send();
    }

    public static void Send(Terminal terminal, GeneAnswer gene)
    {
        var page = new Page(terminal);
        page.Line(Page.Seen(gene.Line.Name) + Page.Plain(Kind(gene.Line)));
        if (gene.Also.Count > 0)
        {
            page.Line(Page.Plain($"also: {string.Join(", ", gene.Also)}"));
        }

        if (gene.Claims.Count > 0)
        {
            var sources = gene.Claims.SelectMany(c => c.Sources).Distinct(StringComparer.Ordinal).ToList();
            page.Heading("What is known");
            page.Table(["", ""], [.. gene.Claims.Select(c => new[] { Page.Plain(c.Heading), Page.Plain(Known(c, sources)) })]);
            page.Sources(sources);
        }

        if (gene.Neighbours.Count > 0)
        {
            page.Heading("Other alleles of its locus");
            page.Table(
                ["allele", "the two make", "which is"],
                [.. gene.Neighbours.Select(n => new[] { Page.Plain(n.Name), Page.Seen(n.PairName), Page.Plain(n.Shows) })]);
        }

        if (gene.Looks.Count > 0)
        {
            page.Heading("Looks by age");
            foreach (var look in gene.Looks)
            {
                page.Look(look);
            }
        }

        if (gene.Hides.Count > 0)
        {
            page.Heading("What hides what");
            page.Points(gene.Hides);
        }

        if (gene.PartOf.Count > 0)
        {
            page.Heading(string.Equals(gene.Line.Kind, "combination", StringComparison.Ordinal) ? "Made of" : "Part of");
            page.Points(gene.PartOf.Select(g => g.Name));
        }

        page.Warnings(gene.Dangers);
        page.Send();
    }

    private static string Known(Claim claim, List<string> sources)
    {
        var grounds = string.Join(
            ", ", new[] { claim.Grade }.OfType<string>().Concat(claim.Sources.Select(s => $"source {sources.IndexOf(s) + 1}")));
        return grounds.Length == 0 ? claim.Text : $"{claim.Text} [{grounds}]";
    }

    private static string Kind(GeneLine line) => string.Join(
        ", ", new[] { $" ({line.Kind}", line.Inheritance, line.Locus }.Where(t => !string.IsNullOrEmpty(t))) + ")";
}
