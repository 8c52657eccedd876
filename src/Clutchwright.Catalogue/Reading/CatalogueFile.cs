using Clutchwright.Catalogue.Yaml;

namespace Clutchwright.Catalogue.Reading;

/// <summary>A file of a species folder that has been taken into a tree, and where its problems go.</summary>
internal sealed class CatalogueFile(string name, YamlItem? root, List<CatalogueProblem> problems)
{
    public string Name { get; } = name;

    public YamlMap? Root => root as YamlMap;

    /// <summary>The mappings in the list under a key of the root; what is not a mapping has been told by the schema.</summary>
    public IEnumerable<YamlMap> Items(string key) => Root.Maps(key);

    public void Report(YamlItem at, string text) => problems.Add(new(Name, at.Line, at.Column, text));

    /// <summary>Reports at a place inside a scalar's text.</summary>
    public void Report(YamlScalar at, int position, string text) =>
        problems.Add(new(Name, at.Line, at.Column + position + (at.IsPlain ? 0 : 1), text));
}

/// <summary>Takes values out of a tree; what is missing or of another kind gives <c>null</c>, since the schema has told it.</summary>
internal static class YamlValues
{
    public static YamlScalar? Scalar(this YamlMap? map, string key) =>
        map?[key] is YamlScalar { IsNull: false } scalar && !string.IsNullOrWhiteSpace(scalar.Text) ? scalar : null;

    public static string? Text(this YamlMap? map, string key) => map.Scalar(key)?.Text.Trim();

    public static double? Number(this YamlMap? map, string key) => map.Scalar(key)?.Number;

    public static bool? Truth(this YamlMap? map, string key) => map.Scalar(key)?.Truth;

    public static YamlMap? Map(this YamlMap? map, string key) => map?[key] as YamlMap;

    public static IEnumerable<YamlMap> Maps(this YamlMap? map, string key) =>
        map?[key] is YamlList list ? list.Items.OfType<YamlMap>() : [];

    public static IReadOnlyList<YamlScalar> Scalars(this YamlMap? map, string key) =>
        map?[key] is YamlList list ? list.Items.OfType<YamlScalar>().Where(s => !string.IsNullOrWhiteSpace(s.Text)).ToArray() : [];
}
