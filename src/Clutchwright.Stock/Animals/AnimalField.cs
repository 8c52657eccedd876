namespace Clutchwright.Stock.Animals;

/// <summary>What can be entered of an animal: the fields of a form and the meanings of a column in a file.</summary>
public enum AnimalField
{
    Tag = 1,
    Sex,
    Sire,
    Dam,
    Hatched,
    Seen,
    Told,
    RuledOut,
    Name,
    Status,
    MassGrams,
    Notes,

    /// <summary>Statements with a date, a source or a doubt, which do not fit in the three columns of plain text.</summary>
    Statements,

    /// <summary>How many young alike a row of a file stands for, where only a count was kept.</summary>
    Count,

    /// <summary>A column that is none of ours: its cells are added to the notes under its header.</summary>
    KeptAsNote,

    /// <summary>A column that the keeper asked to leave out.</summary>
    LeftOut,
}
