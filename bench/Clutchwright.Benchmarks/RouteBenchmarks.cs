using BenchmarkDotNet.Attributes;
using Clutchwright.Planning.Routes;
using Clutchwright.Planning.Tests.Routes;

namespace Clutchwright.Benchmarks;

/// <summary>Routes over eight seasons to four and to six loci, half of them recessive, from invented rooms of 40 and 60 animals of one or two genes each; the first
/// route known, and the whole set.</summary>
[MemoryDiagnoser]
public class RouteBenchmarks
{
    private readonly RouteProblem _four = RouteRooms.Of(4, 40, seed: 2);
    private readonly RouteProblem _six = RouteRooms.Of(6, 60, seed: 1);
    private readonly RouteProblem _doubtful = RouteRooms.Of(6, 60, seed: 3, doubtful: 6);

    [Benchmark(Description = "4 loci, 40 animals: all routes, proven")]
    public int Four() => Proven(_four);

    [Benchmark(Baseline = true, Description = "6 loci, 60 animals: all routes, proven")]
    public int Six() => Proven(_six);

    [Benchmark(Description = "the same, 6 of the animals possible hets")]
    public int Doubtful() => Proven(_doubtful);

    [Benchmark(Description = "6 loci, 60 animals: the first route")]
    public int First()
    {
        using var enough = new CancellationTokenSource();
        var known = 0;
        try
        {
            _ = RouteAnswer.Of(_six, progress: (_, routes) => Stop(routes), cancel: enough.Token);
        }
        catch (OperationCanceledException)
        {
            return known;
        }

        throw new InvalidOperationException("There is no route.");

        void Stop(int routes)
        {
            if ((known = routes) > 0)
            {
                enough.Cancel();
            }
        }
    }

    private static int Proven(RouteProblem problem) => RouteAnswer.Of(problem) is { IsProven: true } answer
        ? answer.Routes.Count
        : throw new InvalidOperationException("The routes are not proven.");
}
