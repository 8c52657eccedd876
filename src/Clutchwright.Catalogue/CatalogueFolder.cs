using Clutchwright.Catalogue.Looks;
using Clutchwright.Catalogue.Reading;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Catalogue.Yaml;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue;

/// <summary>Reads a species folder, as docs/how-to/catalogue.md describes it.</summary>
public static class CatalogueFolder
{
    private static readonly string[] SingleFiles = ["species", "sources", "dangers", "masks", "combinations"];

    /// <summary>Reads and checks a species folder and the tones beside it.</summary>
    /// <param name="folder">The path of the folder.</param>
    /// <returns>The catalogue, or every problem found in any of the files.</returns>
    /// <param name="recombination">Recombination fractions of sex-linked loci, by locus id, that replace those of the folder.</param>
    /// <exception cref="ArgumentException">There is no such locus, or it does not lie on the sex chromosomes.</exception>
    /// <exception cref="IOException">A file is there and cannot be read.</exception>
    public static CatalogueOutcome Read(string folder, IReadOnlyDictionary<string, RecombinationFraction>? recombination = null)
    {
        var problems = new List<CatalogueProblem>();
        if (!Directory.Exists(folder))
        {
            return new(null, [new(folder, 0, 0, "There is no such folder.")]);
        }

        var catalogue = Read(new Files(Path.GetFullPath(folder), problems), problems, recombination ?? new Dictionary<string, RecombinationFraction>());
        var sorted = problems
            .Distinct()
            .OrderBy(p => p.File, StringComparer.Ordinal)
            .ThenBy(p => p.Line)
            .ThenBy(p => p.Column)
            .ToArray();
        return new(sorted.Length == 0 ? catalogue : null, sorted);
    }

    private static SpeciesCatalogue? Read(
        Files files, List<CatalogueProblem> problems, IReadOnlyDictionary<string, RecombinationFraction> recombination)
    {
        var evidence = new EvidenceReader();
        var names = new NameRegister();
        if (files.One("sources", isRequired: true) is { } sources)
        {
            evidence.ReadSources(sources);
        }

        var about = new SpeciesReader(evidence, names);
        var speciesFile = files.One("species", isRequired: true);
        if (speciesFile is not null)
        {
            about.Read(speciesFile);
        }

        var loci = new LociReader(evidence, names);
        loci.Read(files.Many("loci", "loci", isRequired: true));
        var rules = new RulesReader(evidence, loci);
        var definition = new SpeciesDefinition(about.Id, about.SexSystem, loci.Loci.Select(l => l.ToDefinition()).ToArray());
        Species species;
        try
        {
            if (files.One("masks", isRequired: false) is { } masks)
            {
                rules.ReadMasks(masks, Species.From(definition));
            }

            if (files.One("dangers", isRequired: false) is { } dangers)
            {
                rules.ReadDangers(dangers);
            }

            species = Species.From(definition with { Masks = rules.Masks.Select(m => m.Definition).ToArray(), Dangers = rules.Dangers });
        }
        catch (SpeciesException fault)
        {
            // Whatever the checks by line do not foresee is still told, if without a line.
            if (problems.Count == 0)
            {
                problems.Add(new("species.yaml", 0, 0, fault.Message));
            }

            return null;
        }

        foreach (var (locus, fraction) in recombination)
        {
            species = species.WithRecombination(locus, fraction);
        }

        var lexicon = LexiconOf(species, about, loci);
        var looks = new LooksReader(evidence, names, lexicon);
        foreach (var tones in files.Many(Path.Combine("..", "tones"), "tones", isRequired: false))
        {
            looks.ReadTones(tones);
        }

        if (files.One("combinations", isRequired: false) is { } combinations)
        {
            looks.ReadCombinations(combinations);
        }

        looks.ReadLooks(files.Many("looks", "looks", isRequired: false));
        files.ReportStrangers();
        if (problems.Count > 0)
        {
            return null;
        }

        return new SpeciesCatalogue(species, lexicon, about, evidence.Sources, loci.Loci, rules.Masks)
        {
            Tones = looks.Tones.Values.OrderBy(t => t.Number).ToArray(),
            Combinations = looks.Combinations,
            LookBook = new LookBook(looks.Looks, [.. looks.Tones.Values]),
        };
    }

