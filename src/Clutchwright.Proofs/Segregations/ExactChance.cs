namespace Clutchwright.Proofs.Segregations;

/// <summary>A p value that was added up over all outcomes, or else estimated by drawing some of them.</summary>
/// <param name="Value">In [0, 1].</param>
/// <param name="StandardError">The standard error of an estimate, in the unit of <paramref name="Value"/>; 0 where nothing was drawn.</param>
/// <param name="Draws">How many outcomes were drawn; 0 where all were added up.</param>
public readonly record struct ExactChance(double Value, double StandardError, int Draws)
{
    /// <summary>Gets whether every outcome was accounted for, so that only rounding is left.</summary>
    public bool IsExact => Draws == 0;
}
