namespace Clutchwright.Stock.Import;

/// <summary>What a column of a file of the log can mean.</summary>
public enum LogField
{
    Animal = 1,
    Date,

    /// <summary>What happened; may be empty where a mass or a food says it.</summary>
    Kind,

    /// <summary>In the unit of the kind.</summary>
    Amount,

    /// <summary>A weighing of that day, whatever else the row says.</summary>
    MassGrams,

    /// <summary>What was fed or refused.</summary>
    Food,

    /// <summary>The other of a pair.</summary>
    Mate,
    Clutch,
    Note,

    /// <summary>A column that is none of ours: its cells are added to the note under its header.</summary>
    KeptAsNote,

    /// <summary>A column that the keeper asked to leave out.</summary>
    LeftOut,
}
