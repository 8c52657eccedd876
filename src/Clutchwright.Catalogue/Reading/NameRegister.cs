using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Catalogue.Yaml;

namespace Clutchwright.Catalogue.Reading;

/// <summary>Every name of a species with what bears it, so that none means two things.</summary>
internal sealed class NameRegister
{
    private readonly Dictionary<string, Entry> _byKey = new(StringComparer.Ordinal);

    /// <summary>Registers a name and says whether it is new; reports it if it means something else already.</summary>
    /// <param name="file">Where it stands.</param>
    /// <param name="name">The name.</param>
    /// <param name="bearer">What bears it; a second spelling for the same bearer is passed over.</param>
    /// <param name="what">The bearer in words.</param>
    public bool Add(CatalogueFile file, YamlScalar name, object bearer, string what)
    {
        var key = Spelling.Key(name.Text);
        if (key.Length == 0)
        {
            return false; // told by the schema
        }

        if (TradeParser.Keywords.Contains(key, StringComparer.Ordinal))
        {
            file.Report(name, $"'{name.Text}' is a word of trade text itself and cannot be a name.");
            return false;
        }

        if (_byKey.TryGetValue(key, out var other))
        {
            if (other.Bearer == bearer)
            {
                return false; // Bumblebee, also Bumble Bee: one name in two spellings, which reading does not tell apart anyway
            }

            file.Report(name, $"The name '{name.Text}' is taken: {other.What} in {other.File.Name} line {other.Name.Line} (case, spaces and hyphens do not count).");
            return false;
        }

        _byKey.Add(key, new(file, name, bearer, what));
        return true;
    }

    public Entry? Find(string name) => _byKey.GetValueOrDefault(Spelling.Key(name));

    public Entry? FindKey(string key) => _byKey.GetValueOrDefault(key);

    internal sealed record Entry(CatalogueFile File, YamlScalar Name, object Bearer, string What);
}
