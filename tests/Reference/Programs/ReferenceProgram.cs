using System.ComponentModel;
using System.Diagnostics;

namespace Clutchwright.Reference.Tests.Programs;

/// <summary>An independent program that the engines are compared with.</summary>
/// <param name="Command">The command, found on the path.</param>
/// <param name="Package">The Debian package that brings it.</param>
internal sealed record ReferenceProgram(string Command, string Package)
{
    /// <summary>Prepares a pedigree for FASTLINK: breaks loops, rules genotypes out.</summary>
    public static ReferenceProgram Unknown { get; } = new("unknown", "fastlink");

    /// <summary>FASTLINK's likelihoods and genotype risks.</summary>
    public static ReferenceProgram Mlink { get; } = new("mlink", "fastlink");

    /// <summary>A solver of graphical models.</summary>
    public static ReferenceProgram Toulbar2 { get; } = new("toulbar2", "toulbar2");

    /// <summary>R, running a script.</summary>
    public static ReferenceProgram Rscript { get; } = new("Rscript", "r-base-core");

    /// <summary>Reads and writes pedigrees in linkage format.</summary>
    public static ReferenceProgram Plink { get; } = new("plink1.9", "plink1.9");

    /// <summary>Debian's Python, with a reader of iCalendar files.</summary>
    public static ReferenceProgram Python { get; } = new("/usr/bin/python3", "python3-icalendar");

    /// <summary>Runs the program to its end and gives what it printed on standard output.</summary>
    /// <param name="folder">Where it runs.</param>
    /// <param name="longest">How long it may take; it is stopped after that.</param>
    /// <param name="arguments">Its arguments.</param>
    /// <exception cref="TimeoutException">It took too long.</exception>
    /// <exception cref="InvalidOperationException">It is not installed or failed; the message says which.</exception>
    public async Task<string> RunAsync(string folder, TimeSpan longest, params string[] arguments)
    {
        var start = new ProcessStartInfo(Command, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            UseShellExecute = false,
        };
        using var process = Start(start);
        process.StandardInput.Close();
        using var clock = new CancellationTokenSource(longest);
        var said = process.StandardOutput.ReadToEndAsync(CancellationToken.None);
        var complained = process.StandardError.ReadToEndAsync(CancellationToken.None);
        try
        {
            await process.WaitForExitAsync(clock.Token);
        }
        catch (OperationCanceledException e)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{Command} took longer than {longest.TotalSeconds} s and was stopped.", e);
        }

        var output = await said;
        return process.ExitCode == 0
            ? output
            : throw new InvalidOperationException($"{Command} ended with code {process.ExitCode}: {await complained}{output}");
    }

    private Process Start(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start) ?? throw new InvalidOperationException($"{Command} could not be started.");
        }
        catch (Win32Exception e)
        {
            throw new InvalidOperationException(
                $"'{Command}' is missing: the engines are compared with it, and nothing is skipped. On Debian: apt-get install {Package}", e);
        }
    }
}
