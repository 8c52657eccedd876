using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Routes;

namespace Clutchwright.Desk.Routes;

/// <summary>The animals a route can start from: those kept, with the season from which they breed, and those that could be bought.</summary>
internal sealed class RouteStock
{
    private readonly List<(RouteAnimal Animal, StockAnimal? Kept, string Text)> _animals = [];

    public IReadOnlyList<RouteAnimal> Animals => [.. _animals.Select(a => a.Animal)];

    public StockAnimal? Kept(int place) => place < _animals.Count ? _animals[place].Kept : null;

    public string Text(int place) => _animals[place].Text;

    /// <summary>Takes the animals that are here and sexed.</summary>
    public void AddKept(OpenCatalogue catalogue, StockState state, DateOnly today, List<string> notes)
    {
        var here = state.Animals.Where(a => a.IsHere).ToArray();
        foreach (var animal in here.Where(a => a.Animal.Sex is not null))
        {
            var sex = animal.Animal.Sex!.Value;
            _animals.Add((new(sex, animal.As(sex)) { ReadySeason = ReadySeason(catalogue, animal, sex, today) }, animal, animal.Animal.Tag));
        }

        if (here.Count(a => a.Animal.Sex is null) is > 0 and var unsexed)
        {
            notes.Add(unsexed == 1 ? "1 animal is not sexed and was left out." : $"{unsexed} animals are not sexed and were left out.");
        }
    }

    /// <summary>Takes animals that could be bought.</summary>
    public void AddBought(OpenCatalogue catalogue, IReadOnlyList<string> texts, Want want, double usual, List<AskedWrongly> problems)
    {
        foreach (var asked in texts)
        {
            if (string.Equals(asked.Trim(), "singles", StringComparison.OrdinalIgnoreCase))
            {
                foreach (var (text, animal) in Singles(catalogue, want))
                {
                    _animals.Add((animal with { Price = usual }, null, text));
                }

                continue;
            }

            var (words, price) = Split(asked, usual, problems);
            var read = catalogue.Catalogue.Trade.Read(words);
            if (!read.IsRead)
            {
                problems.Add(Crosses.ParentReader.Problem("buy", read.Problem));
            }
            else if (read.Value.Sex is not { } sex)
            {
                problems.Add(new("buy", $"\"{words}\" has no sex. Write 1.0 for a male or 0.1 for a female before it."));
            }
            else if (read.Value.ToBelief(sex) is { IsRead: true } belief)
            {
                _animals.Add((new(sex, belief.Value) { Price = price }, null, words.Trim()));
            }
            else
            {
                problems.Add(new("buy", $"\"{words}\" cannot be of that sex."));
            }
        }
    }

    /// <summary>For each wanted gene an animal of each sex that shows it alone.</summary>
    public static IEnumerable<(string Text, RouteAnimal Animal)> Singles(OpenCatalogue catalogue, Want want)
    {
        var alleles = want.Alternatives
            .SelectMany(a => a.Loci)
            .SelectMany(c => c.Locus.Alleles.Where(a => !a.IsWild && c.Locus.Alleles.Any(b => c.Allows(a.Index, b.Index, ordered: true) || c.Allows(b.Index, a.Index, ordered: true))))
            .Distinct();
        foreach (var allele in alleles)
        {
            foreach (var sex in (Sex[])[Sex.Male, Sex.Female])
            {
                var two = allele.Mode == InheritanceMode.Recessive;
                var genotype = Genotype.Wild(catalogue.Species, sex).With(allele.Locus, allele.Index, two ? allele.Index : 0);
                yield return (catalogue.Catalogue.Trade.Write(genotype), new(sex, GenotypeBelief.Certain(genotype)));
            }
        }
    }

    /// <summary>The season from which an animal breeds: 1 unless it is surely too young, by the least age of the species' biology.</summary>
    private static int ReadySeason(OpenCatalogue catalogue, StockAnimal animal, Sex sex, DateOnly today)
    {
        if (BreedingAge.Reached(catalogue.Catalogue.Biology, animal.Animal, sex) is not { } ready)
        {
            return 1;
        }

        var season = 1;
        while (ready > today.AddYears(season - 1) && season < RouteSettings.MostSeasons)
        {
            season++;
        }

        return season;
    }

    private static (string Text, double Price) Split(string asked, double usual, List<AskedWrongly> problems)
    {
        var at = asked.LastIndexOf('=');
        if (at < 0)
        {
            return (asked, usual);
        }

        if (double.TryParse(asked[(at + 1)..].Trim(), System.Globalization.CultureInfo.InvariantCulture, out var price) && price >= 0.0 && double.IsFinite(price))
        {
            return (asked[..at], price);
        }

        problems.Add(new("buy", $"'{asked[(at + 1)..].Trim()}' is no price. Write a number, as in \"1.0 Clown=300\"."));
        return (asked[..at], usual);
    }
}
