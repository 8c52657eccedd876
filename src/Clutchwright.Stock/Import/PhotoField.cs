namespace Clutchwright.Stock.Import;

/// <summary>What a column of the list in a set of photos can mean.</summary>
public enum PhotoField
{
    /// <summary>The picture's name in the set.</summary>
    File = 1,
    Animal,
    Date,
    Note,

    /// <summary>A column that is none of ours: its cells are added to the note under its header.</summary>
    KeptAsNote,

    /// <summary>A column that the keeper asked to leave out.</summary>
    LeftOut,
}
