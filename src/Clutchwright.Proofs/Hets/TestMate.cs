using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Proofs.Hets;

/// <summary>A mate that a possible het of a recessive was put to, and all the young of that pair.</summary>
/// <remarks>What the mate is does not change from clutch to clutch, so the young of all its clutches are counted together.</remarks>
public sealed record TestMate
{
    private TestMate(bool isVisual, Probability carries, int normals, int visuals)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(normals);
        ArgumentOutOfRangeException.ThrowIfNegative(visuals);
        IsVisual = isVisual;
        Carries = carries;
        Normals = normals;
        Visuals = visuals;
    }

    /// <summary>Gets whether the mate shows the recessive.</summary>
    public bool IsVisual { get; }

    /// <summary>Gets the chance that the mate carries the allele: certain for a visual and for a known het.</summary>
    public Probability Carries { get; }

    /// <summary>Gets how many young do not show it.</summary>
    public int Normals { get; }

    /// <summary>Gets how many young show it.</summary>
    public int Visuals { get; }

    /// <summary>Gets the chance of a visual per egg if the animal is het and the mate carries: 1/2 with a visual, 1/4 with a het.</summary>
    public Probability VisualPerEgg => IsVisual ? Probability.Half : Probability.Ratio(1, 4);

    /// <summary>A mate that shows the recessive.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative.</exception>
    public static TestMate Visual(int normals, int visuals = 0) => new(isVisual: true, Probability.Certain, normals, visuals);

    /// <summary>A mate known to be het.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative.</exception>
    public static TestMate Het(int normals, int visuals = 0) => new(isVisual: false, Probability.Certain, normals, visuals);

    /// <summary>A mate that does not show it and carries it with a chance.</summary>
    /// <param name="carries">The chance that the mate carries <em>if the animal under test does</em>: for the animal's own daughters 1/2.</param>
    /// <param name="normals">Young that do not show it.</param>
    /// <param name="visuals">Young that do.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative.</exception>
    public static TestMate PossibleHet(Probability carries, int normals, int visuals = 0) => new(isVisual: false, carries, normals, visuals);

    /// <summary>The same mate with other counts.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative.</exception>
    public TestMate With(int normals, int visuals = 0) => new(IsVisual, Carries, normals, visuals);

    /// <summary>The chance of this mate's young, in this order, if the animal is het.</summary>
    internal Probability IfHet()
    {
        var carrier = VisualPerEgg.Power(Visuals) * VisualPerEgg.Complement.Power(Normals) * Carries;
        return Visuals > 0 ? carrier : carrier + Carries.Complement;
    }
}
