namespace Clutchwright.Stock.Incubators;

/// <summary>Why an incubator or a reading cannot be as it was entered.</summary>
public abstract record IncubatorProblem : Problem
{
    private IncubatorProblem()
    {
    }

    public sealed record NameInvalid(string Name, int MaxLength) : IncubatorProblem;

    public sealed record NameTaken(string Name) : IncubatorProblem;

    public sealed record TemperatureOutOfRange(double Celsius) : IncubatorProblem;

    public sealed record HumidityOutOfRange(double Percent) : IncubatorProblem;

    /// <summary>The lowest is above the highest.</summary>
    public sealed record LimitsSwapped : IncubatorProblem;

    public sealed record NotesInvalid(int MaxLength) : IncubatorProblem;

    /// <summary>Neither a temperature nor a humidity.</summary>
    public sealed record NothingRead : IncubatorProblem;

    public sealed record InTheFuture(DateTime When) : IncubatorProblem;

    public sealed record NotFound(string Name) : IncubatorProblem;

    public sealed record ReadingNotFound : IncubatorProblem;

    /// <summary>Clutches whose young have not hatched are in it.</summary>
    public sealed record InUse(string Name) : IncubatorProblem
    {
        public required IReadOnlyList<string> Clutches { get; init; }
    }

    /// <summary>Something else was read off it at that very time.</summary>
    public sealed record ReadAlready(DateTime When) : IncubatorProblem;

    /// <summary>Each reading of many that is wrong.</summary>
    public sealed record RowsRefused(IReadOnlyList<ReadingRefused> Rows) : IncubatorProblem;

    /// <summary>Somebody else changed it meanwhile.</summary>
    public sealed record ChangedSince(string Name) : IncubatorProblem;

    /// <summary>Everything that is wrong.</summary>
    public sealed record Refused(IReadOnlyList<IncubatorProblem> Problems) : IncubatorProblem;
}
