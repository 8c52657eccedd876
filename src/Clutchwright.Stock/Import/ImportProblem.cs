namespace Clutchwright.Stock.Import;

/// <summary>What is wrong at one place of a file.</summary>
/// <param name="Row">As a spreadsheet counts: the header is row 1. 0 if the file as a whole is meant.</param>
/// <param name="Line">As a text editor counts, from 1; differs from the row after a cell with a line break.</param>
/// <param name="Column">The header of the column as it stands in the file; null if the whole row is meant.</param>
/// <param name="Found">What stands there; null if the whole row is meant.</param>
/// <param name="Problem">What is wrong; <see cref="ProblemWords"/> says it, and what would be right.</param>
public sealed record RowProblem(int Row, int Line, string? Column, string? Found, Problem Problem);

/// <summary>Why a file, or a row of it, cannot be taken into the book.</summary>
public abstract record ImportProblem : Problem
{
    private ImportProblem()
    {
    }

    public sealed record TooLarge(long MaxBytes) : ImportProblem;

    public sealed record NotUtf8 : ImportProblem;

    public sealed record Empty : ImportProblem
    {
        /// <summary>The columns that such a file can have; empty: any.</summary>
        public required IReadOnlyList<string> Names { get; init; }
    }

    public sealed record TooManyColumns(int Found, int Most) : ImportProblem;

    public sealed record TooManyRows(int Most) : ImportProblem;

    /// <summary>No column is taken for a field that every row must have.</summary>
    public sealed record NoColumn(string Field) : ImportProblem
    {
        public required IReadOnlyList<string> Headers { get; init; }
    }

    /// <summary>Two columns are taken for the same field.</summary>
    public sealed record ColumnTwice(string Field, string Header, string OtherHeader) : ImportProblem;

    /// <summary>The mapping names a column that the file does not have.</summary>
    public sealed record NoSuchColumn(int Index) : ImportProblem;

    /// <summary>A quotation mark inside a cell that is not in quotation marks, or not doubled, or never closed.</summary>
    public sealed record QuotesBroken(string Cell) : ImportProblem;

    public sealed record CellCount(int Found, int Expected) : ImportProblem;

    public sealed record IdMissing : ImportProblem;

    /// <summary>A cell is empty that must not be.</summary>
    public sealed record CellMissing(string Field) : ImportProblem;

    public sealed record EggsUnreadable(string Text) : ImportProblem;

    /// <summary>Not young of which only the number is kept.</summary>
    public sealed record CountedUnreadable(string Text) : ImportProblem;

    /// <summary>A row of the file says what an earlier one said of the same clutch or picture.</summary>
    public sealed record RowTwice(int FirstRow) : ImportProblem;

    /// <summary>The book has the clutch, recorded otherwise.</summary>
    public sealed record ClutchInStock(string Tag) : ImportProblem
    {
        /// <summary>The columns that differ.</summary>
        public required IReadOnlyList<string> Differences { get; init; }
    }

    /// <summary>The young is of another clutch, in the book or in the file.</summary>
    public sealed record YoungOfOtherClutch(string Tag, string Clutch) : ImportProblem;

    /// <summary>The young is in the book with other parents than the clutch.</summary>
    public sealed record YoungOfOtherParents(string Tag) : ImportProblem;

    /// <summary>What was eaten stands in a row that is about no meal.</summary>
    public sealed record FoodNotFitting(string Kind) : ImportProblem;

    public sealed record IdTwice(string Tag, int FirstRow) : ImportProblem;

    /// <summary>The parent is neither in the file nor in the stock.</summary>
    public sealed record ParentUnknown(string Tag, string? Nearest) : ImportProblem;

    /// <summary>Several dams: only sires can be in doubt.</summary>
    public sealed record SeveralDams(string Text) : ImportProblem;

    /// <summary>Some possible sires have a chance and some have none.</summary>
    public sealed record SomeSiresWeighed(string Text) : ImportProblem;

    /// <summary>The chances of the possible sires are not in sum 1, or one is 0.</summary>
    public sealed record SireWeightsNotOne(string Text, string Sum) : ImportProblem;

    /// <summary>The book keeps no chances of possible sires.</summary>
    public sealed record SireWeightsInStock(string Plain) : ImportProblem;

    /// <summary>Not how many young a row stands for.</summary>
    public sealed record CountUnreadable(string Text, int Most) : ImportProblem;

    /// <summary>A row for several young is no animal of the stock.</summary>
    public sealed record CountInStock(int Count) : ImportProblem;

    /// <summary>The parent named is a row for several young.</summary>
    public sealed record ParentIsSeveral(string Tag, int Count) : ImportProblem;

    /// <summary>The cell of further statements is not what the program writes there.</summary>
    public sealed record StatementsUnreadable(string Reason) : ImportProblem;

    /// <summary>The stock has an animal of this id that is recorded otherwise.</summary>
    public sealed record AlreadyInStock(string Tag) : ImportProblem
    {
        /// <summary>The columns that differ.</summary>
        public required IReadOnlyList<string> Differences { get; init; }
    }

    /// <summary>The same picture of the same animal is in the set under another name.</summary>
    public sealed record PhotoTwice(string OtherFile) : ImportProblem;

    /// <summary>Nothing was written, because of these.</summary>
    public sealed record PhotosRefused(IReadOnlyList<PhotoRefused> Photos) : ImportProblem;

    /// <summary>Every row is in the stock already, or there is none.</summary>
    public sealed record NothingNew(int Skipped) : ImportProblem;

    /// <summary>Nothing was written, because of these.</summary>
    public sealed record Refused : ImportProblem
    {
        public Refused(IReadOnlyList<RowProblem> problems) => Problems = problems;

        public IReadOnlyList<RowProblem> Problems { get; }

        public override string ToString() => $"Refused: {string.Join("; ", Problems)}";
    }
}
