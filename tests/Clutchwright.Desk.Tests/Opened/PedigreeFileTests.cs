using System.Text;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Tests.Opened;

public sealed class PedigreeFileTests
{
    [Fact]
    public async Task ReadAsync_EveryColumn_GivesTheAnimalsWithTheirStatements()
    {
        var answer = await ReadAsync(
            """
            told,id,sex,sire,dam,hatched,seen,ruled_out,rack
            66% het Clown,H1,f,M2|M1,F1,2024,normal,Pied,3b
            ,M1,m,,,,,,
            ,M2,,,,,,,
            ,F1,f,,,2019-06-01,,,
            """);

        Assert.Empty(answer.Problems);
        var animals = answer.Value!.Animals;
        Assert.Equal(["H1", "M1", "M2", "F1"], animals.Select(a => a.Tag));
        Assert.Equal([Sex.Female, Sex.Male, null, Sex.Female], animals.Select(a => a.Sex));
        var hatchling = animals[0];
        Assert.Null(hatchling.SireId);
        Assert.Equal(animals[3].AnimalId, hatchling.DamId);
        Assert.Equal([animals[1].AnimalId, animals[2].AnimalId], hatchling.PossibleSireIds);
        Assert.Equal(
            [(StatementKind.LookedAtNormal, ""), (StatementKind.Told, "66% het Clown"), (StatementKind.RuledOut, "Pied")],
            hatchling.Statements.Select(s => (s.Kind, s.Text)));
        Assert.All(hatchling.Statements, s => Assert.Equal(hatchling.AnimalId, s.AnimalId));
        Assert.Equal("rack: 3b", hatchling.Notes);
    }

    [Fact]
    public async Task ReadAsync_SameFile_GivesTheSameIdentities()
    {
        const string File = "id,sire,seen\nA,B,Pastel\nB,,\n";

        var first = (await ReadAsync(File)).Value!.Animals;
        var second = (await ReadAsync(File)).Value!.Animals;

        Assert.Equal(first.Select(a => a.AnimalId), second.Select(a => a.AnimalId));
        Assert.Equal(first[0].Statements[0].StatementId, second[0].Statements[0].StatementId);
        Assert.Equal(first.Count, first.Select(a => a.AnimalId).Distinct().Count());
    }

    [Theory]
    [InlineData("id,sire\nA,B\n", "k.csv, line 2, column sire: B has no row in the file. Add one (a founder has no sire and no dam), or leave the cell empty.")]
    [InlineData("id,sire\nMale1,\nA,Male2\n", "k.csv, line 3, column sire: Male2 has no row in the file. Did you mean Male1? Else add a row for it, or leave the cell empty.")]
    [InlineData("id,sex,dam\nA,m,\nB,f,A\n", "k.csv, line 2, column sex: It cannot be male: it is the dam of B. Change the parent recorded there, or the sex.|k.csv, line 3, column dam: A is male. A dam is female, or unsexed.")]
    [InlineData("id,sex\n", "k.csv: The file has no animals. Below the header each animal has a row.")]
    [InlineData("", "k.csv, line 1: The file is empty. The first row names the columns: id, sex, sire, dam, hatched, seen, told, ruled_out, name, status, mass_g, notes, statements.")]
    [InlineData("id,notes,sex\nA,\"two\nlines\",m\nB,,q\nC,,z\n", "k.csv, line 4, column sex: \"q\" is no sex. m, f or u (unsexed).|k.csv, line 5, column sex: \"z\" is no sex. m, f or u (unsexed).")]
    [InlineData("id,sire\nA,B\nB,A\n", "k.csv, line 2, column sire: A would be its own ancestor: A, child of B, child of A. One of these parents is wrong.|k.csv, line 3, column sire: B would be its own ancestor: B, child of A, child of B. One of these parents is wrong.")]
    public async Task ReadAsync_BadFile_NamesEachProblemWithItsLine(string text, string problems)
    {
        var answer = await ReadAsync(text);

        Assert.Null(answer.Value);
        Assert.Equal(problems, string.Join('|', answer.Problems.Select(p => $"{p.Where}: {p.Text}")));
    }

    [Fact]
    public async Task ReadAsync_UnreadableTradeText_IsRefused()
    {
        var problem = Assert.Single((await ReadAsync("id,seen\nA,Pastell\n")).Problems);

        Assert.Equal("k.csv, line 2, column seen", problem.Where);
        Assert.Contains("Pastel", problem.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ReadAsync_DemoStock_IsTheStockThatAnImportGives()
    {
        using var desk = await TestDesk.WithDemoAsync();
        var state = await desk.StateAsync();

        var animals = (await ReadAsync(await desk.ExportAsync())).Value!.Animals;

        var stock = state.Animals.Select(a => a.Animal).ToDictionary(a => a.Tag);
        Assert.Equal(stock.Count, animals.Count);
        Assert.All(animals, a => Assert.Equal(Describe(stock[a.Tag], [.. stock.Values]), Describe(a, animals)));
    }

    private static string Describe(Animal animal, IReadOnlyList<Animal> all)
    {
        return string.Join(' ',
        [
            animal.Tag, animal.Name, animal.Sex, animal.Hatched?.Words, animal.Status, animal.MassGrams, animal.Notes,
            Tag(animal.SireId), Tag(animal.DamId), string.Join('|', animal.PossibleSireIds.Select(id => Tag(id)).Order(StringComparer.Ordinal)),
            .. animal.Statements.Select(s => $"{s.Kind} {s.Text} {s.Confidence} {s.By}").Order(StringComparer.Ordinal),
        ]);

        string? Tag(AnimalId? id) => id is null ? null : all.Single(a => a.AnimalId == id).Tag;
    }

    private static Task<Answer<PedigreeFile>> ReadAsync(string text) => PedigreeFile.ReadAsync(
        Shipped.Catalogue, new NamedFile("k.csv", Encoding.UTF8.GetBytes(text)), TestDesk.Cancel);
}
