namespace Clutchwright.Proofs.Modes;

/// <summary>Young of one sex by what they show.</summary>
/// <param name="Normal">Those that show nothing; 0 or more.</param>
/// <param name="Shows">Those that show the trait; 0 or more.</param>
/// <param name="Super">Those that show its stronger form; 0 or more.</param>
public readonly record struct TraitCounts(int Normal, int Shows, int Super = 0)
{
    /// <summary>Gets the number of them.</summary>
    public int Number => Normal + Shows + Super;

    internal int Of(TraitLook look) => look switch { TraitLook.Normal => Normal, TraitLook.Shows => Shows, _ => Super };
}
