using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;

namespace Clutchwright.Cli.Tests;

/// <summary>One run of the command line, as a shell would see it.</summary>
internal sealed record Run(int Code, string Output, string Error)
{
    /// <summary>Gets the answer as JSON.</summary>
    public JsonObject Json => JsonNode.Parse(Output)!.AsObject();

    /// <summary>Gets the folder of the made-up species.</summary>
    public static string MadeUpSpecies => Path.Combine(Golden.ProjectFolder, "Species", "python-ficta");

    /// <summary>Runs over the catalogue that is shipped.</summary>
    public static Task<Run> ShippedAsync(params string[] args) => StyledAsync(isStyled: false, [.. args]);

    /// <summary>Runs over the made-up species.</summary>
    public static Task<Run> MadeUpAsync(params string[] args) => StyledAsync(isStyled: false, [.. args, "--catalogue", MadeUpSpecies]);

    /// <summary>Runs with or without bold and italic.</summary>
    public static async Task<Run> StyledAsync(bool isStyled, string[] args)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var data = args.Contains("--data", StringComparer.Ordinal) ? null : new DataFolder();
        string[] all = data is null ? args : [.. args, "--data", data.Path];

        var code = await CommandLine.RunAsync(all, new Terminal(output, error, isStyled, Width: 20_000), CancellationToken.None);

        return new(code, output.ToString(), error.ToString());
    }
}
