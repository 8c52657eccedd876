using System.Diagnostics;

namespace Clutchwright.Peers;

/// <summary>One question, answered by our engine and by another program on the same input in turns.</summary>
/// <param name="Question">What is asked, and of what.</param>
/// <param name="Peer">The other program.</param>
/// <param name="Ours">Answers it with our engine; gives a number to compare.</param>
/// <param name="Theirs">Answers it with the other program; gives the number and, if it tells, the seconds it took inside. <c>null</c>: it did not answer in time.</param>
/// <param name="Tolerance">The largest difference between the two numbers.</param>
internal sealed record Comparison(
    string Question, string Peer, Func<double> Ours, Func<Task<(double Answer, double? Seconds)?>> Theirs, double Tolerance)
{
    private const int Rounds = 3;
    private const int OurTurns = 5;

    // So that ours is compiled as well as it gets.
    private static readonly TimeSpan WarmUp = TimeSpan.FromSeconds(2);

    /// <summary>Runs both in turns and gives a row of the table. Of each the shortest time counts: a busy machine only adds.</summary>
    public async Task<string> RunAsync()
    {
        var (ours, theirs) = (double.PositiveInfinity, double.PositiveInfinity);
        var (answer, said) = (double.NaN, (double?)null);
        var inTime = true;
        for (var start = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(start) < WarmUp;)
        {
            Ours();
        }

        for (var round = 0; round < Rounds && inTime; round++)
        {
            for (var turn = 0; turn < OurTurns; turn++)
            {
                var start = Stopwatch.GetTimestamp();
                answer = Ours();
                ours = Math.Min(ours, Stopwatch.GetElapsedTime(start).TotalSeconds);
            }

            var before = Stopwatch.GetTimestamp();
            var result = await Theirs();
            var took = result?.Seconds ?? Stopwatch.GetElapsedTime(before).TotalSeconds;
            theirs = Math.Min(theirs, took);
            inTime = result is not null;
            said = result?.Answer;
        }

        var agreement = said is null ? "no answer in time" : Math.Abs(said.Value - answer) <= Tolerance ? "same answer" : $"DIFFER: {answer} and {said}";
        return $"| {Question} | {Peer} | {Say(ours)} | {(inTime ? "" : "over ")}{Say(theirs)} | {(inTime ? "" : "over ")}{theirs / ours:G3} | {agreement} |";
    }

    private static string Say(double seconds) => seconds < 1 ? $"{1000 * seconds:G3} ms" : $"{seconds:G3} s";
}
