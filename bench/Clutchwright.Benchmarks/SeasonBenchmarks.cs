using BenchmarkDotNet.Attributes;
using Clutchwright.Planning.Seasons;
using Clutchwright.Planning.Tests.Seasons;

namespace Clutchwright.Benchmarks;

/// <summary>The plan of a season: the largest stock of the goals, and a mating instance whose optimum is known.</summary>
[MemoryDiagnoser]
public class SeasonBenchmarks
{
    private readonly SeasonProblem _large = SeasonGen.Large(1, 200, 40);
    private readonly SeasonProblem _mating = MatingInstance.Of(20, 200);

    [Benchmark(Description = "200 females, 40 males, five goals: gap")]
    public double Large() => SeasonPlanner.Plan(_large).Gap;

    [Benchmark(Baseline = true, Description = "20 males, 200 females, one goal, optimum 143,740")]
    public double Mating() => SeasonPlanner.Plan(_mating).Objective;
}
