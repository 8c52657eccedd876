namespace Clutchwright.Desk.Words;

/// <summary>A named colour.</summary>
/// <param name="Name">The ISCC–NBS name.</param>
/// <param name="Srgb">Its centroid as <c>#RRGGBB</c>.</param>
public sealed record ToneWords(string Name, string Srgb);

/// <summary>The colours of a look at one stage of life; <c>null</c> where none is known.</summary>
/// <param name="Stage"><c>hatchling</c>, <c>juvenile</c>, <c>subadult</c> or <c>adult</c>.</param>
/// <param name="FromMonths">The age at which the stage begins, in months.</param>
/// <param name="Ground">Of the ground.</param>
/// <param name="Pattern">Of the pattern.</param>
/// <param name="Eye">Of the eye.</param>
public sealed record StageWords(string Stage, int FromMonths, ToneWords? Ground, ToneWords? Pattern, ToneWords? Eye);

/// <summary>How a making looks over its life: what a tone strip draws.</summary>
/// <param name="Name">Of the making, for example <c>Pastel Clown</c>.</param>
/// <param name="IsRecorded">True where the catalogue records this very making; false: composed from its parts.</param>
/// <param name="ComposedOf">The parts it was composed from; empty where recorded.</param>
/// <param name="Stages">The stages in order of age; empty where no colours are known.</param>
/// <param name="Words">Sentences on ground, form of pattern, head and white, and changes with age.</param>
/// <param name="Varies"><c>little</c>, <c>some</c>, <c>much</c> or <c>null</c>.</param>
/// <param name="Grade">How well it is known, in words.</param>
/// <param name="Sources">Citations.</param>
public sealed record LookWords(
    string Name,
    bool IsRecorded,
    IReadOnlyList<string> ComposedOf,
    IReadOnlyList<StageWords> Stages,
    IReadOnlyList<string> Words,
    string? Varies,
    string? Grade,
    IReadOnlyList<string> Sources);
