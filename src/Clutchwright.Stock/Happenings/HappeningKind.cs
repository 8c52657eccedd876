namespace Clutchwright.Stock.Happenings;

/// <summary>What can happen to an animal, in the order of a year.</summary>
public enum HappeningKind
{
    Weighed = 1,
    Fed,
    FoodRefused,
    Shed,

    /// <summary>A male was put to a female.</summary>
    Introduced,

    /// <summary>The pair was seen to mate.</summary>
    Locked,
    Separated,

    /// <summary>Follicles were measured, in millimetres.</summary>
    FolliclesMeasured,
    Ovulated,
    PreLayShed,
    Laid,
    Moved,

    /// <summary>Something about its health.</summary>
    Health,

    /// <summary>Anything else.</summary>
    Noted,
}
