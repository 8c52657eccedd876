namespace Clutchwright.Cli;

/// <summary>What the program says to the shell.</summary>
internal static class ExitCode
{
    /// <summary>The question was answered.</summary>
    public const int Answered = 0;

    /// <summary>The question was asked wrongly; one line on standard error says what and where.</summary>
    public const int AskedWrongly = 1;

    /// <summary>It could not be done; standard error says why.</summary>
    public const int CouldNotBeDone = 2;
}
