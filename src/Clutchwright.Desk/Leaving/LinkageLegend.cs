using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Leaving;

/// <summary>What the columns of a linkage pedigree mean, and what of the book they cannot hold.</summary>
internal static class LinkageLegend
{
    private const int FirstAlleleColumn = 7;

    public static string Of(IReadOnlyList<Locus> loci, LinkageIds ids, IReadOnlyList<Animal> animals, IReadOnlyList<string> leftOut)
    {
        var text = new StringBuilder(
            """
            Pedigree in linkage format

            .ped   a line an animal, columns parted by spaces:
                   1 family ("book" for all)   2 id   3 father   4 mother (0: a founder)
                   5 sex (1 male, 2 female, 0 not known)   6 affection (0 for all; see .phe)
                   then two columns a locus: the numbers of its two alleles, the lower first; 0 0 where what is seen does not tell both
            .map   a line a locus, in the order of the columns: chromosome (0: not placed), id, 0, 0
            .phe   for each locus whether the animal shows something of it: 2 yes, 1 looked at and no, 0 not known

            Only what was seen, and said for certain, is here. What was told, tested, proven or reckoned is not.

            Loci

            """);
        foreach (var (locus, i) in loci.Select((l, i) => (l, i)))
        {
            var column = FirstAlleleColumn + (2 * i);
            text.Append(CultureInfo.InvariantCulture, $"columns {column} {column + 1}   {locus.Id}   {string.Join(", ", locus.Alleles.Select(a => $"{a.Index + 1} = {a.Id}"))}{(locus.Placement is Placement.SexLinked ? "   on the sex chromosomes; which allele lies on which is not told" : string.Empty)}\n");
        }

        List(text, "Ids that are not the tag as it is", animals.Where(a => ids.Of(a) != a.Tag).Select(a => $"{ids.Of(a)} is {a.Tag}"));
        List(text, "Stand for a parent that is not known", ids.Placeholders.Select(p => p.Id));
        List(
            text,
            "Several possible sires, of which none is named as the father",
            animals.Where(a => a.PossibleSireIds.Count > 0).Select(a => $"{ids.Of(a)}: {string.Join(", ", a.PossibleSireIds.Select(ids.Of).Order(StringComparer.Ordinal))}"));
        List(text, "Unsexed, and given the sex of the parent they are", animals.Where(a => a.Sex is null && ids.SexOf(a) is not null).Select(ids.Of));
        List(text, "Seen, and not told here", leftOut);
        return text.ToString();
    }

    private static void List(StringBuilder text, string heading, IEnumerable<string> lines)
    {
        var all = lines.ToList();
        if (all.Count > 0)
        {
            text.Append('\n').Append(heading).Append('\n').AppendJoin(string.Empty, all.Select(line => $"{line}\n"));
        }
    }
}
