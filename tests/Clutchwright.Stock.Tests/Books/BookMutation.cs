using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Clutchwright.Stock.Tests.Books;

/// <summary>A good file of a whole book made into a bad one, or sometimes another good one, by a seed.</summary>
internal sealed class BookMutation(IReadOnlyList<KeyValuePair<string, byte[]>> good, int seed)
{
    private static readonly string[] Names = ["../evil.txt", "/etc/passwd", "photos/../../x.jpg", "C:\\x.jpg", "photos\\x.jpg", "x.exe", "photos/sub/x.jpg", "photos/.jpg", "a\nb.csv", "book.json/", "photos/\ud83d\udc0d.jpg", "BOOK.JSON"];

    private static readonly string[] Values =
    [
        "null", "true", "-1", "0", "1e999", "-1e308", "99999999999999999999", "3.5", "\"\"", "\"x\"", "[]", "{}", "[null]", "\"\\u0000\"", "\"\\ud800\"", "\"2026-99-01\"", "\"0001-01-01\"",
        "\"9999-12-31\"", "\"2026-05-01T12:00:00\"", "\"00000000-0000-0000-0000-000000000000\"", "\"a\\nb\"", "\" padded \"", "{\"a\":1,\"a\":2}", "\"../x.jpg\"", "[[[[[[]]]]]]",
    ];

    private readonly Random _random = new(seed);

    /// <summary>What was done, for the report of a failure.</summary>
    public string Done { get; private set; } = "";

    public byte[] Make()
    {
        var entries = good.ToList();
        switch (_random.Next(8))
        {
            case 0:
                var whole = Zip(entries);
                Done = "cut short";
                return whole[..(_random.Next(whole.Length))];
            case 1:
                Done = "bytes turned";
                return Turned(Zip(entries));
            case 2:
                Done = "bytes of the JSON turned";
                return Zip(With(entries, "book.json", Turned(Json(entries))));
            case 3:
                Done = "a part of the JSON taken out or doubled";
                return Zip(With(entries, "book.json", Cut(Json(entries))));
            case 4:
                Entry(entries);
                return Zip(entries);
            default:
                return Zip(With(entries, "book.json", Node(Json(entries))));
        }
    }

    public static byte[] Zip(IEnumerable<KeyValuePair<string, byte[]>> entries)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8))
        {
            foreach (var (name, content) in entries)
            {
                using var entry = zip.CreateEntry(name, CompressionLevel.Fastest).Open();
                entry.Write(content);
            }
        }

        return bytes.ToArray();
    }

    private static byte[] Json(List<KeyValuePair<string, byte[]>> entries) => entries.Single(e => e.Key == "book.json").Value;

    private static List<KeyValuePair<string, byte[]>> With(List<KeyValuePair<string, byte[]>> entries, string name, byte[] content) =>
        [.. entries.Select(e => e.Key == name ? new(name, content) : e)];

    private T Of<T>(IReadOnlyList<T> items) => items[_random.Next(items.Count)];

    private byte[] Turned(byte[] bytes)
    {
        var turned = bytes.ToArray();
        for (var i = _random.Next(1, 6); i > 0; i--)
        {
            turned[_random.Next(turned.Length)] = (byte)_random.Next(256);
        }

        return turned;
    }

    private byte[] Cut(byte[] bytes)
    {
        var (from, length) = (_random.Next(bytes.Length), _random.Next(1, 200));
        var part = bytes[from..Math.Min(bytes.Length, from + length)];
        return _random.Next(2) == 0 ? [.. bytes[..from], .. bytes[(from + part.Length)..]] : [.. bytes[..from], .. part, .. bytes[from..]];
    }

    private void Entry(List<KeyValuePair<string, byte[]>> entries)
    {
        var one = _random.Next(entries.Count);
        switch (_random.Next(7))
        {
            case 0:
                var name = Of(Names);
                Done = $"a file {JsonSerializer.Serialize(name)} added";
                entries.Insert(one, new(name, [1, 2, 3]));
                break;
            case 1:
                Done = $"{entries[one].Key} doubled";
                entries.Add(entries[one]);
                break;
            case 2:
                Done = $"{entries[one].Key} taken out";
                entries.RemoveAt(one);
                break;
            case 3:
                Done = $"{entries[one].Key} emptied";
                entries[one] = new(entries[one].Key, []);
                break;
            case 4:
                Done = $"{entries[one].Key} of other bytes";
                entries[one] = new(entries[one].Key, Turned([.. entries[one].Value, 0]));
                break;
            case 5:
                Done = $"{entries[one].Key} a bomb";
                entries[one] = new(entries[one].Key, new byte[6 * 1024 * 1024]);
                break;
            default:
                Done = $"{entries[one].Key} renamed";
                entries[one] = new(Of(Names), entries[one].Value);
                break;
        }
    }

    // One value somewhere in the JSON becomes another, goes, or stands twice.
    private byte[] Node(byte[] json)
    {
        var root = JsonNode.Parse(json)!;
        var all = new List<JsonNode>();
        Collect(root, all);
        var node = Of(all);
        var value = Of(Values);
        var path = node.GetPath();
        switch (_random.Next(5))
        {
            case 0 when node.Parent is JsonObject parent:
                Done = $"{path} taken out";
                parent.Remove(node.GetPropertyName());
                break;
            case 1 when node is JsonArray { Count: > 0 } array:
                Done = $"{path} has a record twice";
                array.Add(Of(array.ToList())?.DeepClone());
                break;
            case 2 when node is JsonObject target:
                Done = $"{path} has another key";
                target["other"] = 1;
                break;
            case 3 when node is JsonValue && all.OfType<JsonValue>().ToList() is var values:
                // Such as the id of another record.
                var other = Of(values);
                Done = $"{path} as {other.GetPath()}";
                node.ReplaceWith(other.DeepClone());
                break;
            default:
                Done = $"{path} = {value}";
                const string Mark = "\"a mark that stands nowhere else\"";
                if (node.Parent is null)
                {
                    return Encoding.UTF8.GetBytes(value);
                }

                node.ReplaceWith(JsonNode.Parse(Mark)!);
                return Encoding.UTF8.GetBytes(root.ToJsonString().Replace(Mark, value, StringComparison.Ordinal));
        }

        return Encoding.UTF8.GetBytes(root.ToJsonString(_random.Next(2) == 0 ? null : new JsonSerializerOptions { WriteIndented = true }));
    }

    private static void Collect(JsonNode node, List<JsonNode> all)
    {
        all.Add(node);
        foreach (var child in node switch { JsonObject o => o.Select(p => p.Value), JsonArray a => a, _ => [] })
        {
            if (child is not null)
            {
                Collect(child, all);
            }
        }
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {Done}");
}
