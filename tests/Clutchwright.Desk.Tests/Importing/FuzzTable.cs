using System.Text;
using Clutchwright.Desk.Importing;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Desk.Tests.Importing;

/// <summary>Makes files of animals, clutches and of the log that are good, and then spoils most of them.</summary>
internal static class FuzzTable
{
    private static readonly string[] Formulas =
        ["=cmd|'/C calc'!A0", "+1+1", "-2+3", "@SUM(A1)", "\t=1", "'=1", "''+x", "＝1", "=HYPERLINK(\"http://x\",\"y\")", "-", "+", "@", "=", "\r=1"];

    private static readonly string[] Oddities = ["\u202Eabc\u202C", "a\u200Bb", "\u2066x\u2069", "\uFEFFx", "é", "🐍", "e\u0301", "\u2028", "ﷺ", "İ", "ß", "\u0007", "a\tb", "  x  "];

    public static (byte[] Bytes, string How) Make(ImportKind kind, SplitMix64 random)
    {
        var (header, rows) = Good(kind, random);
        return Spoil(header, rows, random);
    }

    public static (string[] Header, List<string[]> Rows) Good(ImportKind kind, SplitMix64 random)
    {
        var rows = new List<string[]>();
        var count = 1 + random.Below(6);
        switch (kind)
        {
            case ImportKind.Clutches:
                for (var i = 0; i < count; i++)
                {
                    rows.Add(
                    [
                        random.Below(3) == 0 ? "" : $"Z{random.Below(1000)}-{i}",
                        $"F{1 + random.Below(4)}",
                        random.Below(3) switch { 0 => "", 1 => $"M{1 + random.Below(4)}", _ => "M1|M2" },
                        $"20{22 + random.Below(4)}-0{1 + random.Below(9)}-1{i}",
                        random.Below(2) == 0 ? "" : $"{random.Below(12)}",
                        random.Below(3) == 0 ? $"{random.Below(4)}" : "",
                        random.Below(4) == 0 ? $"{random.Below(3)}" : "",
                        random.Below(3) switch { 0 => "", 1 => "540.5", _ => "540,5 g" },
                        random.Below(4) switch { 0 => "3 Pastel", 1 => "1.2 normal; 1 Clown", _ => "" },
                        Words(random),
                    ]);
                }

                return (["id", "dam", "sire", "laid", "eggs", "slugs", "lost", "mass_g", "counted", "notes"], rows);
            case ImportKind.Log:
                for (var i = 0; i < count; i++)
                {
                    var (kindWords, amount, mate) = random.Below(7) switch
                    {
                        0 => ("weighed", $"{100 + random.Below(2000)}", ""),
                        1 => ("Ate", "", ""),
                        2 => ("refused", "", ""),
                        3 => ("shed", "", ""),
                        4 => ("locked", "", $"M{1 + random.Below(4)}"),
                        5 => ("fed", "25,5", ""),
                        _ => ("ovulation", "", ""),
                    };
                    rows.Add([$"F{1 + random.Below(4)}", Day(random), kindWords, amount, mate, Words(random)]);
                }

                return (["animal", "date", "kind", "amount", "mate", "text"], rows);
            default:
                for (var i = 0; i < count; i++)
                {
                    rows.Add(
                    [
                        $"N{random.Below(100_000)}-{i}",
                        random.Below(3) switch { 0 => "m", 1 => "f", _ => "" },
                        random.Below(3) == 0 ? $"M{1 + random.Below(4)}" : random.Below(3) == 0 ? "M1|M3" : "",
                        random.Below(3) == 0 ? $"F{1 + random.Below(4)}" : "",
                        random.Below(2) == 0 ? "" : Day(random),
                        random.Below(3) switch { 0 => "normal", 1 => "Pastel Clown", _ => "" },
                        random.Below(3) == 0 ? "66% het Piebald" : "",
                        Words(random),
                        random.Below(3) == 0 ? "812.5" : "",
                        Words(random),
                    ]);
                }

                return (["id", "sex", "sire", "dam", "hatched", "seen", "told", "name", "mass_g", "notes"], rows);
        }
    }

    /// <summary>A text as CSV.</summary>
    public static string Write(IEnumerable<string> header, IEnumerable<string[]> rows, char delimiter = ',', string lineEnd = "\n") =>
        string.Concat(new[] { header.ToArray() }.Concat(rows).Select(row => string.Join(delimiter, row.Select(cell => Quote(cell, delimiter))) + lineEnd));

    private static string Quote(string cell, char delimiter) =>
        cell.AsSpan().ContainsAny([delimiter, '"', '\r', '\n']) ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;

    private static string Day(SplitMix64 random) => random.Below(5) switch
    {
        0 => "about 3 March 2024",
        1 => "2025",
        2 => "June 2024",
        _ => $"2025-{1 + random.Below(12):00}-{1 + random.Below(28):00}",
    };

    private static string Words(SplitMix64 random) => random.Below(8) switch
    {
        0 => Formulas[random.Below(Formulas.Length)],
        1 => Oddities[random.Below(Oddities.Length)],
        2 => "said \"hi\", and\nwent",
        3 => "shy",
        _ => "",
    };

