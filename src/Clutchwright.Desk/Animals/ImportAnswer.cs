namespace Clutchwright.Desk.Animals;

/// <summary>One column of a file and where it goes.</summary>
/// <param name="Header">As in the file.</param>
/// <param name="Field">The field it fills, or <c>null</c>: kept as a note.</param>
/// <param name="Sample">The first value that is not empty.</param>
public sealed record ImportColumn(string Header, string? Field, string? Sample);

/// <summary>Something wrong with a file.</summary>
/// <param name="Row">The row as a spreadsheet counts, the header being 1; 0: the file as a whole.</param>
/// <param name="Column">The column's header, or <c>null</c>.</param>
/// <param name="Text">What is wrong and what would be right.</param>
public sealed record ImportProblem(int Row, string? Column, string Text);

/// <summary>A row as it would be written.</summary>
/// <param name="Row">The row as a spreadsheet counts.</param>
/// <param name="Tag">The animal's tag.</param>
/// <param name="Text">What the row says, in one line.</param>
/// <param name="IsSkipped">Whether the stock already holds the very same animal.</param>
public sealed record ImportRow(int Row, string Tag, string Text, bool IsSkipped);

/// <summary>What a file would do, before anything is written.</summary>
/// <param name="Columns">The mapping.</param>
/// <param name="Fields">The fields a column may be given to.</param>
/// <param name="Rows">The rows that can be read.</param>
/// <param name="Problems">Everything wrong; the file is taken only if this is empty.</param>
public sealed record ImportPreview(
    IReadOnlyList<ImportColumn> Columns,
    IReadOnlyList<string> Fields,
    IReadOnlyList<ImportRow> Rows,
    IReadOnlyList<ImportProblem> Problems);

/// <summary>What was written.</summary>
/// <param name="Added">How many animals.</param>
/// <param name="Skipped">How many rows were there already.</param>
/// <param name="Deed">For undoing it.</param>
public sealed record ImportDone(int Added, int Skipped, long Deed);

/// <summary>The state of the stock on the start page.</summary>
/// <param name="Males">Animals kept, males.</param>
/// <param name="Females">Animals kept, females.</param>
/// <param name="Unsexed">Animals kept, not sexed.</param>
/// <param name="PossibleHets">How many are possible hets: whether they carry some recessive allele is in doubt.</param>
/// <param name="WithProblems">How many have a statement that cannot be read or contradicts another.</param>
/// <param name="Recent">The latest deeds.</param>
/// <param name="IsDemo">Whether this is the demo stock.</param>
public sealed record TodayAnswer(
    int Males, int Females, int Unsexed, int PossibleHets, int WithProblems, IReadOnlyList<DeedLine> Recent, bool IsDemo);
