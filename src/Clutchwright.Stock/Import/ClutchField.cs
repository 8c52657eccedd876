namespace Clutchwright.Stock.Import;

/// <summary>What a column of a file of clutches can mean.</summary>
public enum ClutchField
{
    Tag = 1,
    Dam,

    /// <summary>The male; several with <c>|</c> between where one of them is the father.</summary>
    Sire,
    Laid,

    /// <summary>Good eggs.</summary>
    Eggs,
    Slugs,

    /// <summary>Good eggs that went bad; they become an entry of the dam's log.</summary>
    Lost,
    MassGrams,

    /// <summary>By its name.</summary>
    Incubator,
    Hatched,

    /// <summary>Young that are in the book only as a number: <c>3 Pied; 1.2 Clown</c>.</summary>
    Counted,

    /// <summary>The ids of its young in the book, with <c>|</c> between.</summary>
    Young,
    Notes,

    /// <summary>A column that is none of ours: its cells are added to the notes under its header.</summary>
    KeptAsNote,

    /// <summary>A column that the keeper asked to leave out.</summary>
    LeftOut,
}
