namespace Clutchwright.Desk.Condition;

/// <summary>How much a remark about an animal asks for.</summary>
public enum WatchLevel
{
    /// <summary>It is as it should be, or there is a usual reason for it.</summary>
    Told = 1,

    /// <summary>Something is due: a weighing.</summary>
    Due,

    /// <summary>It is unusual for the animal; look at it.</summary>
    Look,

    /// <summary>It is beyond what the figures explain; a reptile veterinarian is to be asked.</summary>
    AskVeterinarian,
}
