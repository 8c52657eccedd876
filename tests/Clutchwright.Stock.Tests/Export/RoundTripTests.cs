using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Tests.Testing;
using CsCheck;
using Xunit;

namespace Clutchwright.Stock.Tests.Export;

public sealed class RoundTripTests
{
    private static readonly Gen<string> NastyPart = Gen.OneOf(new[]
    {
        "a", "Z", "7", " ", ",", ";", "\"", "\"\"", "'", "=", "+", "-", "@", "|", "\t", "\n", "\r\n", "\r", "é", "e\u0301", "ß", "İ", "蛇", "🐍", "\u200f", "\ufeff",
        "\u00a0", "＝", "\\", "{", "[{", "null", "#", "normal", "id", "=cmd|' /C calc'!A0", "\u0001", "%", "_", "\u2028",
    }.Select(part => Gen.Const(part)).ToArray());

    private static readonly Gen<string> Nasty = NastyPart.Array[0, 6].Select(string.Concat);

    private static readonly Gen<string> NastyLine = Nasty.Select(s => string.Concat(s.Where(c => !char.IsControl(c) && c is not '\u2028' and not '\u2029')));

    private static readonly Gen<StatementEntry> AnyStatement = Gen.Select(
        Gen.Enum<StatementKind>(), NastyLine, NastyLine, Gen.Int[0, 3], Gen.Double[0.01, 1], Gen.Bool)
        .Select((kind, text, by, what, rate, found) => new StatementEntry
        {
            Kind = kind,
            Text = kind == StatementKind.LookedAtNormal ? "" : text.Trim().Length == 0 ? "x" : text,
            By = what == 1 ? by : null,
            When = what >= 2 ? new DateRange(new DateOnly(2021, 5, 1), new DateOnly(2021, 5, 1 + what), by.Trim().Length == 0 ? "then" : by) : null,
            Confidence = what == 3 ? rate : 1.0,
            Test = kind == StatementKind.DnaTest ? new DnaTest(found, rate, 1.0) : null,
        });

    private static readonly Gen<Draft[]> AnyAnimals = Gen.Select(
            NastyLine, Nasty, Nasty, Gen.Int[0, 99], Gen.Int[0, 99], AnyStatement.Array[0, 4], Gen.Double[0.001, 9999], Gen.Enum<AnimalStatus>())
        .Select((tag, name, notes, sire, dam, statements, mass, status) => new Draft(tag, name, notes, sire, dam, statements, mass, status))
        .Array[0, 7];

    [Fact]
    public async Task ExportAnimals_ImportedIntoAnEmptyBook_ExportsTheSameBytes() => await AnyAnimals.SampleAsync(
        async drafts =>
        {
            using var first = await TestBook.NewAsync();
            await AddAsync(first, drafts);
            var exported = await first.ExportAsync();
            using var second = await TestBook.NewAsync();

            var preview = (await second.PreviewAsync(exported)).Expect();
            Assert.True(preview.Problems.Count == 0, string.Join('\n', preview.Problems.Select(ProblemWords.Say)) + "\n" + exported);
            if (drafts.Length > 0)
            {
                (await new ImportAnimals(second.Book, TestBook.Check).RunAsync(preview.File, "f", TestBook.Who, TestBook.Cancellation)).Expect();
            }

            Assert.Equal(exported, await second.ExportAsync());

            // Not only the file: everything in the book but its ids came over.
            Assert.Equal(await ContentAsync(first), await ContentAsync(second));
            Assert.All((await first.PreviewAsync(exported)).Expect().Rows, row => Assert.Equal(RowFate.AlreadyThere, row.Fate));
        },
        iter: 60,
        threads: 1);

    [Fact]
    public async Task ExportAnimals_SmallBook_WritesThePedigreeFile()
    {
        using var book = await TestBook.NewAsync();
        await book.TryImportAsync(
            """
            id,sex,sire,dam,hatched,seen,told,ruled_out,rack
            H10,u,M2|M1,,2023,,66% het Clown,Pied,3
            H9,f,M1,,about 3 March 2024,normal,,,"=1,2"
            M1,m,,,,Pastel,,,
            M2,m,,,,,,,
            """);

        var exported = await book.ExportAsync();

        Assert.Equal(
            """
            id,sex,sire,dam,hatched,seen,told,ruled_out,name,status,mass_g,notes,statements
            H9,f,M1,,about 3 March 2024,normal,,,,kept,,"rack: =1,2",
            H10,u,M1|M2,,2023,,66% het Clown,Pied,,kept,,rack: 3,
            M1,m,,,,Pastel,,,,kept,,,
            M2,m,,,,,,,,kept,,,

            """.ReplaceLineEndings("\r\n"),
            exported);
    }

