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

    /// <summary>Eggs were laid; written down as a clutch since clutches are kept.</summary>
    Laid,

    /// <summary>Eggs of a clutch were held against a light; how many are good.</summary>
    Candled,

    /// <summary>Eggs of a clutch went bad.</summary>
    EggsLost,

    /// <summary>The first young of a clutch cut their shells.</summary>
    Pipped,
    Moved,

    /// <summary>Something about its health.</summary>
    Health,

    /// <summary>Anything else.</summary>
    Noted,

    /// <summary>It came into the room from elsewhere.</summary>
    Acquired,
    Sold,
    GivenAway,
    Died,
}
