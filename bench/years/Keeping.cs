namespace Clutchwright.Years;

/// <summary>An animal of the invented keeper.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="IsFemale">Its sex.</param>
/// <param name="Sire">Its place among all; -1: a founder.</param>
/// <param name="Dam">The same.</param>
/// <param name="Copies">Copies of each mutant allele.</param>
/// <param name="Came">The day it came or hatched.</param>
internal sealed record KeptAnimal(string Tag, bool IsFemale, int Sire, int Dam, int[] Copies, DateOnly Came)
{
    public Guid Id { get; } = Guid.CreateVersion7();

    /// <summary>The first day it is not here any more.</summary>
    public DateOnly Left { get; set; } = DateOnly.MaxValue;

    public bool IsHeldBack { get; set; }
}

/// <summary>A season of a female.</summary>
internal sealed record KeptYear(int Dam, int Sire, DateOnly Paired, DateOnly Ovulated, DateOnly Shed, DateOnly Laid, DateOnly Pipped, DateOnly Hatched, int GoodEggs, int Slugs, bool WillLay)
{
    public List<int> Young { get; } = [];
}

/// <summary>The invented keeper: about 300 animals, 60 females paired a year of which some fifty lay, 300 young a year of which forty are held back. The same
/// for the same number of years and the same day.</summary>
internal sealed class Keeping
{
    private const int Females = 100;
    private const int Males = 30;
    private const int Paired = 60;
    private const int HeldBack = 40;
    private const int DaysOfYear = 365;
    private static readonly (string Name, bool IsRecessive, int PerHundred)[] Genes = [("Clown", true, 12), ("Pied", true, 8), ("Albino", true, 6), ("Pastel", false, 15), ("Enchi", false, 10)];

    private readonly Random _random;

    /// <summary>Invents.</summary>
    /// <param name="years">How many years.</param>
    /// <param name="today">The last day.</param>
    /// <param name="seed">The seed.</param>
    public Keeping(int years, DateOnly today, int seed)
    {
        (Today, First, _random) = (today, today.AddDays(-DaysOfYear * years), new Random(seed));
        for (var i = 0; i < Females + Males; i++)
        {
            Animals.Add(new($"F{i + 1:000}", i < Females, -1, -1, [.. Genes.Select(g => Founder(g.PerHundred) + Founder(g.PerHundred))], First));
        }

        for (var year = 0; year < years; year++)
        {
            Season(First.AddDays(DaysOfYear * year), spread: 90, year);
        }

        // The season under way: every step of it is at some female.
        Season(today.AddDays(-150), spread: 145, years);
    }

    public DateOnly First { get; }

    public DateOnly Today { get; }

    public List<KeptAnimal> Animals { get; } = [];

    public List<KeptYear> Years { get; } = [];

    /// <summary>What is seen of an animal, as trade text.</summary>
    public static string Seen(KeptAnimal animal) => string.Join(' ', Genes.Select((g, i) => g.IsRecessive
        ? animal.Copies[i] == 2 ? g.Name : null
        : animal.Copies[i] switch { 0 => null, 1 => g.Name, _ => "Super " + g.Name }).OfType<string>());

    /// <summary>What the breeder of every other founder said of what it carries; empty: nothing.</summary>
    public static string Told(KeptAnimal animal, int place) => place % 2 == 0 && animal.Sire < 0
        ? string.Join(' ', Genes.Where((g, i) => g.IsRecessive && animal.Copies[i] == 1).Select((g, i) => (i % 2 == 0 ? "het " : "66% het ") + g.Name))
        : string.Empty;

    private void Season(DateOnly from, int spread, int year)
    {
        var old = from.AddDays(-2 * DaysOfYear);
        var here = Enumerable.Range(0, Animals.Count).Where(i => Animals[i] is var a && a.Left > from && (a.Sire < 0 || (a.IsHeldBack && a.Came < old))).ToArray();
        var dams = here.Where(i => Animals[i].IsFemale).OrderByDescending(i => Animals[i].Came).ThenBy(_ => _random.Next()).Take(Paired).ToArray();
        var sires = here.Where(i => !Animals[i].IsFemale).OrderByDescending(i => Animals[i].Came).ThenBy(_ => _random.Next()).Take(14).ToArray();
        for (var n = 0; n < dams.Length; n++)
        {
            var paired = from.AddDays(n * spread / dams.Length);
            var ovulated = paired.AddDays(40 + _random.Next(30));
            var shed = ovulated.AddDays(15 + _random.Next(8));
            var laid = shed.AddDays(24 + _random.Next(10));
            var pipped = laid.AddDays(54 + _random.Next(8));
            var season = new KeptYear(
                dams[n], sires[_random.Next(sires.Length)], paired, ovulated, shed, laid, pipped, pipped.AddDays(1 + _random.Next(2)), 4 + _random.Next(5), _random.Next(4) == 0 ? 1 : 0, _random.Next(6) > 0);
            Years.Add(season);
            if (season.WillLay && season.Hatched <= Today)
            {
                Hatch(season, year);
            }
        }

        // Most are sold in their first half year; of those held back the oldest go when there is no room.
        var young = Enumerable.Range(0, Animals.Count).Where(i => Animals[i] is { Sire: >= 0 } a && a.Came >= from).OrderBy(_ => _random.Next()).ToArray();
        for (var n = 0; n < young.Length; n++)
        {
            var animal = Animals[young[n]];
            animal.IsHeldBack = n < HeldBack;
            animal.Left = animal.IsHeldBack ? animal.Came.AddDays(3 * DaysOfYear + _random.Next(200)) : animal.Came.AddDays(60 + _random.Next(140));
        }
    }

    private void Hatch(KeptYear season, int year)
    {
        for (var n = season.GoodEggs; n > 0; n--)
        {
            season.Young.Add(Animals.Count);
            var copies = Genes.Select((_, i) => Passed(Animals[season.Sire].Copies[i]) + Passed(Animals[season.Dam].Copies[i])).ToArray();
            Animals.Add(new($"Y{year + 1:00}-{Animals.Count:0000}", _random.Next(2) == 0, season.Sire, season.Dam, copies, season.Hatched));
        }
    }

    private int Founder(int perHundred) => _random.Next(100) < perHundred ? 1 : 0;

    private int Passed(int copies) => copies == 2 || (copies == 1 && _random.Next(2) == 0) ? 1 : 0;
}
