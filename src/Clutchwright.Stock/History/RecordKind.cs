namespace Clutchwright.Stock.History;

public enum RecordKind
{
    Animal = 1,
    Statement = 2,
    Season = 3,
    Route = 4,
    Happening = 5,
    Clutch = 6,
    Incubator = 7,
    Reading = 8,
    Photo = 9,
    Setting = 10,
}