    private static Lexicon LexiconOf(Species species, SpeciesReader about, LociReader loci)
    {
        var lexicon = new Lexicon(species);
        foreach (var name in about.NormalNames)
        {
            lexicon.TryAdd(name, new Term.OfNormal());
        }

        var alleles = loci.Alleles.ToDictionary(a => a.Definition.Id, a => a.Also, StringComparer.Ordinal);
        var forms = loci.Loci.SelectMany(l => l.Forms).ToDictionary(f => f.Definition.Id, f => f.Also, StringComparer.Ordinal);
        foreach (var locus in species.Loci)
        {
            lexicon.AddLocus(locus, a => alleles[a.Id], e => forms.GetValueOrDefault(e.Id) ?? [], (name, term) => lexicon.TryAdd(name, term));
        }

        lexicon.TryAdd(about.TradeName, new Term.OfSpecies());
        lexicon.TryAdd(about.Name, new Term.OfSpecies());
        return lexicon;
    }

    /// <summary>The files of a folder, taken into trees and checked against the schema as they are asked for.</summary>
    private sealed class Files(string folder, List<CatalogueProblem> problems)
    {
        public CatalogueFile? One(string kind, bool isRequired)
        {
            var path = Path.Combine(folder, kind + ".yaml");
            if (File.Exists(path))
            {
                return Load(path, kind);
            }

            if (isRequired)
            {
                problems.Add(new(kind + ".yaml", 0, 0, "The file is missing."));
            }

            return null;
        }

        public CatalogueFile[] Many(string subfolder, string kind, bool isRequired)
        {
            var path = Path.GetFullPath(Path.Combine(folder, subfolder));
            var files = Directory.Exists(path)
                ? Directory.GetFiles(path, "*.yaml").Order(StringComparer.Ordinal).Select(f => Load(f, kind)).ToArray()
                : [];
            if (isRequired && files.Length == 0)
            {
                problems.Add(new(subfolder, 0, 0, "There is no .yaml file in the folder."));
            }

            return files;
        }

        // A file that nobody reads is most likely a slip in its name.
        public void ReportStrangers()
        {
            foreach (var path in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
            {
                var name = NameOf(path);
                var isYaml = name.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || name.EndsWith(".yml", StringComparison.OrdinalIgnoreCase);
                var parts = name.Split('/');
                var isRead = parts switch
                {
                    [var file] => SingleFiles.Contains(Path.GetFileNameWithoutExtension(file)) && file.EndsWith(".yaml", StringComparison.Ordinal),
                    ["loci" or "looks", var file] => file.EndsWith(".yaml", StringComparison.Ordinal),
                    _ => false,
                };
                if (isYaml && !isRead)
                {
                    problems.Add(new(name, 0, 0, $"The file is not read{Spelling.DidYouMean(name, SingleFiles.Select(s => s + ".yaml"))}; a species folder has {string.Join(", ", SingleFiles.Select(s => s + ".yaml"))}, loci/*.yaml and looks/*.yaml."));
                }
            }
        }

        private CatalogueFile Load(string path, string kind)
        {
            var name = NameOf(path);
            using var text = new StreamReader(path);
            var root = YamlReader.Read(text, Report);
            if (root is not null)
            {
                SchemaCheck.Published.Check(kind, root, Report);
            }

            return new(name, root, problems);

            void Report(int line, int column, string what) => problems.Add(new(name, line, column, what));
        }

        private string NameOf(string path) => Path.GetRelativePath(folder, path).Replace('\\', '/');
    }
}
