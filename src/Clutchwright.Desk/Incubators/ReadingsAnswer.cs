namespace Clutchwright.Desk.Incubators;

/// <summary>A logger's file, with how it is to be read.</summary>
/// <param name="File">Its bytes.</param>
/// <param name="FileName">What it is called, for the history.</param>
/// <param name="Mapping">By header, in any case: <c>time</c>, <c>date</c>, <c>celsius</c>, <c>fahrenheit</c>, <c>humidity</c> or <c>leave out</c>;
/// headers left out go by their names.</param>
/// <param name="Dates"><c>dmy</c> or <c>mdy</c>, where the file alone does not tell; empty: it does.</param>
public sealed record ReadingsFile(ReadOnlyMemory<byte> File, string FileName, IReadOnlyDictionary<string, string?>? Mapping, string? Dates);

/// <summary>What taking a logger's file in would do.</summary>
/// <param name="Incubator">The incubator.</param>
/// <param name="Columns">How each column is read.</param>
/// <param name="Fields">What a column may be read as.</param>
/// <param name="Fresh">How many readings are new.</param>
/// <param name="Skipped">How many are in the book already.</param>
/// <param name="Samples">The first readings.</param>
/// <param name="First">The time of the earliest, UTC; <c>null</c>: none can be read.</param>
/// <param name="Last">The time of the latest, UTC.</param>
/// <param name="Celsius">The least and the most; <c>null</c>: none.</param>
/// <param name="HumidityPercent">The least and the most; <c>null</c>: none.</param>
/// <param name="Outside">How many are outside the limits of the incubator.</param>
/// <param name="AsksForDates">Whether it is to be said which number of a date is the day.</param>
/// <param name="Problems">Everything that is wrong, in the order of the file.</param>
public sealed record ReadingsPreviewed(
    string Incubator,
    IReadOnlyList<ReadingColumn> Columns,
    IReadOnlyList<string> Fields,
    int Fresh,
    int Skipped,
    IReadOnlyList<ReadingWords> Samples,
    DateTimeOffset? First,
    DateTimeOffset? Last,
    (double Least, double Most)? Celsius,
    (double Least, double Most)? HumidityPercent,
    int Outside,
    bool AsksForDates,
    IReadOnlyList<ReadingProblem> Problems);

/// <summary>A column of a logger's file.</summary>
/// <param name="Header">As the file has it.</param>
/// <param name="Field">What it is read as; <c>null</c>: left out.</param>
/// <param name="Sample">Its first value; <c>null</c>: always empty.</param>
public sealed record ReadingColumn(string Header, string? Field, string? Sample);

/// <summary>What is wrong with a logger's file.</summary>
/// <param name="Line">As a text editor counts; 0: the file.</param>
/// <param name="Column">The header; <c>null</c>: the whole row.</param>
/// <param name="Text">What, and what would be right.</param>
public sealed record ReadingProblem(int Line, string? Column, string Text)
{
    /// <summary>Where it is, for a person.</summary>
    public string Where => (Line, Column) switch
    {
        (0, null) => "the file",
        (0, { } column) => $"column {column}",
        ({ } line, null) => $"line {line}",
        ({ } line, { } column) => $"line {line}, {column}",
    };
}

/// <summary>What taking a logger's file in did.</summary>
/// <param name="Added">How many readings were written.</param>
/// <param name="Skipped">How many were in the book already.</param>
/// <param name="Deed">The deed that undoing takes back as a whole; <c>null</c>: nothing was new.</param>
public sealed record ReadingsTaken(int Added, int Skipped, long? Deed);
