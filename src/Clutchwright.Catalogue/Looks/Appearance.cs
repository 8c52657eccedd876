using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.Looks;

/// <summary>How an animal looks at an age: as the catalogue states it, or composed from the parts.</summary>
public sealed class Appearance
{
    internal Appearance(AgeStage stage, IReadOnlyList<Expression> expressions, ToneSet tones)
    {
        Stage = stage;
        Expressions = expressions;
        Tones = tones;
    }

    /// <summary>Gets the stage of life.</summary>
    public AgeStage Stage { get; }

    /// <summary>Gets the visible forms; none: the normal animal.</summary>
    public IReadOnlyList<Expression> Expressions { get; }

    /// <summary>Gets the tones.</summary>
    public ToneSet Tones { get; }

    /// <summary>Gets words on the pattern-free ground, or <c>null</c>.</summary>
    public string? Ground { get; internal init; }

    /// <summary>Gets words on the form of the pattern, or <c>null</c>.</summary>
    public string? Form { get; internal init; }

    /// <summary>Gets words on the head, or <c>null</c>.</summary>
    public string? Head { get; internal init; }

    /// <summary>Gets how much is white; <c>null</c>: not stated.</summary>
    public WhiteExtent? White { get; internal init; }

    /// <summary>Gets how much such animals differ; <c>null</c>: not stated.</summary>
    public Variation? Varies { get; internal init; }

    /// <summary>Gets a remark, or <c>null</c>.</summary>
    public string? Note { get; internal init; }

    /// <summary>Gets on what grounds it stands; <c>null</c> for a look composed by rule.</summary>
    public Evidence? Evidence { get; internal init; }

    /// <summary>Gets whether the look is recorded; false: it was put together from parts, by rule or by whoever wrote the entry.</summary>
    public bool IsRecorded { get; internal init; }

    /// <summary>Gets the stated looks it was composed from, weakest first; none if the catalogue states the look.</summary>
    public IReadOnlyList<LookEntry> ComposedFrom { get; internal init; } = [];

    /// <summary>Gets the forms that have a part in it and no stated look of their own, so that they are left out of the composed one.</summary>
    public IReadOnlyList<Expression> Unknown { get; internal init; } = [];
}
