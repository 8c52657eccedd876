using System.Globalization;
using Clutchwright.Reference.Tests.Programs;

namespace Clutchwright.Reference.Tests.R;

/// <summary>Numbers that R reckons (statistics.R).</summary>
internal static class RNumbers
{
    /// <summary>Has R answer several questions in one run.</summary>
    /// <param name="expressions">An R expression each.</param>
    /// <returns>The numbers of each answer.</returns>
    public static async Task<IReadOnlyList<double[]>> AskAsync(IEnumerable<string> expressions)
    {
        using var folder = new WorkFolder();
        folder.Write("questions.txt", string.Join('\n', expressions) + "\n");
        var said = await RScriptFile.RunAsync(folder, "statistics.R", TimeSpan.FromSeconds(120));
        return [.. said.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line
            .Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number).ToArray())];
    }

    /// <summary>Numbers as an R vector.</summary>
    public static string Vector(IEnumerable<int> numbers) => $"c({string.Join(',', numbers)})";

    /// <summary>A number in R's form.</summary>
    public static string Say(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    private static double Number(string text) => text switch
    {
        "Inf" => double.PositiveInfinity,
        "-Inf" => double.NegativeInfinity,
        _ => double.Parse(text, CultureInfo.InvariantCulture),
    };
}
