using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Clutchwright.Catalogue.Yaml;

/// <summary>Reads one YAML file into a tree that knows the place of every key and value.</summary>
internal static class YamlReader
{
    /// <summary>Reads a file; after a fault of syntax there is no tree.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="report">Told line, column and text of every problem.</param>
    public static YamlItem? Read(TextReader text, Action<int, int, string> report)
    {
        var parser = new Parser(text);
        try
        {
            parser.Consume<StreamStart>();
            if (parser.Accept<StreamEnd>(out _))
            {
                report(0, 0, "The file is empty.");
                return null;
            }

            parser.Consume<DocumentStart>();
            var root = Item(parser, report);
            parser.Consume<DocumentEnd>();
            if (parser.Accept<DocumentStart>(out var second))
            {
                report((int)second.Start.Line, (int)second.Start.Column, "A second document begins here; a file holds one.");
            }

            return root;
        }
        catch (YamlException fault)
        {
            report((int)fault.Start.Line, (int)fault.Start.Column, $"Not YAML: {fault.Message}");
            return null;
        }
        catch (InvalidOperationException) when (parser.Current is not null)
        {
            // The parser's own slip over a bracket that is never closed; where it was is all it still knows.
            report((int)parser.Current.End.Line, (int)parser.Current.End.Column, "Not YAML: a bracket, brace or quote is not closed behind this.");
            return null;
        }
    }

    private static YamlItem Item(IParser parser, Action<int, int, string> report)
    {
        if (parser.TryConsume<Scalar>(out var scalar))
        {
            return Scalar(scalar);
        }

        if (parser.TryConsume<SequenceStart>(out var sequence))
        {
            var items = new List<YamlItem>();
            while (!parser.TryConsume<SequenceEnd>(out _))
            {
                items.Add(Item(parser, report));
            }

            return new YamlList(items, (int)sequence.Start.Line, (int)sequence.Start.Column);
        }

        if (parser.TryConsume<MappingStart>(out var mapping))
        {
            return Map(parser, mapping, report);
        }

        var other = parser.Consume<ParsingEvent>();
        throw new YamlException(other.Start, other.End, "anchors and aliases are not used in a catalogue; write the value out.");
    }

    private static YamlMap Map(IParser parser, MappingStart start, Action<int, int, string> report)
    {
        var entries = new List<YamlEntry>();
        var keys = new Dictionary<string, YamlScalar>(StringComparer.Ordinal);
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            var keyItem = Item(parser, report);
            var value = Item(parser, report);
            if (keyItem is not YamlScalar key)
            {
                report(keyItem.Line, keyItem.Column, "A key is a single word.");
            }
            else if (keys.TryGetValue(key.Text, out var first))
            {
                report(key.Line, key.Column, $"The key '{key.Text}' stands twice; first in line {first.Line}.");
            }
            else
            {
                keys.Add(key.Text, key);
                entries.Add(new(key, value));
            }
        }

        return new YamlMap(entries, (int)start.Start.Line, (int)start.Start.Column);
    }

    private static YamlScalar Scalar(Scalar scalar) =>
        new(scalar.Value, scalar.Style == ScalarStyle.Plain, (int)scalar.Start.Line, (int)scalar.Start.Column);
}
