using System.Globalization;

namespace Clutchwright.Peers;

/// <summary>One question, answered by our engine and by another program on the same input.</summary>
/// <param name="Question">What is asked, and of what.</param>
/// <param name="Peer">The other program.</param>
/// <param name="Ours">Answers it with our engine; gives a number to compare.</param>
/// <param name="Theirs">Answers it with the other program; gives the number and, if it tells, the seconds it took inside. <c>null</c>: it did not answer in time.</param>
/// <param name="Tolerance">The largest difference between the two numbers.</param>
/// <remarks>What is compared is the time of processors, since others work on the machine: ours with every thread, theirs with starting and reading
/// unless they tell their own.</remarks>
internal sealed record Comparison(
    string Question, string Peer, Func<double> Ours, Func<Task<(double Answer, double? Seconds)?>> Theirs, double Tolerance)
{
    private static readonly TimeSpan WarmUp = TimeSpan.FromSeconds(3);
    private static readonly TimeSpan Turns = TimeSpan.FromSeconds(1);

    /// <summary>Gets how often the other program is asked; of both the shortest time counts.</summary>
    public int Rounds { get; init; } = 3;

    /// <summary>Runs both in turns and gives a row of the table; of each the shortest time counts.</summary>
    public async Task<string> RunAsync()
    {
        var (ours, theirs) = (double.PositiveInfinity, double.PositiveInfinity);
        var (answer, said) = (double.NaN, (double?)null);
        var inTime = true;
        Repeat(WarmUp, out _);
        for (var round = 0; round < Rounds && inTime; round++)
        {
            ours = Math.Min(ours, Repeat(Turns, out answer));
            var before = OfEndedPrograms();
            var result = await Theirs();
            theirs = Math.Min(theirs, result?.Seconds ?? (OfEndedPrograms() - before));
            inTime = result is not null;
            said = result?.Answer;
        }

        var agreement = said is null ? "no answer in time" : Math.Abs(said.Value - answer) <= Tolerance ? "same answer" : $"DIFFER: {answer} and {said}";
        var over = inTime ? "" : "over ";
        return $"| {Question} | {Peer} | {Say(ours)} | {over}{Say(theirs)} | {over}{Round(theirs / ours)} | {agreement} |";
    }

    private double Repeat(TimeSpan atLeast, out double answer)
    {
        // Of the processor too: on a busy machine seconds of the clock may not be enough to have everything compiled.
        var (before, turns) = (Environment.CpuUsage.TotalTime, 0);
        do
        {
            answer = Ours();
            turns++;
        }
        while (Environment.CpuUsage.TotalTime - before < atLeast);

        return (Environment.CpuUsage.TotalTime - before).TotalSeconds / turns;
    }

    // The 16th and 17th fields of the line, in hundredths of a second; the second field, the name in brackets, may hold spaces.
    private static double OfEndedPrograms()
    {
        var stat = File.ReadAllText("/proc/self/stat");
        var fields = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
        return (long.Parse(fields[13], CultureInfo.InvariantCulture) + long.Parse(fields[14], CultureInfo.InvariantCulture)) / 100.0;
    }

    private static string Say(double seconds) => seconds < 1 ? $"{Round(1000 * seconds)} ms" : $"{Round(seconds)} s";

    // Two digits say what such times are worth.
    private static string Round(double value) => decimal.Parse(
        value.ToString("E1", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture).ToString("0.###", CultureInfo.InvariantCulture);
}
