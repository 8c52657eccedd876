using System.Buffers.Binary;
using System.Text;

namespace Clutchwright.Sheets.Fonts;

/// <summary>A TrueType font as far as setting text needs it: which characters it has, and how wide each is.</summary>
/// <remarks>Widths are those the pages are drawn with: advance widths without kerning. Cannot change.</remarks>
public sealed class Typeface
{
    private readonly Dictionary<int, int> _glyphs = [];
    private readonly ushort[] _advances;
    private readonly double _unitsPerEm;

    internal Typeface(byte[] file)
    {
        File = file;
        var tables = Tables(file);
        _unitsPerEm = Word(file, tables["head"] + 18);
        var metrics = Word(file, tables["hhea"] + 34);
        _advances = new ushort[metrics];
        for (var i = 0; i < metrics; i++)
        {
            _advances[i] = Word(file, tables["hmtx"] + (4 * i));
        }

        ReadCharacters(file, tables["cmap"]);
    }

    /// <summary>Gets the font file.</summary>
    internal byte[] File { get; }

    /// <summary>Whether the font can show a character.</summary>
    public bool Has(Rune character) => _glyphs.ContainsKey(character.Value);

    /// <summary>The width of a text.</summary>
    /// <param name="text">On one line; what the font lacks counts as its empty glyph.</param>
    /// <param name="size">The size of the font, in any unit.</param>
    /// <returns>In the unit of <paramref name="size"/>.</returns>
    public double Width(string text, double size)
    {
        var units = 0L;
        foreach (var character in text.EnumerateRunes())
        {
            units += _advances[Math.Min(_glyphs.GetValueOrDefault(character.Value), _advances.Length - 1)];
        }

        return units * size / _unitsPerEm;
    }

    private static Dictionary<string, int> Tables(byte[] file)
    {
        var tables = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < Word(file, 4); i++)
        {
            var at = 12 + (16 * i);
            tables.Add(Encoding.ASCII.GetString(file, at, 4), (int)Long(file, at + 8));
        }

        return tables;
    }

    private void ReadCharacters(byte[] file, int cmap)
    {
        for (var i = 0; i < Word(file, cmap + 2); i++)
        {
            var at = cmap + (int)Long(file, cmap + 4 + (8 * i) + 4);
            switch (Word(file, at))
            {
                case 4:
                    ReadSegments(file, at);
                    break;
                case 12:
                    ReadGroups(file, at);
                    break;
            }
        }
    }

    // Format 4 of the OpenType specification: segments of the first 65,536 characters.
    private void ReadSegments(byte[] file, int at)
    {
        var count = Word(file, at + 6) / 2;
        var (ends, starts) = (at + 14, at + 16 + (2 * count));
        var (deltas, offsets) = (starts + (2 * count), starts + (4 * count));
        for (var s = 0; s < count; s++)
        {
            var (first, last) = (Word(file, starts + (2 * s)), Word(file, ends + (2 * s)));
            var (delta, offset) = (Word(file, deltas + (2 * s)), Word(file, offsets + (2 * s)));
            for (var c = (int)first; c <= last && c != 0xFFFF; c++)
            {
                var glyph = offset == 0 ? c : Word(file, offsets + (2 * s) + offset + (2 * (c - first)));
                if (glyph != 0 && ((glyph + delta) & 0xFFFF) is > 0 and var found)
                {
                    _glyphs.TryAdd(c, found);
                }
            }
        }
    }

    // Format 12: groups of any characters.
    private void ReadGroups(byte[] file, int at)
    {
        for (var g = 0; g < (int)Long(file, at + 12); g++)
        {
            var group = at + 16 + (12 * g);
            var (first, last, glyph) = ((int)Long(file, group), (int)Long(file, group + 4), (int)Long(file, group + 8));
            for (var c = first; c <= last; c++)
            {
                _glyphs.TryAdd(c, glyph + c - first);
            }
        }
    }

    private static ushort Word(byte[] file, int at) => BinaryPrimitives.ReadUInt16BigEndian(file.AsSpan(at));

    private static uint Long(byte[] file, int at) => BinaryPrimitives.ReadUInt32BigEndian(file.AsSpan(at));
}
