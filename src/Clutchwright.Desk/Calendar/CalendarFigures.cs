using Clutchwright.Catalogue.Entries;
using Clutchwright.Planning.Expectations;

namespace Clutchwright.Desk.Calendar;

/// <summary>The intervals of a year, with their figures in the species data.</summary>
internal sealed class CalendarFigures
{
    public const string PairingToOvulation = "first-pairing-to-ovulation-days";
    public const string OvulationToShed = "ovulation-to-prelay-shed-days";
    public const string ShedToEggs = "prelay-shed-to-eggs-days";
    public const string OvulationToEggs = "ovulation-to-eggs-days";
    public const string Incubation = "incubation-days";
    public const string PipToHatch = "pip-to-leaving-egg-days";
    public const string FirstShed = "first-shed-days";
    public const string FirstMeal = "first-shed-to-first-meal-days";
    public const string NextEggs = "eggs-to-next-eggs-days";

    private const double WeightUnlessSaid = 6.0;

    private static readonly Dictionary<string, string> Named = new(StringComparer.Ordinal)
    {
        [PairingToOvulation] = "first pairing to ovulation",
        [OvulationToShed] = "ovulation to pre-lay shed",
        [ShedToEggs] = "pre-lay shed to eggs",
        [OvulationToEggs] = "ovulation to eggs",
        [Incubation] = "eggs to first pip",
        [PipToHatch] = "first pip to out of the egg",
        [FirstShed] = "hatching to first shed",
        [FirstMeal] = "first shed to first meal",
        [NextEggs] = "eggs to the eggs of the next season",
    };

    private readonly Biology _biology;

    public CalendarFigures(Biology biology)
    {
        _biology = biology;
        Missing = [.. Named.Keys.Where(k => biology.Find(k) is not { Sd: > 0.0, Mean: > 0.0 })];
        Weight = biology.Find("interval-weight")?.Mean is > 2.0 and var weight ? weight : WeightUnlessSaid;
    }

    /// <summary>The names of the intervals, in the order of a year.</summary>
    public static IReadOnlyCollection<string> Intervals => Named.Keys;

    /// <summary>The intervals without which nothing can be reckoned.</summary>
    public IReadOnlyList<string> Missing { get; }

    /// <summary>How many records a figure weighs as much as.</summary>
    public double Weight { get; }

    /// <summary>The share of paired, ready females that lay in a season.</summary>
    public double Laying => _biology.Laying?.Mean is > 0.0 and <= 1.0 and var share ? share : 1.0;

    /// <summary>The share of ovulations that are noticed, before the book is asked.</summary>
    public double OvulationNoticed => Share("ovulation-noticed");

    /// <summary>The share of pre-lay sheds that are noticed, before the book is asked.</summary>
    public double ShedNoticed => Share("prelay-shed-noticed");

    /// <summary>Days without a record after which a season is over.</summary>
    public int SeasonGapDays => (int)Most(PairingToOvulation);

    /// <summary>Days after the first shed without a meal after which a veterinarian is asked.</summary>
    public int MealConcernDays => (int)(_biology.Find("first-meal-concern-days")?.Mean ?? (2.0 * Most(FirstMeal)));

    public static string Words(string interval) => Named[interval];

    public Spread Of(string interval) => _biology.Find(interval)!;

    /// <summary>The most days that biology states, or far above the mean.</summary>
    public double Most(string interval) => Of(interval) is var figure && figure.Most is { } most ? most : figure.Mean + (4.0 * figure.Sd);

    /// <summary>The least days that biology states, or far below the mean.</summary>
    public double Least(string interval) => Of(interval) is var figure && figure.Least is { } least ? least : Math.Max(0.0, figure.Mean - (4.0 * figure.Sd));

    public IntervalPrior Prior(string interval) => new(Of(interval).Mean, Of(interval).Sd, Weight);

    /// <summary>How many times as long eggs take at a temperature as at the usual one, and the standard deviation of its logarithm.</summary>
    public (double Pace, double Sd) Pace(double? celsius)
    {
        if (celsius is not { } kept || _biology.Find("incubation-q10") is not { Mean: > 0.0 } q10 || _biology.Find("incubation-temperature-celsius") is not { } usual)
        {
            return (1.0, 0.0);
        }

        var tens = (usual.Mean - kept) / 10.0;
        return (Math.Pow(q10.Mean, tens), Math.Abs(tens) * q10.Sd / q10.Mean);
    }

    private double Share(string name) => _biology.Find(name)?.Mean is >= 0.0 and <= 1.0 and var share ? share : 0.5;
}
