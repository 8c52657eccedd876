using System.Globalization;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Desk.Season;

/// <summary>Reads a goals file.</summary>
internal sealed class GoalsReader(OpenCatalogue catalogue, StockState stock, List<AskedWrongly> problems)
{
    private const double Unlimited = double.PositiveInfinity;

    /// <summary>Reads it; null where it is no JSON object. Everything that is wrong is told.</summary>
    public GoalsFile? Read(NamedFile file)
    {
        if (JsonPart.Open(file, problems) is not { } root
            || !root.IsObject("on", "goals", "limits", "animals", "pin", "ban", "lift", "tradeOff", "note"))
        {
            return null;
        }

        var wishes = root.List("goals").Select(Wish).OfType<SeasonWish>().ToArray();
        if (!root.Has("goals"))
        {
            root.Wrong("There are no goals. Write a list under \"goals\".");
        }

        foreach (var twice in wishes.GroupBy(w => w.Name, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
        {
            root.Wrong("goals", $"Two goals are called '{twice.Key}'. Give one another \"name\".");
        }

        return new(
            root.Day("on"),
            wishes,
            Rules(root.Find("limits")),
            Animals(root),
            Couples(root, "pin"),
            Couples(root, "ban"),
            Couples(root, "lift"),
            TradeOff(root, wishes));
    }

    private SeasonWish? Wish(JsonPart part)
    {
        string[] kinds = ["want", "holdback", "prove", "expect", "value"];
        if (!part.IsObject("name", "weight", "least", "want", "holdback", "atLeast", "prove", "gene", "expect", "value", "route"))
        {
            return null;
        }

        var told = kinds.Where(part.Has).ToArray();
        if (told.Length != 1)
        {
            part.Wrong(told.Length == 0
                ? $"It is not said what this goal is. Write one of: {string.Join(", ", kinds)}."
                : $"A goal is one of {string.Join(", ", kinds)}; here stand {string.Join(" and ", told)}.");
            return null;
        }

        var weight = part.Number("weight", told[0] == "value" ? double.NegativeInfinity : 0.0, Unlimited) ?? 1.0;
        var least = part.Number("least", 0.0, told[0] is "expect" or "value" ? Unlimited : 1.0);
        var name = part.Text("name");
        if (told[0] is not ("want" or "holdback") && part.Has("atLeast"))
        {
            part.Wrong("atLeast", "Only a want or a holdback has a number of how many at least.");
        }

        if (told[0] != "prove" && part.Has("gene"))
        {
            part.Wrong("gene", "Only a proof has a gene.");
        }

        switch (told[0])
        {
            case "want" or "holdback":
                var count = part.Whole("atLeast", 1, 50) ?? 1;
                return Want(part, told[0]) is var (text, want)
                    ? new SeasonWish.AtLeast(name ?? (count == 1 ? text : $"{count} {text}"), weight, least, text, want, count)
                    : null;
            case "expect":
                return Want(part, "expect") is var (kind, expected) ? new SeasonWish.Expect(name ?? kind, weight, least, kind, expected) : null;
            case "prove":
                return Prove(part, name, weight, least);
            default:
                var each = 0.0;
                var worths = new List<(string, Want, double)>();
                foreach (var (key, value) in part.Entries("value"))
                {
                    var worth = part.Find("value")!.Number(key, double.NegativeInfinity, Unlimited);
                    if (key == "each")
                    {
                        each = worth ?? 0.0;
                    }
                    else if (Want(value, key, key) is var (word, wanted))
                    {
                        worths.Add((word, wanted, worth ?? 0.0));
                    }
                }

                return new SeasonWish.Value(name ?? "value", weight, least, each, worths);
        }
    }

    private SeasonWish.Prove? Prove(JsonPart part, string? name, double weight, double? least)
    {
        var tag = part.Text("prove") is { } asked ? Tag(part, "prove", asked) : null;
        var gene = part.Text("gene");
        if (gene is null)
        {
            part.Wrong("The gene in doubt is not named. Write \"gene\", a recessive gene of the catalogue.");
            return null;
        }

        if (catalogue.Catalogue.FindAllele(gene)?.Allele is not { } allele)
        {
            part.Wrong("gene", $"'{gene}' is no gene of the catalogue.", NearWords.Of(gene, catalogue.Catalogue.Alleles.Select(a => a.Allele.Name)));
            return null;
        }

        if (allele.Mode != InheritanceMode.Recessive || allele.Locus.Placement is Placement.SexLinked)
        {
            part.Wrong("gene", $"{allele.Name} shows in one copy or rides with sex, so it is not proved so. Write a recessive gene.");
            return null;
        }

        return tag is null ? null : new SeasonWish.Prove(name ?? $"{tag} het {allele.Name}?", weight, least, tag, allele);
    }

    private (string Text, Want Want)? Want(JsonPart part, string key) => part.Text(key) is { } text ? Want(part.Find(key)!, key, text) : null;

    private (string Text, Want Want)? Want(JsonPart part, string key, string text)
    {
        var read = catalogue.Catalogue.Trade.ReadWant(text);
        if (read.IsRead)
        {
            return (text, read.Value);
        }

        var problem = ParentReader.Problem(key, read.Problem);
        part.Wrong(problem.Text, problem.DidYouMean);
        return null;
    }

    private static SeasonRules Rules(JsonPart? part)
    {
        if (part is null || !part.IsObject("matingsPerMale", "clutches", "eggs", "hatchlings", "inbreeding", "meanInbreeding", "restMonths"))
        {
            return new(null, null, null, null, null, null, null);
        }

        return new(
            part.Whole("matingsPerMale", 0, 1000),
            part.Whole("clutches", 0, 100_000),
            part.Number("eggs", 0.0, Unlimited),
            part.Number("hatchlings", 0.0, Unlimited),
            part.Number("inbreeding", 0.0, 1.0),
            part.Number("meanInbreeding", 0.0, 1.0),
            part.Whole("restMonths", 0, 60));
    }

    private Dictionary<string, SeasonAnimal> Animals(JsonPart root)
    {
        var animals = new Dictionary<string, SeasonAnimal>(StringComparer.OrdinalIgnoreCase);
        foreach (var (key, part) in root.Entries("animals"))
        {
            if (!part.IsObject("matings", "massGrams", "lastClutch", "hold", "use", "leaveOut", "note"))
            {
                continue;
            }

            var animal = new SeasonAnimal(
                part.Whole("matings", 0, 1000),
                part.Number("massGrams", 1.0, 100_000.0),
                part.Day("lastClutch"),
                part.Text("hold"),
                part.YesNo("use") ?? false,
                part.YesNo("leaveOut") ?? false);
            if (stock.Find(key) is not { } known)
            {
                root.Wrong("animals", $"The stock has no animal '{key}'.", Near(key));
            }
            else if (!animals.TryAdd(known.Animal.Tag, animal))
            {
                root.Wrong("animals", $"{known.Animal.Tag} stands twice.");
            }
            else
            {
                if (animal.Matings is not null && known.Animal.Sex == Sex.Female)
                {
                    part.Wrong("matings", $"{known.Animal.Tag} is female; a female has one clutch.");
                }

                if (animal.LastClutch is not null && known.Animal.Sex == Sex.Male)
                {
                    part.Wrong("lastClutch", $"{known.Animal.Tag} is male.");
                }

                if (animal is { IsPinned: true, IsLeftOut: true })
                {
                    part.Wrong($"{known.Animal.Tag} is to be used and left out. Keep one of the two.");
                }
            }
        }

        return animals;
    }

    private List<SeasonCouple> Couples(JsonPart root, string key)
    {
        var couples = new List<SeasonCouple>();
        foreach (var part in root.List(key))
        {
            if (!part.IsObject("sire", "dam", "because"))
            {
                continue;
            }

            var (sire, dam) = (Of("sire", Sex.Male), Of("dam", Sex.Female));
            if (sire is not null && dam is not null)
            {
                couples.Add(new(sire, dam, part.Text("because")));
            }

            string? Of(string role, Sex sex)
            {
                if (part.Text(role) is not { } asked)
                {
                    part.Wrong($"The {role} is not named.");
                    return null;
                }

                var tag = Tag(part, role, asked);
                if (tag is not null && stock.Find(tag)!.Animal.Sex is { } known && known != sex)
                {
                    part.Wrong(role, $"{tag} is {(known == Sex.Male ? "male" : "female")}.");
                }

                return tag;
            }
        }

        return couples;
    }

    private static (int, int)? TradeOff(JsonPart root, SeasonWish[] wishes)
    {
        if (!root.Has("tradeOff"))
        {
            return null;
        }

        var names = root.List("tradeOff").Select(p => p.Element.ToString()).ToArray();
        var places = Array.ConvertAll(names, n => Array.FindIndex(wishes, w => string.Equals(w.Name, n, StringComparison.OrdinalIgnoreCase)));
        if (names.Length != 2 || places[0] == places[1] || places.Contains(-1))
        {
            var wrong = names.Zip(places).Where(p => p.Second < 0).Select(p => p.First).FirstOrDefault();
            root.Wrong(
                "tradeOff",
                wrong is null ? "Write the names of two goals." : $"There is no goal called '{wrong}'.",
                wrong is null ? null : NearWords.Of(wrong, wishes.Select(w => w.Name)));
            return null;
        }

        return (places[0], places[1]);
    }

    private string? Tag(JsonPart part, string key, string asked)
    {
        if (stock.Find(asked) is { } animal)
        {
            return animal.Animal.Tag;
        }

        part.Wrong(key, string.Create(CultureInfo.InvariantCulture, $"The stock has no animal '{asked}'."), Near(asked));
        return null;
    }

    private IReadOnlyList<string> Near(string tag) => NearWords.Of(tag, stock.Animals.Select(a => a.Animal.Tag));
}
