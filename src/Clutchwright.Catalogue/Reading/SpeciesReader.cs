using Clutchwright.Catalogue.Entries;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Catalogue.Yaml;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.Reading;

/// <summary>Reads species.yaml.</summary>
internal sealed class SpeciesReader(EvidenceReader evidence, NameRegister names)
{
    private static readonly string[] Shares = ["laying", "fertility", "hatch-rate"];

    private static readonly string[] Known =
    [
        "eggs", .. Shares, "incubation-days", "prelay-shed-to-eggs-days", "ovulation-to-eggs-days", "ovulation-to-prelay-shed-days",
        "hatchling-mass-grams", "egg-mass-grams", "first-shed-days", "male-breeding-mass-grams", "female-breeding-mass-grams",
        "male-breeding-age-months", "female-breeding-age-months", "clutches-a-year",
    ];

    public string Id { get; private set; } = "";

    public string Name { get; private set; } = "";

    public string TradeName { get; private set; } = "";

    public SexSystem SexSystem { get; private set; } = SexSystem.XY;

    public Evidence SexEvidence { get; private set; } = Evidence.CommonPractice;

    public List<string> NormalNames { get; } = [];

    public StageAges Stages { get; private set; } = new(1, 2, 3);

    public Biology Biology { get; private set; } = new(new Dictionary<string, Spread>(StringComparer.Ordinal));

    public void Read(CatalogueFile file)
    {
        if (file.Root.Map("species") is { } species)
        {
            Id = species.Text("id") ?? "";
            Name = species.Text("name") ?? "";
            TradeName = species.Text("trade-name") ?? "";
            SexSystem = species.Text("sex-system") == "ZW" ? SexSystem.ZW : SexSystem.XY;
            SexEvidence = evidence.Of(file, species);
            ReadNormal(file, species.Map("normal"));
            if (species.Scalar("trade-name") is { } tradeName)
            {
                names.Add(file, tradeName, this, "the species itself");
            }
        }

        ReadStages(file);
        var figures = new Dictionary<string, Spread>(StringComparer.Ordinal);
        foreach (var (key, value) in file.Root.Map("biology")?.Entries ?? [])
        {
            var near = Spelling.Nearest(key.Text, Known);
            if (!Known.Contains(key.Text, StringComparer.Ordinal) && near.Count > 0 && Spelling.Distance(Spelling.Key(key.Text), Spelling.Key(near[0]), 2) <= 2)
            {
                file.Report(key, $"'{key.Text}' is not used by anything; did you mean '{near[0]}'?");
            }

            if (value is YamlMap map && ReadFigure(file, key, map) is { } spread)
            {
                figures[key.Text] = spread;
            }
        }

        Biology = new(figures);
    }

    private void ReadNormal(CatalogueFile file, YamlMap? normal)
    {
        IEnumerable<YamlScalar> all = normal.Scalar("name") is { } main ? [main, .. normal.Scalars("also")] : normal.Scalars("also");
        foreach (var name in all)
        {
            if (names.Add(file, name, NormalNames, "a name of the wild type"))
            {
                NormalNames.Add(name.Text.Trim());
            }
        }
    }

    private void ReadStages(CatalogueFile file)
    {
        if (file.Root.Map("stages") is not { } stages
            || stages.Number("juvenile") is not { } juvenile
            || stages.Number("subadult") is not { } subadult
            || stages.Number("adult") is not { } adult)
        {
            return;
        }

        if (juvenile >= subadult)
        {
            file.Report(stages["subadult"]!, $"The subadult begins at {subadult} months, not after the juvenile ({juvenile}).");
        }

        if (subadult >= adult)
        {
            file.Report(stages["adult"]!, $"The adult begins at {adult} months, not after the subadult ({subadult}).");
        }

        Stages = new(juvenile, subadult, adult);
    }

    private Spread? ReadFigure(CatalogueFile file, YamlScalar key, YamlMap map)
    {
        var grounds = evidence.Of(file, map);
        var (value, mean, sd, least, most) = (map.Number("value"), map.Number("mean"), map.Number("sd"), map.Number("least"), map.Number("most"));
        if (value is not null && (mean is not null || sd is not null))
        {
            file.Report(map, $"'{key.Text}' has a value and a distribution; it needs one of them.");
            return null;
        }

        if (value is null && (mean is null || sd is null))
        {
            if (map["value"] is null && (map["mean"] is null || map["sd"] is null))
            {
                file.Report(map, $"'{key.Text}' needs a value, or mean and sd.");
            }

            return null;
        }

        var middle = value ?? mean!.Value;
        var isShare = Shares.Contains(key.Text, StringComparer.Ordinal);
        if (middle < 0.0 || (isShare && middle > 1.0))
        {
            file.Report(map, $"'{key.Text}' is {middle}; it must {(isShare ? "lie between 0 and 1" : "not be negative")}.");
        }

        if (least > most)
        {
            file.Report(map["least"]!, $"The least of '{key.Text}' ({least}) is more than the most ({most}).");
        }
        else if (middle < least || middle > most)
        {
            file.Report(map, $"The middle of '{key.Text}' ({middle}) does not lie between least and most.");
        }

        if (least < 0.0)
        {
            file.Report(map["least"]!, $"The least of '{key.Text}' is {least}; it must not be negative.");
        }

        return new(middle, sd ?? 0.0, least, most, grounds);
    }
}
