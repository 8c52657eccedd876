namespace Clutchwright.Stock.History;

/// <summary>A deed as it is listed.</summary>
/// <remarks><c>When</c> is UTC. <c>Changes</c> counts the records changed. <c>Undoes</c> is the deed that this one undid, null if it
/// is none that undoes. <c>UndoneBy</c> is the last deed that undid this one, null if none did; if that one was undone in turn,
/// this deed stands again.</remarks>
public sealed record DeedLine(DeedId DeedId, DateTime When, string Who, string Words, int Changes, DeedId? Undoes, DeedId? UndoneBy);