    private static (byte[] Bytes, string How) Spoil(string[] header, List<string[]> rows, SplitMix64 random)
    {
        var text = Write(header, rows);
        var utf8 = Encoding.UTF8.GetBytes(text);
        switch (random.Below(24))
        {
            case 0 or 1 or 2:
                return (utf8, "good");
            case 3:
                return (utf8[..random.Below(utf8.Length + 1)], "truncated");
            case 4:
                return ([.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes(text)], "UTF-16");
            case 5:
                var wide = random.Below(2) == 0 ? Encoding.Unicode.GetBytes(text) : [.. Encoding.BigEndianUnicode.Preamble, .. Encoding.BigEndianUnicode.GetBytes(text)];
                return (wide[..(wide.Length - random.Below(2))], "UTF-16 without mark, or odd");
            case 6:
                return (Encoding.Latin1.GetBytes(text.Replace("shy", "scheu, ängstlich é", StringComparison.Ordinal)), "Latin-1");
            case 7:
                return (Insert(utf8, random, [(byte)(0x80 + random.Below(0x80))]), "invalid UTF-8");
            case 8:
                return (Insert(utf8, random, new byte[1 + random.Below(3)]), "NUL");
            case 9:
                return (Insert(utf8, random, "\""u8.ToArray()), "quote");
            case 10:
                Cell(new string((char)('a' + random.Below(26)), random.Below(50) == 0 ? 3_000_000 : 30_000));
                return (Again(), "huge cell");
            case 11:
                var many = random.Below(20) == 0 ? 100_000 : 900 + random.Below(200);
                return (Encoding.UTF8.GetBytes(Write([.. header, .. Enumerable.Range(0, many).Select(n => $"x{n}")], rows.Select(r => (string[])[.. r, .. Enumerable.Repeat("", many)]))), "many columns");
            case 12:
                var times = random.Below(2_000) == 0 ? 1_000_000 / rows.Count : random.Below(300);
                return (Encoding.UTF8.GetBytes(Write(header, Enumerable.Repeat(rows, times).SelectMany(r => r))), "many rows");
            case 13:
                Cell(Formulas[random.Below(Formulas.Length)]);
                return (Again(), "formula");
            case 14:
                string[] ends = ["\n", "\r\n", "\r", "\n\n", "\n\r"];
                return (Encoding.UTF8.GetBytes(string.Concat(text.Split('\n').Select(line => line + ends[random.Below(ends.Length)]))), "mixed line ends");
            case 15:
                return ([.. Encoding.UTF8.Preamble, .. utf8], "mark");
            case 16:
                Cell(Oddities[random.Below(Oddities.Length)]);
                return (Again(), "oddity");
            case 17:
                header[random.Below(header.Length)] = header[random.Below(header.Length)];
                return (Again(), "heading twice");
            case 18:
                var flipped = utf8.ToArray();
                for (var i = 0; i <= random.Below(8); i++)
                {
                    flipped[random.Below(flipped.Length)] = (byte)random.Below(256);
                }

                return (flipped, "bytes");
            case 19:
                return (Encoding.UTF8.GetBytes(Write(header, rows, random.Below(2) == 0 ? ';' : '\t')), "delimiter");
            case 20:
                var short1 = random.Below(rows.Count);
                rows[short1] = rows[short1][..random.Below(rows[short1].Length)];
                return (Again(), "cells missing");
            case 21:
                return ([.. Enumerable.Range(0, random.Below(400)).Select(_ => (byte)random.Below(256))], "garbage");
            case 22:
                string[] wrong = ["-1", "1e999", "NaN", "99999999999999999999", "2024-13-45", "31/12/2024", "nobody", "x|y|", "|", "M1", "9999", "0", "1,450", "{\"a\":1}", "F1"];
                Cell(wrong[random.Below(wrong.Length)]);
                return (Again(), "wrong value");
            default:
                header[random.Below(header.Length)] = random.Below(2) == 0 ? "" : "rack";
                return (Again(), "heading lost");
        }

        void Cell(string value)
        {
            var row = rows[random.Below(rows.Count)];
            row[random.Below(row.Length)] = value;
        }

        byte[] Again() => Encoding.UTF8.GetBytes(Write(header, rows));
    }

    private static byte[] Insert(byte[] bytes, SplitMix64 random, byte[] what)
    {
        var at = random.Below(bytes.Length + 1);
        return [.. bytes[..at], .. what, .. bytes[at..]];
    }

    /// <summary>The cells of a CSV text, read by the definition of RFC 4180 and nothing else.</summary>
    public static List<List<string>> Read(string text)
    {
        var (rows, row, cell, isQuoted) = (new List<List<string>>(), new List<string>(), new StringBuilder(), false);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (isQuoted ? c != '"' : c is not (',' or '"' or '\r' or '\n'))
            {
                cell.Append(c);
            }
            else if (isQuoted && i + 1 < text.Length && text[i + 1] == '"')
            {
                cell.Append('"');
                i++;
            }
            else if (c == '"')
            {
                isQuoted = !isQuoted;
            }
            else if (c == ',')
            {
                End();
            }
            else if (c == '\n')
            {
                End();
                rows.Add(row);
                row = [];
            }
        }

        return rows;

        void End()
        {
            row.Add(cell.ToString());
            cell.Clear();
        }
    }
}
