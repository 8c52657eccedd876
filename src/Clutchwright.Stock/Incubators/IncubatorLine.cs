using Clutchwright.Stock.Clutches;

namespace Clutchwright.Stock.Incubators;

/// <summary>An incubator as it is listed.</summary>
/// <param name="Incubator">The incubator.</param>
/// <param name="Last">Its latest reading; null: none.</param>
/// <param name="Readings">How many readings stand.</param>
/// <param name="Clutches">The clutches in it whose young have not hatched, the one laid first first.</param>
public sealed record IncubatorLine(Incubator Incubator, Reading? Last, int Readings, IReadOnlyList<ClutchInside> Clutches);

/// <summary>A clutch in an incubator.</summary>
/// <param name="Clutch">The clutch.</param>
/// <param name="Dam">The tag of its dam.</param>
/// <param name="PutIn">When it was written down that it was put there (UTC); null: since it was written down as laid.</param>
public sealed record ClutchInside(Clutch Clutch, string Dam, DateTime? PutIn);
