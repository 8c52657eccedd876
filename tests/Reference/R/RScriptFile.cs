namespace Clutchwright.Reference.Tests.R;

/// <summary>A script of this folder, run by R.</summary>
internal static class RScriptFile
{
    private static readonly string[] Quietly = ["--vanilla"];

    /// <summary>Runs a script in a folder that holds its input and gives what it printed.</summary>
    public static async Task<string> RunAsync(Programs.WorkFolder folder, string script, TimeSpan longest)
    {
        var path = Path.Combine(AppContext.BaseDirectory, "R", script);
        return await Programs.ReferenceProgram.Rscript.RunAsync(folder.FullPath, longest, [.. Quietly, path]);
    }
}
