namespace Clutchwright.Web.Season;

/// <summary>A pair that is named in the address.</summary>
/// <param name="Sire">The sire's tag.</param>
/// <param name="Dam">The dam's tag.</param>
/// <param name="Because">Why; <c>null</c>: not said.</param>
public sealed record SeasonCouple(string Sire, string Dam, string? Because = null)
{
    /// <summary>Gets the pair in words.</summary>
    public string Words => $"{Sire} with {Dam}";

    /// <summary>Reads <c>SIRE|DAM</c> or <c>SIRE|DAM|BECAUSE</c>.</summary>
    public static SeasonCouple Read(string text)
    {
        var parts = text.Split('|', 3, StringSplitOptions.TrimEntries);
        return new(parts[0], parts.Length > 1 ? parts[1] : string.Empty, parts.Length > 2 && parts[2].Length > 0 ? parts[2] : null);
    }

    /// <summary>Whether it is the same pair, for whatever reason.</summary>
    public bool IsOf(string sire, string dam) => Sire.Equals(sire, StringComparison.OrdinalIgnoreCase) && Dam.Equals(dam, StringComparison.OrdinalIgnoreCase);

    /// <summary>Writes it as <see cref="Read"/> reads it.</summary>
    public override string ToString() => Because is null ? $"{Sire}|{Dam}" : $"{Sire}|{Dam}|{Because}";
}
