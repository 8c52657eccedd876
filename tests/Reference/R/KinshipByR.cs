using System.Globalization;
using System.Runtime.InteropServices;
using Clutchwright.Reference.Tests.Programs;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.R;

/// <summary>The kinship of every pair, reckoned by R from the definition (kinship.R).</summary>
/// <param name="Count">How many animals.</param>
/// <param name="Values">By animal and animal.</param>
/// <param name="Seconds">The processor time of the arithmetic inside R.</param>
internal sealed record KinshipByR(int Count, IReadOnlyList<double> Values, double Seconds)
{
    /// <summary>The kinship of two animals; of an animal with itself (1 + F) / 2.</summary>
    public double this[int a, int b] => Values[(a * Count) + b];

    /// <summary>The inbreeding coefficient of an animal.</summary>
    public double Inbreeding(int animal) => (2 * this[animal, animal]) - 1;

    /// <summary>Has R reckon a pedigree.</summary>
    public static async Task<KinshipByR> OfAsync(SamplePedigree family)
    {
        using var folder = new WorkFolder();
        folder.Write("pedigree.csv", family.ToNumberTable());
        var said = await RScriptFile.RunAsync(folder, "kinship.R", TimeSpan.FromSeconds(120));
        var bytes = await File.ReadAllBytesAsync(Path.Combine(folder.FullPath, "kinship.bin"));
        return new(family.Count, MemoryMarshal.Cast<byte, double>(bytes).ToArray(), double.Parse(said.Trim(), CultureInfo.InvariantCulture));
    }
}
