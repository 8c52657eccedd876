namespace Clutchwright.Planning.Routes;

/// <summary>What can at best be said of a class: when an animal of it is ready, and what comes of one.</summary>
/// <remarks>Figures are given for each number of animals held back, the last standing for any number beyond.</remarks>
internal sealed class ClassBound
{
    private readonly int _seasons;

    public ClassBound(int of, int levels, int seasons, int mostDams)
    {
        (Class, _seasons) = (of, seasons);
        First = seasons + 1;
        Ready = Vectors();
        Sisters = [.. Enumerable.Range(2, mostDams - 1).Select(_ => Vectors())];
        Cost = [.. Enumerable.Repeat(double.PositiveInfinity, levels)];
        Best = new double[levels * (seasons + 2) * (seasons + 1)];
        BestOfSisters = [.. Enumerable.Range(2, mostDams - 1).Select(_ => new double[levels * (seasons + 2) * (seasons + 1)])];
        BestCost = new double[levels * (seasons + 2)];
        Array.Fill(BestCost, double.PositiveInfinity);

        double[]?[] Vectors() => new double[]?[levels];
    }

    public int Class { get; }

    /// <summary>The first season in which one can be ready.</summary>
    public int First { get; private set; }

    /// <summary>The most females of the stock alike that can be paired at once.</summary>
    public int FounderDams { get; set; } = 1;

    /// <summary>The season from which they can.</summary>
    public int FounderReady { get; set; } = 1;

    /// <summary>For each number held back the chance by season that one is ready; null: there is none.</summary>
    public double[]?[] Ready { get; }

    /// <summary>The same of two sisters, of three, and so on.</summary>
    public double[]?[][] Sisters { get; }

    /// <summary>The numbers held back at which one is likelier ready than with fewer, and the same of sisters.</summary>
    public int[] ReadyLevels { get; private set; } = [];

    public int[][] SisterLevels { get; private set; } = [];

    /// <summary>The most that one is likely to be ready at all.</summary>
    public double Most { get; private set; }

    /// <summary>For each number held back the least cost of one.</summary>
    public double[] Cost { get; }

    /// <summary>By number held back from now on, season in which one is ready, and season: the best chance of the target by then.</summary>
    public double[] Best { get; }

    /// <summary>The same of two sisters, of three, and so on.</summary>
    public double[][] BestOfSisters { get; }

    /// <summary>By number held back from now on and season in which one is ready: the least cost from then.</summary>
    public double[] BestCost { get; }

    public int At(int level, int ready) => ((level * (_seasons + 2)) + ready) * (_seasons + 1);

    public int CostAt(int level, int ready) => (level * (_seasons + 2)) + ready;

    /// <summary>Puts in a chance of being ready by a season, for so many held back or more.</summary>
    public void Raise(double[]?[] into, int level, int season, double chance)
    {
        for (var q = level; q < into.Length; q++)
        {
            var vector = into[q] ??= new double[_seasons + 1];
            if (vector[season] >= chance)
            {
                return;
            }

            vector[season] = chance;
        }

        First = Math.Min(First, season);
    }

    public void Lower(int level, double cost)
    {
        for (var q = level; q < Cost.Length && cost < Cost[q]; q++)
        {
            Cost[q] = cost;
        }
    }

    /// <summary>Ready sooner is no worse than later.</summary>
    public void CarryBack(int season)
    {
        if (season == _seasons)
        {
            return;
        }

        foreach (var best in BestOfSisters.Append(Best))
        {
            for (var q = 0; q < Cost.Length; q++)
            {
                Array.Copy(best, At(q, season + 1), best, At(q, season), _seasons + 1);
            }
        }

        for (var q = 0; q < Cost.Length; q++)
        {
            BestCost[CostAt(q, season)] = BestCost[CostAt(q, season + 1)];
        }
    }

    /// <summary>Lowers the least cost from a season on.</summary>
    public void LowerBest(int level, int season, double cost)
    {
        for (var q = level; q < Cost.Length && cost < BestCost[CostAt(q, season)]; q++)
        {
            BestCost[CostAt(q, season)] = cost;
        }
    }

    /// <summary>Ends the filling in of when one is ready.</summary>
    public void Close()
    {
        Most = Ready[^1]?.Max() ?? 0.0;
        ReadyLevels = Levels(Ready);
        SisterLevels = [.. Sisters.Select(Levels)];
    }

    // Those that differ from the one before.
    private static int[] Levels(double[]?[] of) => [.. Enumerable.Range(0, of.Length).Where(q =>
        of[q] is { } here && (q == 0 || of[q - 1] is not { } before || !here.AsSpan().SequenceEqual(before)))];
}
