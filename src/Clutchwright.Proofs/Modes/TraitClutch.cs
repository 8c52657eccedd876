namespace Clutchwright.Proofs.Modes;

/// <summary>A clutch in which a new trait was looked for.</summary>
/// <param name="Sire">The sire's name; the same name in several clutches is the same animal.</param>
/// <param name="SireLook">What the sire shows.</param>
/// <param name="Dam">The dam's name.</param>
/// <param name="DamLook">What the dam shows.</param>
/// <param name="Males">The sons.</param>
/// <param name="Females">The daughters.</param>
/// <param name="Unsexed">Young that were not sexed.</param>
public sealed record TraitClutch(
    string Sire, TraitLook SireLook, string Dam, TraitLook DamLook, TraitCounts Males, TraitCounts Females, TraitCounts Unsexed);
