using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Import;

public sealed class AnimalFileTests
{
    [Fact]
    public void Read_EveryColumn_GivesTheAnimal()
    {
        var file = AnimalFile.Read(
            """
            told,id,sex,sire,dam,hatched,seen,ruled_out,name,status,mass_g,notes
            66% het Clown,H1,f,M1|M2,F1,about 3 March 2024,Pastel,Pied,Hazel,held back,812.5,"shy, ""quiet""
            and slow"
            """);

        Assert.Empty(file.Problems);
        var row = Assert.Single(file.Rows);
        Assert.Equal((2, 2, "H1", "Hazel", Sex.Female, null, "F1"), (row.Row, row.Line, row.Tag, row.Name, row.Sex, row.Sire, row.Dam));
        Assert.Equal(["M1", "M2"], row.PossibleSires);
        Assert.Equal((new DateOnly(2024, 2, 18), new DateOnly(2024, 3, 17), "about 3 March 2024"), (row.Hatched!.Earliest, row.Hatched.Latest, row.Hatched.Words));
        Assert.Equal((AnimalStatus.HeldBack, 812.5, "shy, \"quiet\"\nand slow"), (row.Status, row.MassGrams, row.Notes));
        Assert.Equal(
            [
                new StatementEntry { Kind = StatementKind.Seen, Text = "Pastel" },
                new StatementEntry { Kind = StatementKind.Told, Text = "66% het Clown" },
                new StatementEntry { Kind = StatementKind.RuledOut, Text = "Pied" },
            ],
            row.Statements);
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("normal", 1)]
    [InlineData("Normal", 1)]
    public void Read_Seen_TellsLookedAtFromNotLookedAt(string seen, int statements)
    {
        var row = AnimalFile.Read($"id,seen\nA,{seen}\n").Rows.Single();

        Assert.Equal(statements, row.Statements.Count);
        Assert.All(row.Statements, s => Assert.Equal((StatementKind.LookedAtNormal, ""), (s.Kind, s.Text)));
    }

    [Theory]
    [InlineData("id;sex;told\nA;m;\"het Clown, het Pied\"\n", ';')]
    [InlineData("id\tsex\ttold\nA\tm\thet Clown, het Pied\n", '\t')]
    [InlineData("id,sex,told\nA,m,\"het Clown, het Pied\"\n", ',')]
    [InlineData("\r\n\r\nid,sex,told\r\n\r\nA,m,\"het Clown, het Pied\"", ',')]
    [InlineData("\"a;b;c;d\",id,sex,told\n,A,m,\"het Clown, het Pied\"", ',')]
    public void Read_AnyDelimiter_IsFoundFromTheHeader(string text, char delimiter)
    {
        var file = AnimalFile.Read(text);

        Assert.Equal(delimiter, file.Delimiter);
        Assert.Equal(("A", Sex.Male, "het Clown, het Pied"), (file.Rows.Single().Tag, file.Rows.Single().Sex, file.Rows.Single().Statements.Single().Text));
    }

    [Fact]
    public void Read_ParentsInOtherCase_AreSpeltAsInTheirRows()
    {
        var file = AnimalFile.Read("id,sire,dam\nH,m1|M2|M1,f1\nM1,,\nm2,,\nF1,,\n");

        Assert.Equal(["M1", "m2"], file.Rows[0].PossibleSires);
        Assert.Equal("F1", file.Rows[0].Dam);
    }

    [Theory]
    [InlineData("id,sire\nH,S\nS,\n", "")]
    [InlineData("id,sire\nH,S\n", "ParentUnknown")]
    [InlineData("id,sire\nH,S\nS,H\n", "OwnAncestor OwnAncestor")]
    [InlineData("id,told\nH,?\n", "TextUnreadable")]
    [InlineData("id,count\nH,\nI,1\nJ,12\n", "")]
    [InlineData("id,count\nH,0\nI,1.5\nJ,-2\nK,many\nL,10001\n", "CountUnreadable CountUnreadable CountUnreadable CountUnreadable CountUnreadable")]
    [InlineData("id,dam,count\nH,S,\nS,,2\n", "ParentIsSeveral")]
    public void CheckAlone_AnyFile_IsHeldAgainstTheRules(string text, string problems)
    {
        var preview = AnimalFile.Read(text).CheckAlone(TestBook.Check);

        Assert.Equal(problems, string.Join(' ', preview.Problems.Select(p => p.Problem.GetType().Name)));
        Assert.Equal(problems.Length == 0, preview.CanImport);
    }

    [Fact]
    public void Read_UnknownColumns_AreKeptAsNotes()
    {
        var file = AnimalFile.Read("id,rack,notes,Eats\nA,3b,shy,rats\nB,,,\n");

        Assert.Equal([AnimalField.Tag, AnimalField.KeptAsNote, AnimalField.Notes, AnimalField.KeptAsNote], file.Columns.Select(c => c.Field));
        Assert.Equal(["shy\nrack: 3b\nEats: rats", ""], file.Rows.Select(r => r.Notes));
    }

    [Fact]
    public void Read_ChosenFields_GoBeforeTheHeader()
    {
        var file = AnimalFile.Read("number,id,colour\n7,A,brown\n", new Dictionary<int, AnimalField>
        {
            [0] = AnimalField.Tag,
            [1] = AnimalField.Name,
            [2] = AnimalField.LeftOut,
        });

        Assert.Empty(file.Problems);
        Assert.Equal(("7", "A", ""), (file.Rows[0].Tag, file.Rows[0].Name, file.Rows[0].Notes));
        Assert.All(file.Columns, c => Assert.True(c.IsChosen));
    }

