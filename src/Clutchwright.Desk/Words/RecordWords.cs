namespace Clutchwright.Desk.Words;

/// <summary>Puts the names of states and kinds of statement into plain words.</summary>
public static class RecordWords
{
    /// <summary>Gets the states an animal may be given, with their words.</summary>
    public static IReadOnlyList<(string Value, string Words)> Statuses { get; } =
    [
        ("Kept", "kept"),
        ("HeldBack", "held back"),
        ("ForSale", "for sale"),
        ("Sold", "sold"),
        ("Given", "given away"),
        ("Died", "died"),
        ("Reference", "not ours, on record as a relative"),
    ];

    /// <summary>Gets the kinds of statement, with their words.</summary>
    public static IReadOnlyList<(string Value, string Words)> Statements { get; } =
    [
        ("Seen", "Seen by eye"),
        ("LookedAtNormal", "Looked at, shows nothing"),
        ("Told", "Told by the breeder or seller"),
        ("DnaTest", "DNA test of a shed"),
        ("ProvenByBreeding", "Proven by breeding"),
        ("RuledOut", "Ruled out"),
    ];

    /// <summary>A state in words; one that is not known as it is.</summary>
    public static string Status(string value) => Find(Statuses, value);

    /// <summary>A kind of statement in words; one that is not known as it is.</summary>
    public static string Statement(string value) => Find(Statements, value);

    private static string Find(IReadOnlyList<(string Value, string Words)> all, string value) =>
        all.FirstOrDefault(s => string.Equals(s.Value, value, StringComparison.Ordinal)).Words ?? value;
}
