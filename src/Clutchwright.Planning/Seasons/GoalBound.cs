namespace Clutchwright.Planning.Seasons;

/// <summary>The part of the master programme that bounds the figure of one goal from above, by tangents of concave functions of the choices.</summary>
internal abstract class GoalBound(LinearProgramme programme, int figure)
{
    /// <summary>The smallest chance whose logarithm is taken; a figure near certainty may be wrong by as much.</summary>
    protected const double Smallest = 1e-12;

    /// <summary>Least value of a column that holds a logarithm.</summary>
    protected const double LeastLog = -120.0;

    /// <summary>Gets the column of the figure.</summary>
    public int Figure { get; } = figure;

    protected LinearProgramme Programme { get; } = programme;

    /// <summary>Adds the tangents at a point that the programme violates there.</summary>
    /// <param name="choices">The value of each pair, in [0, 1].</param>
    /// <param name="values">The values of the programme's columns.</param>
    /// <param name="tolerance">What is let pass.</param>
    /// <returns>Whether any was added.</returns>
    public abstract bool Cut(IReadOnlyList<double> choices, IReadOnlyList<double> values, double tolerance);

    /// <summary>Adds what holds the figure to its exact value at a plan.</summary>
    /// <param name="chosen">The pairs of the plan.</param>
    /// <param name="figure">The exact figure.</param>
    public virtual void CutAt(IReadOnlyList<int> chosen, double figure)
    {
    }
}
