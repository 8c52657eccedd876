namespace Clutchwright.Stock.Export;

/// <summary>The whole book in a file: what it is called, of which version it is, and how large it may be. Every limit stands here.</summary>
public static class BookFormat
{
    /// <summary>The first key of the file says it.</summary>
    public const string Name = "clutchwright-book";

    /// <summary>Grows when a program that knew the version before could no longer read the file.</summary>
    public const int Version = 1;

    /// <summary>The whole book as JSON, inside the ZIP.</summary>
    public const string JsonEntry = "book.json";

    public const string PhotoFolder = "photos/";

    /// <summary>The most that is read of the JSON, in bytes.</summary>
    public const int MostJsonBytes = 256 * 1024 * 1024;

    /// <summary>The most records of all kinds together.</summary>
    public const int MostRecords = 1_000_000;

    /// <summary>The largest picture, in bytes.</summary>
    public const int MostPhotoBytes = 32 * 1024 * 1024;

    /// <summary>The most files in the ZIP.</summary>
    public const int MostEntries = 250_000;

    /// <summary>Text packs to a thirtieth of its size at best; what claims to unpack to more than this many times its size is no book.</summary>
    public const int MostRatio = 300;

    /// <summary>Below this a file unpacks to so little that its ratio does not matter, in bytes.</summary>
    public const int RatioMattersFrom = 4 * 1024 * 1024;

    /// <summary>The longest name of a file in the ZIP.</summary>
    public const int MaxEntryNameLength = 200;

    /// <summary>Tables for other programs, beside the JSON. They are not read back.</summary>
    internal static readonly IReadOnlyList<string> Tables =
        ["animals.csv", "statements.csv", "clutches.csv", "log.csv", "incubators.csv", "readings.csv", "photos.csv"];

    /// <summary>Everything else that the program puts into the ZIP for other programs and for people.</summary>
    internal static readonly IReadOnlyList<string> Others = ["README.txt", "pedigree.ped", "pedigree.map", "pedigree.phe", "pedigree.txt"];
}
