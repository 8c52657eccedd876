using System.Globalization;
using System.Text;
using Clutchwright.Desk;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Leaving;
using Clutchwright.Reference.Tests.Programs;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Reference.Tests.Pedigrees;

/// <summary>Our linkage pedigrees say to PLINK what we meant: parents, sexes, genotypes and what is shown, read and written again by it.</summary>
public sealed class LinkageByPlinkTests
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public async Task Export_ReadAndWrittenByPlink_SaysTheSame(int seed)
    {
        var family = Family(seed);
        using var folder = new WorkFolder();
        await using var desk = new ServiceCollection().AddDesk(CatalogueFolder(), folder.FullPath).BuildServiceProvider();
        Assert.Empty((await desk.GetRequiredService<ImportStock>().RunAsync(Encoding.UTF8.GetBytes(Csv(family)), null, "family.csv", "Keeper", Cancel)).Problems);
        Assert.Empty((await desk.GetRequiredService<LeaveBook>().RunAsync(Path.Combine(folder.FullPath, "kin.ped"), Cancel)).Problems);

        // Written as binary and read again, so that nothing is only copied through.
        await ReferenceProgram.Plink.RunAsync(folder.FullPath, Longest, "--file", "kin", "--make-bed", "--out", "kept", "--silent");
        await ReferenceProgram.Plink.RunAsync(folder.FullPath, Longest, "--bfile", "kept", "--recode", "--out", "back", "--silent");
        await ReferenceProgram.Plink.RunAsync(folder.FullPath, Longest, "--bfile", "kept", "--pheno", "kin.phe", "--pheno-name", "clown-group", "--make-just-fam", "--out", "clown", "--silent");

        var loci = folder.Read("back.map").Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split('\t', ' ')[1]).ToList();
        var read = Rows(folder, "back.ped").ToDictionary(r => r[1]);
        var clown = Rows(folder, "clown.fam").ToDictionary(r => r[1], r => r[5]);
        Assert.Equal(["pastel", "enchi", "piebald", "clown-group"], loci);
        foreach (var animal in family)
        {
            var row = read[animal.Tag];
            Assert.Equal((animal.Father, animal.Mother, animal.Sex), (row[2], row[3], row[4]));
            Assert.Equal(animal.Pastel switch { 0 => "1 1", 1 => "1 2", _ => "2 2" }, Pair(row, loci.IndexOf("pastel")));
            Assert.Equal(animal.Enchi switch { 0 => "1 1", 1 => "1 2", _ => "2 2" }, Pair(row, loci.IndexOf("enchi")));
            Assert.Equal(animal.Clown == 2 ? "2 2" : "0 0", Pair(row, loci.IndexOf("clown-group")));
            Assert.Equal(animal.Pied == 2 ? "2 2" : "0 0", Pair(row, loci.IndexOf("piebald")));
            Assert.Equal(animal.Clown == 2 ? "2" : "1", clown[animal.Tag]);
        }

        // Who stands for a parent that is not known is a founder of the right sex, of which nothing is known.
        var others = read.Values.Where(r => family.TrueForAll(a => a.Tag != r[1])).ToList();
        Assert.Equal(family.Count(a => a.Father.Contains("_of_", StringComparison.Ordinal) || a.Mother.Contains("_of_", StringComparison.Ordinal)), others.Count);
        Assert.All(others, r => Assert.Equal(("0", "0", r[1].StartsWith("sire", StringComparison.Ordinal) ? "1" : "2", "0 0"), (r[2], r[3], r[4], Pair(r, 0))));
    }

    private static List<string[]> Rows(WorkFolder folder, string file) =>
        [.. folder.Read(file).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries))];

    private static string Pair(string[] row, int locus) => string.Join(' ', row.Skip(6 + (2 * locus)).Take(2).Order(StringComparer.Ordinal));

    // Genotypes handed down by Mendel's rule, and of each animal what can be seen of them.
    private static List<Member> Family(int seed)
    {
        var random = new Random(seed);
        var family = new List<Member>
        {
            new("S0", "0", "0", "1", 1, 2, 2, 2),
            new("D0", "0", "0", "2", 2, 1, 2, 2),
        };
        for (var i = 1; i < 60; i++)
        {
            var tag = string.Create(CultureInfo.InvariantCulture, $"A{i}");
            var sire = family.Where(a => a.Sex == "1").ElementAt(random.Next(family.Count(a => a.Sex == "1")));
            var dam = family.Where(a => a.Sex == "2").ElementAt(random.Next(family.Count(a => a.Sex == "2")));
            var known = random.Next(5);
            family.Add(new(
                tag,
                known == 0 ? "0" : known == 1 ? $"sire_of_{tag}" : sire.Tag,
                known == 0 ? "0" : known == 2 ? $"dam_of_{tag}" : dam.Tag,
                random.Next(2) == 0 ? "1" : "2",
                Handed(sire.Pastel, dam.Pastel),
                Handed(sire.Enchi, dam.Enchi),
                Handed(sire.Clown, dam.Clown),
                Handed(sire.Pied, dam.Pied)));
        }

        return family;

        int Handed(int one, int other) => (random.NextDouble() < one / 2.0 ? 1 : 0) + (random.NextDouble() < other / 2.0 ? 1 : 0);
    }

    private static string Csv(List<Member> family) => "id,sex,sire,dam,seen\n" + string.Concat(family.Select(a =>
    {
        string[] seen = [.. new[] { Word(a.Pastel, "Pastel"), Word(a.Enchi, "Enchi"), a.Clown == 2 ? "Clown" : "", a.Pied == 2 ? "Pied" : "" }.Where(w => w.Length > 0)];
        return $"{a.Tag},{(a.Sex == "1" ? "m" : "f")},{Known(a.Father)},{Known(a.Mother)},{(seen.Length == 0 ? "normal" : string.Join(' ', seen))}\n";
    }));

    private static string Word(int copies, string gene) => copies switch { 0 => "", 1 => gene, _ => $"Super {gene}" };

    private static string Known(string parent) => parent == "0" || parent.Contains("_of_", StringComparison.Ordinal) ? "" : parent;

    private static string CatalogueFolder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Clutchwright.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("The tests do not run inside the checkout.");
        }

        return Path.Combine(folder.FullName, "catalogue", "python-regius");
    }

    private sealed record Member(string Tag, string Father, string Mother, string Sex, int Pastel, int Enchi, int Clown, int Pied);
}
