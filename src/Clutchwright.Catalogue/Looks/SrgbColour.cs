using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Clutchwright.Catalogue.Looks;

/// <summary>A colour of a screen: sRGB, eight bits a channel.</summary>
/// <remarks>Equal when all channels are; no order. <c>default</c> is black. Source: docs/references.md [IEC1999].</remarks>
/// <param name="Red">0 to 255.</param>
/// <param name="Green">0 to 255.</param>
/// <param name="Blue">0 to 255.</param>
public readonly record struct SrgbColour(byte Red, byte Green, byte Blue)
{
    /// <summary>Reads <c>#RRGGBB</c>, the sign left out or not, in any case.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, out SrgbColour colour)
    {
        var digits = text.AsSpan().Trim();
        digits = digits.StartsWith("#", StringComparison.Ordinal) ? digits[1..] : digits;
        if (digits.Length == 6 && uint.TryParse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var code))
        {
            colour = new((byte)(code >> 16), (byte)((code >> 8) & 0xFF), (byte)(code & 0xFF));
            return true;
        }

        colour = default;
        return false;
    }

    /// <summary>Reads <c>#RRGGBB</c>.</summary>
    /// <exception cref="FormatException">It is none.</exception>
    public static SrgbColour Parse(string text) =>
        TryParse(text, out var colour) ? colour : throw new FormatException($"'{text}' is no colour; write #RRGGBB.");

    /// <summary>Writes <c>#RRGGBB</c>.</summary>
    public override string ToString() => $"#{Red:X2}{Green:X2}{Blue:X2}";
}