    public static TheoryData<byte[]> Encodings => new()
    {
        Encoding.UTF8.GetBytes("id,name\nÉ1,Ünlü 🐍\n"),
        (byte[])[.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes("id,name\nÉ1,Ünlü 🐍\n")],
        (byte[])[.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes("id\tname\nÉ1\tÜnlü 🐍\n")],
        (byte[])[.. Encoding.BigEndianUnicode.Preamble, .. Encoding.BigEndianUnicode.GetBytes("id\tname\nÉ1\tÜnlü 🐍\n")],
    };

    [Theory]
    [MemberData(nameof(Encodings), DisableDiscoveryEnumeration = true)]
    public async Task ReadAsync_EncodingsOfSpreadsheets_AreRead(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);

        var file = await AnimalFile.ReadAsync(stream, null, TestBook.Cancellation);

        Assert.Equal([("É1", "Ünlü 🐍")], file.Rows.Select(r => (r.Tag, r.Name)));
    }

    [Fact]
    public async Task ReadAsync_NotUtf8_NamesTheLine()
    {
        using var stream = new MemoryStream([.. "id,name\nA,x\nB,"u8, 0xE9, (byte)'\n']);

        var file = await AnimalFile.ReadAsync(stream, null, TestBook.Cancellation);

        Assert.Equal(new RowProblem(0, 3, null, null, new ImportProblem.NotUtf8()), Assert.Single(file.Problems));
    }

    /// <summary>Faults of a file by itself: the text, and each problem as row, line, column, kind.</summary>
    public static TheoryData<string, string> Faults => new()
    {
        { "", "0:1:-:Empty" },
        { " \n\n", "0:1:-:Empty" },
        { "name,sex\nA,m\n", "1:1:-:NoColumn" },
        { "id,sire,father\nA,,\n", "1:1:father:ColumnTwice" },
        { "id,sex\nA,m\n,f\n", "3:3:id:IdMissing" },
        { "id,sex\nA,m\n\na,f\n", "4:4:id:IdTwice" },
        { "id,sex\na|b,m\n", "2:2:id:TagInvalid" },
        { "id,sex\nA,x\nB,3\n", "2:2:sex:SexUnknown 3:3:sex:SexUnknown" },
        { "id,hatched\nA,soon\n", "2:2:hatched:DateUnreadable" },
        { "id,hatched\nA,3/4/2024\n", "2:2:hatched:DateUnreadable" },
        { "id,dam\nA,B|C\nB,\nC,\n", "2:2:dam:SeveralDams" },
        { "id,status\nA,lost\n", "2:2:status:StatusUnknown" },
        { "id,mass_g\nA,\"1,450\"\nB,heavy\n", "2:2:mass_g:MassUnreadable 3:3:mass_g:MassUnreadable" },
        { "id,sex\nA,m,x\nB\n", "2:2:-:CellCount 3:3:-:CellCount" },
        { "id,notes\nA,\"x\ny\"\nB,a\"b\n", "3:4:-:QuotesBroken" },
        { "id,notes\nA,\"x\"y\nB,z\n", "2:2:-:QuotesBroken" },
        { "id,notes\nA,\"never closed\nB,z\n", "2:2:-:QuotesBroken" },
        { "id;statements\nA;nonsense\n", "2:2:statements:StatementsUnreadable" },
        { "id;statements\nA;\"[{\"\"kind\"\":\"\"rumour\"\"}]\"\n", "2:2:statements:StatementsUnreadable" },
        { "id;statements\nA;\"[{\"\"kind\"\":\"\"told\"\",\"\"x\"\":1}]\"\n", "2:2:statements:StatementsUnreadable" },
        { "id;statements\nA;\"[{\"\"kind\"\":\"\"told\"\",\"\"when\"\":\"\"soon\"\"}]\"\n", "2:2:statements:StatementsUnreadable" },
        { "id;statements\nA;[null]\n", "2:2:statements:StatementsUnreadable" },
        { "id;statements\nA;[{}]\n", "2:2:statements:StatementsUnreadable" },
        { "id,sex,hatched\n,x,soon\n", "2:2:id:IdMissing 2:2:sex:SexUnknown 2:2:hatched:DateUnreadable" },
    };

    [Theory]
    [MemberData(nameof(Faults), DisableDiscoveryEnumeration = true)]
    public void Read_Fault_IsNamedWithRowAndColumn(string text, string faults)
    {
        var file = AnimalFile.Read(text);

        var found = string.Join(' ', file.Problems.Select(p => $"{p.Row}:{p.Line}:{p.Column ?? "-"}:{p.Problem.GetType().Name}"));
        Assert.Equal(faults, found);
    }

    [Fact]
    public void Read_BrokenRow_LeavesTheOthers()
    {
        var file = AnimalFile.Read("id,sex\nA,m\nB,?!\nC,f\n");

        Assert.Equal(["A", "C"], file.Rows.Select(r => r.Tag));
        var problem = Assert.Single(file.Problems);
        Assert.Equal(new RowProblem(3, 3, "sex", "?!", new AnimalProblem.SexUnknown("?!")), problem);
        Assert.Equal("row 3, column sex: \"?!\" is no sex. m, f or u (unsexed).", ProblemWords.Say(problem));
    }
}
