using System.Globalization;
using System.Text.Json;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Import;

/// <summary>Reads one row of a pedigree file and collects everything that is wrong with it.</summary>
internal sealed class AnimalRowReader(RowCells<AnimalField> cells, IReadOnlyDictionary<string, string> spelling)
{
    public IReadOnlyList<RowProblem> Problems => cells.Problems;

    /// <summary>The id of the row, once it is read; null if there is none.</summary>
    public string? Tag { get; private set; }

    /// <returns>The animal; null if anything is wrong.</returns>
    public AnimalRow? Read()
    {
        if (!cells.IsWhole())
        {
            return null;
        }

        var tag = Cell(AnimalField.Tag);
        if (tag.Length == 0)
        {
            Add(AnimalField.Tag, new ImportProblem.IdMissing());
        }
        else if (!Tags.IsValid(tag))
        {
            Add(AnimalField.Tag, new AnimalProblem.TagInvalid(tag));
        }
        else
        {
            Tag = tag;
        }

        var sires = ReadSires();
        var row = new AnimalRow
        {
            Row = cells.Row,
            Line = cells.Line,
            Tag = tag,
            Name = TextRules.TrimToNull(Cell(AnimalField.Name)),
            Sex = ReadSex(),
            SireTags = sires.Tags,
            SireWeights = sires.Weights,
            Dam = ReadDam(),
            Hatched = cells.Date(AnimalField.Hatched),
            Status = ReadStatus(),
            MassGrams = cells.Number(AnimalField.MassGrams),
            Count = ReadCount(),
            Notes = cells.Notes(AnimalField.Notes, "\n"),
            Statements = ReadStatements(),
        };
        return Problems.Count == 0 ? row : null;
    }

    public RowProblem At(AnimalField field, Problem problem) => cells.At(field, problem);

    private void Add(AnimalField field, Problem problem) => cells.Add(field, problem);

    private string Cell(AnimalField field) => cells.Cell(field);

    private Sex? ReadSex()
    {
        var text = Cell(AnimalField.Sex);
        switch (text.ToUpperInvariant())
        {
            case "M" or "MALE" or "1.0":
                return Sex.Male;
            case "F" or "FEMALE" or "0.1":
                return Sex.Female;
            case "" or "U" or "UNSEXED" or "UNKNOWN" or "?" or "0.0.1":
                return null;
            default:
                Add(AnimalField.Sex, new AnimalProblem.SexUnknown(text));
                return null;
        }
    }

    private SireCell ReadSires()
    {
        var read = SireCell.Read(Cell(AnimalField.Sire), Spelt);
        if (!read.IsDone)
        {
            Add(AnimalField.Sire, read.Problem);
            return new([], []);
        }

        return read.Value;
    }

    private string? ReadDam()
    {
        var text = Cell(AnimalField.Dam);
        if (text.Contains(Tags.Separator, StringComparison.Ordinal))
        {
            Add(AnimalField.Dam, new ImportProblem.SeveralDams(text));
            return null;
        }

        return text.Length == 0 ? null : Spelt(text);
    }

    private string Spelt(string tag) => spelling.GetValueOrDefault(Tags.Key(tag), tag);

    private AnimalStatus ReadStatus()
    {
        var text = Cell(AnimalField.Status);
        if (text.Length == 0)
        {
            return AnimalStatus.Kept;
        }

        if (StatusWords.Read(text) is { } status)
        {
            return status;
        }

        Add(AnimalField.Status, new AnimalProblem.StatusUnknown(text));
        return AnimalStatus.Kept;
    }

    private int ReadCount()
    {
        var text = Cell(AnimalField.Count);
        if (text.Length == 0)
        {
            return 1;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= 1 and <= AnimalRow.MaxCount)
        {
            return count;
        }

        Add(AnimalField.Count, new ImportProblem.CountUnreadable(text, AnimalRow.MaxCount));
        return 1;
    }

    private List<StatementEntry> ReadStatements()
    {
        var statements = new List<StatementEntry>();
        foreach (var (field, kind) in new[]
        {
            (AnimalField.Seen, StatementKind.Seen), (AnimalField.Told, StatementKind.Told), (AnimalField.RuledOut, StatementKind.RuledOut),
        })
        {
            if (Cell(field) is { Length: > 0 } text)
            {
                statements.Add(new StatementEntry { Kind = kind, Text = text }.Tidy());
            }
        }

        if (Cell(AnimalField.Statements) is { Length: > 0 } others)
        {
            try
            {
                statements.AddRange(StatementCells.ReadOthers(others).Select(statement => statement.Tidy()));
            }
            catch (JsonException exception)
            {
                Add(AnimalField.Statements, new ImportProblem.StatementsUnreadable(exception.Message));
            }
        }

        return statements;
    }
}
