using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Photos;

namespace Clutchwright.Stock.Import;

/// <summary>A picture of a set, prepared to be kept.</summary>
/// <param name="File">Its name in the set.</param>
/// <param name="Animal">The animal's id.</param>
/// <param name="Taken">When it was taken; null: not known.</param>
/// <param name="Caption">What is said of it.</param>
/// <param name="Digest">Of the picture as it is to be kept.</param>
/// <param name="Load">Gives the picture when it is written, so that not all are in memory at once.</param>
public sealed record SetPhoto(string File, string Animal, DateRange? Taken, string Caption, string Digest, Func<PhotoEntry> Load);

/// <summary>A picture of a set that cannot be taken.</summary>
/// <param name="File">Its name in the set.</param>
/// <param name="Problem">Why.</param>
public sealed record PhotoRefused(string File, Problem Problem);

/// <summary>What taking a set of photos in would do.</summary>
/// <param name="Fates">Of each picture, in the order given.</param>
/// <param name="Problems">Everything that is wrong. Nothing is taken while there is any.</param>
public sealed record PhotoSetPreview(IReadOnlyList<RowFate> Fates, IReadOnlyList<PhotoRefused> Problems);
