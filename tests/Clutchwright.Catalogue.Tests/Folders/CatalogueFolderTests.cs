using Xunit;

namespace Clutchwright.Catalogue.Tests.Folders;

public sealed class CatalogueFolderTests
{
    // One slip at a time, and the one problem it must give, with its place.
    public static TheoryData<string, string, string, string> Slips { get; } = new()
    {
        // What the schema forbids
        { "loci/all.yaml", "    name: Pale\n    placement", "    placement", "loci/all.yaml:2:5: Missing here: 'name'." },
        { "loci/all.yaml", "mode: recessive\n        one-copy: looks wild\n        two-copies: white", "mode: resessive\n        one-copy: looks wild\n        two-copies: white", "loci/all.yaml:9:15: 'mode' is 'resessive' (nearest: recessive); it must be one of: recessive, incomplete-dominant, dominant." },
        { "loci/all.yaml", "        shows: grey all over\n", "        show: grey all over\n        shows: grey all over\n", "loci/all.yaml:25:9: Unknown key 'show' (nearest: shows); known keys: id, name, also, pairs, shows, with-age, tellable-from, recorded, evidence." },
        { "loci/all.yaml", "penetrance: 0.9", "penetrance: 1.9", "loci/all.yaml:50:62: 'penetrance' is '1.9'; it must be at most 1." },
        { "loci/all.yaml", "penetrance: 0.9", "penetrance: most", "loci/all.yaml:50:62: 'penetrance' is 'most'; it must be a number." },
        { "loci/all.yaml", "pairs: [Soot/Soot]", "pairs: []", "loci/all.yaml:30:16: 'pairs' is an empty list; it needs at least 1." },
        { "loci/all.yaml", "pairs: [Soot/Soot]", "pairs: [Soot]", "loci/all.yaml:30:17: 'pairs' is 'Soot'; it must be two alleles of the locus with a slash between; + is the wild allele." },
        { "loci/all.yaml", "also: [Anthracite]", "also: [\"Coal (T+)\"]", "loci/all.yaml:29:16: 'also' is 'Coal (T+)'; it must be a name of letters, digits, spaces, hyphens and apostrophes, with at least one letter." },
        { "loci/all.yaml", "  - id: smoke\n    name: Smoke group", "  - id: Smoke Group\n    name: Smoke group", "loci/all.yaml:13:9: 'id' is 'Smoke Group'; it must be lower-case letters, digits and single hyphens." },
        { "loci/all.yaml", "name: Flame\n    placement: autosomal", "name: Flame\n    placement: anywhere", "loci/all.yaml:47:16: 'placement' is 'anywhere'; it must be autosomal, or linkage-group and position, or sex-linked." },
        { "species.yaml", "hatchling: 0", "hatchling: 1", "species.yaml:9:14: 'hatchling' is '1'; it must be 0." },
        { "species.yaml", "sex-system: ZW", "sex-system: XO", "species.yaml:5:15: 'sex-system' is 'XO' (nearest: XY); it must be one of: XY, ZW." },
        { "dangers.yaml", "survival: {egg: 0.25}", "survival: {egg: 1.25}", "dangers.yaml:11:21: 'egg' is '1.25'; it must be at most 1." },
        { "masks.yaml", "hides: all", "hides: everything", "masks.yaml:3:12: 'hides' is 'everything'; it must be all, or a list of ids of alleles and loci." },
        { "masks.yaml", "hides: all", "hides: []", "masks.yaml:3:12: 'hides' is an empty list; it needs at least 1." },
        { "looks/all.yaml", "varies: little", "varies:", "looks/all.yaml:7:12: 'varies' is empty; it must be one of: little, some, much." },
        { "../tones/iscc-nbs.yaml", "\"#F3C300\"", "yellow", "../tones/iscc-nbs.yaml:2:62: 'srgb' is 'yellow'; it must match ^#[0-9A-Fa-f]{6}$." },

        // What is not YAML, or not the files of a folder
        { "dangers.yaml", "    severity: suffering\n", "    severity: suffering\n    severity: watch\n", "dangers.yaml:5:5: The key 'severity' stands twice; first in line 4." },
        { "dangers.yaml", "when: [Soot/Soot]", "when: [Soot/Soot", "dangers.yaml:3:11: Not YAML: a bracket, brace or quote is not closed behind this." },
        { "masks.yaml", "by: [coal]", "by: &mask [coal]\n    note: *mask", "masks.yaml:3:11: Not YAML: anchors and aliases are not used in a catalogue; write the value out." },

        // Ids and names
        { "loci/all.yaml", "  - id: dot\n    name: Dot\n", "  - id: stripe\n    name: Dot\n", "loci/all.yaml:39:9: The locus id 'stripe' is used twice; first in loci/all.yaml line 33." },
        { "loci/all.yaml", "{id: dot, name: Dot", "{id: stripe, name: Dot", "loci/all.yaml:44:14: The allele id 'stripe' is used twice; first in loci/all.yaml line 38." },
        { "loci/all.yaml", "name: Dot, mode", "name: Dot, also: [PA-LE], mode", "loci/all.yaml:44:37: The name 'PA-LE' is taken: an allele of pale in loci/all.yaml line 8 (case, spaces and hyphens do not count)." },
        { "loci/all.yaml", "also: [Cinder]", "also: [Anthra cite]", "loci/all.yaml:29:16: The name 'Anthracite' is taken: another name of Ash in loci/all.yaml line 18 (case, spaces and hyphens do not count)." },
        { "loci/all.yaml", "also: [Cinder]", "also: [Het]", "loci/all.yaml:18:37: 'Het' is a word of trade text itself and cannot be a name." },
        { "loci/all.yaml", "also: [Cinder]", "also: [Super Soot]", "loci/all.yaml:18:37: 'Super Soot' reads as two copies of Soot; name it otherwise, or make it the form of Soot/Soot alone." },
        { "loci/all.yaml", "      - id: smoke\n", "      - id: coal\n", "loci/all.yaml:27:13: The form id 'coal' is used twice." },
        { "loci/all.yaml", "      - id: smoke\n", "      - id: super-ember\n", "loci/all.yaml:56:14: The form id 'super-ember', which this allele has by itself, is also stated in loci/all.yaml for smoke." },
        { "combinations.yaml", "also: [Campfire]", "also: [Plain]", "combinations.yaml:3:12: The name 'Plain' is taken: a name of the wild type in species.yaml line 6 (case, spaces and hyphens do not count)." },
        { "dangers.yaml", "id: flame-pale", "id: coal-blind", "dangers.yaml:7:9: The danger id 'coal-blind' is used twice." },
        { "../tones/iscc-nbs.yaml", "number: 263, srgb: \"#F2F3F4\"}", "number: 263, srgb: \"#F2F3F4\"}\n  - {id: white, name: white, number: 1, srgb: \"#000000\"}", "../tones/iscc-nbs.yaml:8:10: The tone id 'white' is used twice." },
        { "../tones/iscc-nbs.yaml", "number: 263", "number: 267", "../tones/iscc-nbs.yaml:9:38: The number 267 is that of 'white'." },

        // Names that nothing bears
        { "loci/all.yaml", "pairs: [Ash/Ash, Ash/Soot]", "pairs: [Ash/Ash, Ash/Sot]", "loci/all.yaml:24:26: 'Sot' is no allele (nearest: Soot, Dot)." },
        { "loci/all.yaml", "pairs: [Ash/Ash, Ash/Soot]", "pairs: [Ash/Ash, Ash/Dot]", "loci/all.yaml:24:26: Dot is an allele of dot, not of smoke." },
        { "loci/all.yaml", "pairs: [Ash/Ash, Ash/Soot]", "pairs: [Ash/Ash, +/+]", "loci/all.yaml:24:26: The pair +/+ is the wild type and takes no form." },
        { "loci/all.yaml", "pairs: [Soot/Soot]", "pairs: [Soot/Cinder]", "loci/all.yaml:30:17: The pair Soot/Cinder stands under 'Smoke' already; a pair has one form." },
        { "dangers.yaml", "when: [Soot/Soot]", "when: [any Sooty]", "dangers.yaml:3:12: 'Sooty' is no allele (nearest: Soot)." },
        { "dangers.yaml", "when: [Soot/Soot]", "when: [two Soot]", "dangers.yaml:3:12: 'two Soot' is no condition; write 'any NAME' for at least one copy, or 'A/B' for a pair of alleles." },
        { "dangers.yaml", "when: [Soot/Soot]", "when: [Soot/Pale]", "dangers.yaml:3:12: Soot and Pale are not alleles of one locus; for both together write two conditions." },
        { "masks.yaml", "by: [coal]", "by: [coals]", "masks.yaml:2:10: 'coals' is no form's id (nearest: coal)." },
        { "masks.yaml", "through: [ember]", "through: [embers]", "masks.yaml:4:15: 'embers' is no allele's id (nearest: ember)." },
        { "combinations.yaml", "of: Flame Ember\n", "of: Flame Embre\n", "combinations.yaml:4:15: 'Embre' is not known. Nearest: Ember." },
        { "looks/all.yaml", "  - of: Pale Flame\n", "  - of: \"Pale Flam\"\n", "looks/all.yaml:29:15: 'Flam' is not known. Nearest: Flame." },
        { "looks/all.yaml", "{ground: white, pattern: white,", "{ground: whit, pattern: white,", "looks/all.yaml:16:27: The tone 'whit' is not in tones/ (nearest: white)." },
        { "looks/all.yaml", "source: [invented]", "source: [envented]", "looks/all.yaml:17:43: The source 'envented' is not in sources.yaml (nearest: invented)." },

        // Evidence and figures
        { "loci/all.yaml", "evidence: {grade: published, source: [invented]}", "evidence: {grade: published}", "loci/all.yaml:12:19: The grade 'published' needs at least one source; without one it is common-practice or reported." },
        { "loci/all.yaml", "evidence: {grade: published, source: [invented]}", "evidence: {grade: rumour}", "loci/all.yaml:12:27: 'grade' is 'rumour'; it must be one of: published, common-practice, reported, disputed." },
        { "loci/all.yaml", "recombination: 0.1, least: 0.05, most: 0.2", "recombination: 0.3, least: 0.05, most: 0.2", "loci/all.yaml:53:29: The recombination fraction 0.3 does not lie between least 0.05 and most 0.2." },
        { "loci/all.yaml", "recombination: 0.1, least: 0.05, most: 0.2", "recombination: 0.1, least: 0.05", "loci/all.yaml:53:29: An interval of the recombination fraction needs both least and most." },
        { "loci/all.yaml", "{linkage-group: one, position: 10}", "{linkage-group: one}", "loci/all.yaml:35:16: A placement is autosomal, or has linkage-group and position, or has sex-linked." },
        { "species.yaml", "{mean: 2, sd: 0.2, least: 1, most: 3,", "{mean: 2, sd: 0.2, least: 3, most: 1,", "species.yaml:14:35: The least of 'eggs' (3) is more than the most (1)." },
        { "species.yaml", "{mean: 2, sd: 0.2, least: 1, most: 3,", "{mean: 4, sd: 0.2, least: 1, most: 3,", "species.yaml:14:9: The middle of 'eggs' (4) does not lie between least and most." },
        { "species.yaml", "{mean: 2, sd: 0.2, least: 1, most: 3,", "{mean: 2,", "species.yaml:14:9: 'eggs' needs a value, or mean and sd." },
        { "species.yaml", "{mean: 2, sd: 0.2, least: 1, most: 3,", "{mean: 2, sd: -0.2,", "species.yaml:14:23: 'sd' is '-0.2'; it must be at least 0." },
        { "species.yaml", "laying: {value: 0.9,", "laying: {value: 1.9,", "species.yaml:15:11: 'laying' is 1.9; it must lie between 0 and 1." },
        { "species.yaml", "laying: {value: 0.9,", "laying: {value: 0.9, mean: 0.9,", "species.yaml:15:11: 'laying' has a value and a distribution; it needs one of them." },
        { "species.yaml", "laying: {value", "layings: {value", "species.yaml:15:3: 'layings' is not used by anything; did you mean 'laying'?" },
        { "species.yaml", "subadult: 6", "subadult: 1", "species.yaml:11:13: The subadult begins at 1 months, not after the juvenile (2)." },

        // Things told twice
        { "dangers.yaml", "when: [any Flame, Pale/Pale]\n    sex: female", "when: [Soot/Soot]", "dangers.yaml:7:9: The danger 'flame-pale' has the same conditions as 'coal-blind'; put them together." },
        { "dangers.yaml", "when: [any Flame, Pale/Pale]", "when: [any Flame, Flame/Flame]", "dangers.yaml:8:23: The locus flame has a condition already; a danger names each locus once." },
        { "masks.yaml", "by: [coal]", "by: [coal, coal]", "masks.yaml:2:16: The form 'coal' has a mask already, in line 2; put them together." },
        { "masks.yaml", "through: [ember]", "through: [ember]\n    faintly: [ember]", "masks.yaml:4:15: 'ember' stands under through and under faintly; it shows clearly or weakly." },
        { "combinations.yaml", "of: Pale Stripe", "of: Ember Flame", "combinations.yaml:10:9: 'Ghost Line' has the same makings as 'Bonfire'; put it under also there." },
        { "combinations.yaml", "of: Pale Stripe", "of: Pale", "combinations.yaml:10:9: A combination is of several loci; a name for a pair of alleles of one locus is a form in loci/." },
        { "combinations.yaml", "of: Pale Stripe", "of: Pale 1.0 Stripe", "combinations.yaml:10:14: Makings have no sex." },
        { "combinations.yaml", "of: Pale Stripe", "of: Stripe het Pale", "combinations.yaml:10:16: 'het Pale': makings name what is seen, nothing carried and no maker." },
        { "looks/all.yaml", "  - of: Pale Flame\n", "  - of: Pale\n", "looks/all.yaml:29:9: The look of 'Pale' is stated already, in looks/all.yaml line 12." },
        { "looks/all.yaml", "  - of: Pale Flame\n", "  - of: Super Flame\n", "looks/all.yaml:29:9: 'Super Flame' shows the same form as 'Flame' and has other tones or another extent of white; pairs that differ by eye are forms of their own." },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public void Read_OneSlip_IsToldWithFileLineAndColumn(string file, string old, string changed, string expected)
    {
        using var folder = new TestFolder();
        folder.Change(file, old, changed);

        Assert.Equal([expected], folder.Problems());
    }

    [Fact]
    public void Read_ManySlips_AreAllTold()
    {
        using var folder = new TestFolder();
        folder.Change("species.yaml", "sex-system: ZW", "sex-system: XO");
        folder.Change("loci/all.yaml", "also: [Cinder]", "also: [Het]");
        folder.Change("dangers.yaml", "when: [Soot/Soot]", "when: [any Sooty]");
        folder.Change("looks/all.yaml", "{ground: white, pattern: white,", "{ground: whit, pattern: whyte,");

        Assert.Equal(
            ["dangers.yaml:3:12", "loci/all.yaml:18:37", "looks/all.yaml:16:27", "looks/all.yaml:16:42", "species.yaml:5:15"],
            folder.Problems().Select(p => p[..p.IndexOf(": ", StringComparison.Ordinal)]));
    }

    [Fact]
    public void Read_FilesMissingOrNotRead_AreTold()
    {
        using var folder = new TestFolder();
        folder.Delete("sources.yaml");
        File.WriteAllText(System.IO.Path.Combine(folder.Path, "danger.yaml"), "dangers: []");
        File.WriteAllText(System.IO.Path.Combine(folder.Path, "combinations.yaml"), "");

        var problems = folder.Problems();

        Assert.Contains("sources.yaml: The file is missing.", problems);
        Assert.Contains("combinations.yaml: The file is empty.", problems);
        Assert.Contains(problems, p => p.StartsWith("danger.yaml: The file is not read (nearest: dangers.yaml)", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_NoSuchFolder_IsTold()
    {
        var outcome = CatalogueFolder.Read(System.IO.Path.Combine(TestFolder.Shipped, "nowhere"));

        Assert.False(outcome.IsRead);
        Assert.Single(outcome.Problems);
    }

    [Fact]
    public void Read_UnchangedFolder_HasNoProblem()
    {
        using var folder = new TestFolder();

        Assert.Empty(folder.Problems());
    }
}
