using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Testing;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Peers;

/// <summary>How the time to reckon all beliefs of a stock grows with its animals: the picture of docs/model/beliefs.md.</summary>
/// <remarks>Processor time of the whole process, everything compiled before: of each stock the shortest of several turns; over five stocks of one size the median and the range.</remarks>
internal static class Growth
{
    private const int Seeds = 5;
    private const int Turns = 7;
    private static readonly int[] Seasons = [2, 5, 10, 20, 40];
    private static readonly Species Snake = Describe.Species(SexSystem.XY, Describe.Free("clown", Describe.Recessive("clown")));

    private static readonly (int Females, int Males, double Frequency, string Colour, bool IsDashed)[] Series =
    [
        (10, 3, 0.05, "#2f5d50", false), (10, 3, 0.25, "#8a5a1c", true), (20, 5, 0.05, "#3d5a80", false), (20, 5, 0.25, "#9b2d30", true),
    ];

    /// <summary>Measures, tells each figure, and draws.</summary>
    /// <param name="told">Takes the figures.</param>
    /// <returns>The picture as SVG.</returns>
    public static string Draw(TextWriter told)
    {
        foreach (var series in Series.Concat(Series))
        {
            _ = Time(10, series.Females, series.Males, series.Frequency, 1);
        }

        var svg = new StringBuilder(Frame());
        var labels = new List<(double Y, string Text)>();
        foreach (var (females, males, frequency, colour, isDashed) in Series)
        {
            var points = new List<(double X, double Low, double Middle, double High)>();
            foreach (var seasons in Seasons)
            {
                var times = Enumerable.Range(1, Seeds).Select(seed => Time(seasons, females, males, frequency, seed)).OrderBy(t => t.Milliseconds).ToArray();
                var animals = times.Average(t => t.Animals);
                points.Add((X(animals), Y(times[0].Milliseconds), Y(times[Seeds / 2].Milliseconds), Y(times[^1].Milliseconds)));
                told.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{females} females, {males} males, frequency {frequency}, {seasons} seasons, {animals:0} animals: {times[Seeds / 2].Milliseconds:0.00} ms ({times[0].Milliseconds:0.00} to {times[^1].Milliseconds:0.00})"));
            }

            svg.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{string.Join(' ', points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.0},{p.Middle:0.0}")))}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"2.2\" stroke-dasharray=\"{(isDashed ? "6 4" : string.Empty)}\"/>\n");
            foreach (var (x, low, middle, high) in points)
            {
                svg.Append(CultureInfo.InvariantCulture, $"<line x1=\"{x:0.0}\" y1=\"{low:0.0}\" x2=\"{x:0.0}\" y2=\"{high:0.0}\" stroke=\"{colour}\" stroke-width=\"1\"/><circle cx=\"{x:0.0}\" cy=\"{middle:0.0}\" r=\"3.2\" fill=\"{colour}\"/>\n");
            }

            labels.Add((points[^1].Middle, $"fill=\"{colour}\">{females} females, {males} males<tspan x=\"572\" dy=\"16\">frequency {frequency.ToString(CultureInfo.InvariantCulture)}</tspan></text>\n"));
        }

        // From the top down, none over another.
        var least = 0.0;
        foreach (var (y, text) in labels.OrderBy(l => l.Y))
        {
            least = Math.Max(least, y);
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"572\" y=\"{least:0.0}\" {text}");
            least += 38;
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static (double Animals, double Milliseconds) Time(int seasons, int females, int males, double frequency, int seed)
    {
        var clown = Snake.FindAllele("clown")!;
        var frequencies = new Dictionary<Allele, double> { [clown] = frequency };
        var settings = new BeliefSettings { Frequencies = frequencies };
        var animals = GeneDrop.Record(Snake, Kennels.Seasons(seasons, females, males, (ulong)seed), frequencies, (ulong)(seed + 100));
        var least = double.PositiveInfinity;
        for (var turn = 0; turn < Turns; turn++)
        {
            // Small stocks are reckoned often enough for the clock.
            var (times, before) = (0, Environment.CpuUsage.TotalTime);
            do
            {
                var beliefs = PedigreeBeliefs.Of(Snake, animals, settings);
                _ = animals.Sum(a => beliefs[a.Key].Genotype.ChanceOfCarrying(clown).Value);
                times++;
            }
            while ((Environment.CpuUsage.TotalTime - before).TotalMilliseconds < 60.0);
            least = Math.Min(least, (Environment.CpuUsage.TotalTime - before).TotalMilliseconds / times);
        }

        return (animals.Count, least);
    }

    private static double X(double animals) => 70.0 + (245.0 * (Math.Log10(animals) - 2.0));

    private static double Y(double milliseconds) => 410.0 - (95.0 * (Math.Log10(milliseconds) + 1.0));

    private static string Frame()
    {
        var svg = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-16 0 776 470\" font-family=\"Georgia, serif\" font-size=\"14\" role=\"img\" aria-label=\"Processor time to reckon all beliefs against the number of animals, both axes logarithmic\">\n<rect x=\"-16\" width=\"776\" height=\"470\" fill=\"#fbf8f1\"/>\n");
        foreach (var animals in new[] { 100, 1_000, 10_000 })
        {
            svg.Append(CultureInfo.InvariantCulture, $"<line x1=\"{X(animals):0.0}\" y1=\"30\" x2=\"{X(animals):0.0}\" y2=\"410\" stroke=\"#d8d0bd\"/><text x=\"{X(animals):0.0}\" y=\"430\" text-anchor=\"middle\" fill=\"#3b3a36\">{animals:N0}</text>\n");
        }

        foreach (var time in new[] { 0.1, 1.0, 10.0, 100.0, 1_000.0 })
        {
            svg.Append(CultureInfo.InvariantCulture, $"<line x1=\"70\" y1=\"{Y(time):0.0}\" x2=\"560\" y2=\"{Y(time):0.0}\" stroke=\"#d8d0bd\"/><text x=\"62\" y=\"{Y(time) + 5:0.0}\" text-anchor=\"end\" fill=\"#3b3a36\">{time:#,0.#} ms</text>\n");
        }

        return svg.Append("<text x=\"315.0\" y=\"455\" text-anchor=\"middle\" fill=\"#3b3a36\">animals in the stock</text>\n").ToString();
    }
}
