using System.Text.RegularExpressions;
using Xunit;

namespace Clutchwright.Cli.Tests;

/// <summary>Texts that stay as they are until someone means to change them.</summary>
/// <remarks>Run with CLUTCHWRIGHT_REWRITE=1 to write the files anew.</remarks>
internal static partial class Golden
{
    /// <summary>Gets the folder of this project in the checkout.</summary>
    public static string ProjectFolder { get; } = FindProject();

    /// <summary>Compares a text with the file of a name; folders of the machine and times of day are left out.</summary>
    public static void Equal(string name, string text, params (string Machine, string Written)[] replaced)
    {
        var file = Path.Combine(ProjectFolder, "Expectations", name);
        foreach (var (machine, written) in replaced.Append((Run.MadeUpSpecies, "SPECIES")))
        {
            text = text.Replace(machine, written, StringComparison.Ordinal);
        }

        text = TimeOfDay().Replace(text, "TIME");
        if (Environment.GetEnvironmentVariable("CLUTCHWRIGHT_REWRITE") is "1")
        {
            File.WriteAllText(file, text);
        }

        Assert.Equal(File.Exists(file) ? File.ReadAllText(file) : string.Empty, text);
    }

    private static string FindProject()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Clutchwright.slnx")))
            {
                return Path.Combine(folder.FullName, "tests", "Clutchwright.Cli.Tests");
            }
        }

        throw new DirectoryNotFoundException("The tests run inside a checkout.");
    }

    [GeneratedRegex(@"\d{4}-\d\d-\d\d[ T]\d\d:\d\d(:\d\dZ)?", RegexOptions.ExplicitCapture)]
    private static partial Regex TimeOfDay();
}
