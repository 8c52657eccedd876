namespace Clutchwright.Desk.Photos;

/// <summary>A photo of an animal, in words.</summary>
/// <param name="Id">For changing it and taking it back.</param>
/// <param name="Version">For noticing that someone else changed it meanwhile.</param>
/// <param name="Digest">Names its picture.</param>
/// <param name="Width">In pixels.</param>
/// <param name="Height">In pixels.</param>
/// <param name="Taken">When, in the keeper's words; <c>null</c>: not known.</param>
/// <param name="AgeMonths">The animal's age in months then; <c>null</c>: not known.</param>
/// <param name="Stage">The stage of life it was in: <c>hatchling</c>, <c>juvenile</c>, <c>subadult</c> or <c>adult</c>; <c>null</c>: not known.</param>
/// <param name="Caption">What the keeper says of it; empty: nothing.</param>
public sealed record PhotoWords(Guid Id, Guid Version, string Digest, int Width, int Height, string? Taken, int? AgeMonths, string? Stage, string Caption)
{
    /// <summary>Gets the age in words; <c>null</c>: not known.</summary>
    public string? Age => AgeMonths switch
    {
        null => null,
        0 => "under a month",
        1 => "1 month",
        < 24 and var months => $"{months} months",
        var months when months % 12 == 0 => $"{months / 12} years",
        var months => $"{months / 12} years, {months % 12} months",
    };
}

/// <summary>A photo as a file that a person gives.</summary>
/// <param name="Name">The file's name, to tell of it.</param>
/// <param name="Content">The file.</param>
public sealed record PhotoFile(string Name, ReadOnlyMemory<byte> Content);
