namespace Clutchwright.Desk.Animals;

/// <summary>The state of the stock on the start page.</summary>
/// <param name="Males">Animals kept, males.</param>
/// <param name="Females">Animals kept, females.</param>
/// <param name="Unsexed">Animals kept, not sexed.</param>
/// <param name="Animals">All animals of the book, wherever they are.</param>
/// <param name="PossibleHets">How many are possible hets: whether they carry some recessive allele is in doubt; <c>null</c>: what is believed was not reckoned in time.</param>
/// <param name="WithProblems">How many have a statement that cannot be read or contradicts another; <c>null</c>: as above.</param>
/// <param name="Recent">The latest deeds.</param>
/// <param name="IsDemo">Whether this is the demo stock.</param>
public sealed record TodayAnswer(
    int Males, int Females, int Unsexed, int Animals, int? PossibleHets, int? WithProblems, IReadOnlyList<DeedLine> Recent, bool IsDemo);
