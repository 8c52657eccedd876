namespace Clutchwright.Catalogue.Entries;

/// <summary>How far the project has read a source.</summary>
public enum SourceReading
{
    FullText = 1,
    Abstract = 2,

    /// <summary>Only its reference was seen.</summary>
    Reference = 3,

    /// <summary>From memory, not confirmed.</summary>
    Recalled = 4,
}

/// <summary>Something a claim stands on.</summary>
/// <param name="Id">As claims name it.</param>
/// <param name="Citation">In full.</param>
/// <param name="Doi">Without the address before it; <c>null</c>: none known.</param>
/// <param name="Seen">How far it was read.</param>
public sealed record Source(string Id, string Citation, string? Doi, SourceReading Seen);