    [Fact]
    public async Task ExportAnimals_StatementWithMoreThanText_IsWrittenAsJson()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A");
        await book.TrySayAsync(animal, new StatementEntry { Kind = StatementKind.Told, Text = "het Clown", By = "Ana", When = DateRange.Read("2023").Expect(), Confidence = 0.9 });

        var exported = await book.ExportAsync();

        Assert.EndsWith(",\"[{\"\"kind\"\":\"\"told\"\",\"\"text\"\":\"\"het Clown\"\",\"\"when\"\":\"\"2023\"\",\"\"sure\"\":0.9,\"\"by\"\":\"\"Ana\"\"}]\"\r\n", exported, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ExportAnimals_BinnedAndWithdrawn_AreLeftOut()
    {
        using var book = await TestBook.NewAsync();
        await book.TryBinAsync(await book.AddAsync("Gone"));
        await book.TryWithdrawAsync(await book.SayAsync(await book.AddAsync("A"), StatementKind.Told, "het Clown"));

        var exported = await book.ExportAsync();

        Assert.DoesNotContain("Gone", exported, StringComparison.Ordinal);
        Assert.DoesNotContain("Clown", exported, StringComparison.Ordinal);
    }

    private static async Task AddAsync(TestBook book, Draft[] drafts)
    {
        var animals = new List<Animal>();
        foreach (var (draft, i) in drafts.Select((draft, i) => (draft, i)))
        {
            // Even ones can be sires, odd ones dams; every third is unsexed all the same.
            var sires = animals.Where((_, n) => n % 2 == 0).ToList();
            var dams = animals.Where((_, n) => n % 2 == 1).ToList();
            var tag = string.Concat(draft.Tag.Where(c => c != '|')).Trim();
            var entry = new AnimalEntry
            {
                Tag = tag.Length is > 0 and < 50 ? string.Create(CultureInfo.InvariantCulture, $"{tag} {i}") : string.Create(CultureInfo.InvariantCulture, $"={i}"),
                Name = string.Concat(draft.Name.Where(c => !char.IsControl(c) && c is not '\u2028')),
                Sex = i % 3 == 2 ? null : i % 2 == 0 ? Sex.Male : Sex.Female,
                Hatched = (i % 4) switch
                {
                    0 => DateRange.Read(string.Create(CultureInfo.InvariantCulture, $"about 3 March {2000 + i}")).Expect(),
                    1 => new DateRange(new DateOnly(2000 + i, 1, 1), new DateOnly(2000 + i, 8, 1), "(sometime) to (then)"),
                    2 => DateRange.On(new DateOnly(2000 + i, 6, 7)),
                    _ => null,
                },
                SireId = draft.Sire % 3 == 0 && sires.Count > 0 ? sires[draft.Sire % sires.Count].AnimalId : null,
                PossibleSires = draft.Sire % 3 == 1 && sires.Count > 1 ? [.. sires.Select(s => s.AnimalId)] : [],
                DamId = draft.Dam % 2 == 0 && dams.Count > 0 ? dams[draft.Dam % dams.Count].AnimalId : null,
                Status = draft.Status,
                MassGrams = i % 2 == 0 ? draft.Mass : null,
                Notes = draft.Notes,
            };
            animals.Add((await book.TryAddAsync(entry, draft.Statements)).Expect());
        }
    }

    private static async Task<string> ContentAsync(TestBook book)
    {
        var animals = await book.AllAsync();
        var tags = animals.ToDictionary(a => a.AnimalId, a => a.Tag);
        var text = new StringBuilder();
        foreach (var a in animals.OrderBy(a => a.Tag, StringComparer.Ordinal))
        {
            var sire = a.SireId is { } s ? tags[s] : string.Join('|', a.PossibleSireIds.Select(p => tags[p]).Order(StringComparer.Ordinal));
            text.Append(CultureInfo.InvariantCulture, $"{a.Tag}/{a.Name}/{a.Sex}/{a.Hatched?.Earliest}/{a.Hatched?.Latest}/{a.Hatched?.Words}/{sire}/{(a.DamId is { } d ? tags[d] : "")}/{a.Status}/{a.MassGrams:R}/{a.Notes}\n");
            foreach (var statement in a.Statements.Select(x => x.ToEntry().ToString()).Order(StringComparer.Ordinal))
            {
                text.Append(statement).Append('\n');
            }
        }

        return text.ToString();
    }

    private sealed record Draft(
        string Tag, string Name, string Notes, int Sire, int Dam, StatementEntry[] Statements, double Mass, AnimalStatus Status);
}
