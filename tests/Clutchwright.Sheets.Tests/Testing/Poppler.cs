using System.Diagnostics;

namespace Clutchwright.Sheets.Tests.Testing;

/// <summary>Independent programs that read a PDF (Debian's poppler-utils; ./test installs them).</summary>
internal static class Poppler
{
    /// <summary>Runs a program on a file and gives what it says.</summary>
    public static string Say(string program, byte[] pdf, params string[] options)
    {
        var path = Write(pdf);
        try
        {
            return Run(program, [.. options, path, .. program == "pdftotext" ? new[] { "-" } : []]);
        }
        finally
        {
            File.Delete(path);
        }
    }

    /// <summary>A page as grey pixels, row by row.</summary>
    public static (byte[] Grey, int Width, int Height) Render(byte[] pdf, int dotsPerInch, int page = 1)
    {
        var path = Write(pdf);
        try
        {
            Run("pdftoppm", ["-gray", "-r", $"{dotsPerInch}", "-f", $"{page}", "-l", $"{page}", "-singlefile", path, path]);
            return ReadPgm(File.ReadAllBytes(path + ".pgm"));
        }
        finally
        {
            File.Delete(path);
            File.Delete(path + ".pgm");
        }
    }

    // "P5 width height 255" and the pixels (the netpbm format).
    private static (byte[] Grey, int Width, int Height) ReadPgm(byte[] file)
    {
        var (at, numbers) = (2, new List<int>());
        while (numbers.Count < 3)
        {
            while (char.IsWhiteSpace((char)file[at]))
            {
                at++;
            }

            var start = at;
            while (!char.IsWhiteSpace((char)file[at]))
            {
                at++;
            }

            numbers.Add(int.Parse(System.Text.Encoding.ASCII.GetString(file, start, at - start), System.Globalization.CultureInfo.InvariantCulture));
        }

        return (file[(at + 1)..], numbers[0], numbers[1]);
    }

    private static string Write(byte[] pdf)
    {
        var path = Path.Combine(Path.GetTempPath(), $"clutchwright-{Guid.CreateVersion7():N}.pdf");
        File.WriteAllBytes(path, pdf);
        return path;
    }

    private static string Run(string program, string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
        var (said, complained) = (process.StandardOutput.ReadToEnd(), process.StandardError.ReadToEnd());
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program}: {complained}");
        return said;
    }
}
