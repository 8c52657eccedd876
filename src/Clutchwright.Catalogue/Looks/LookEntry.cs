using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;

namespace Clutchwright.Catalogue.Looks;

/// <summary>How much of the skin is without pigment.</summary>
public enum WhiteExtent
{
    None = 0,
    Traces = 1,
    Patches = 2,
    Most = 3,
    All = 4,
}

/// <summary>How much animals of one look differ.</summary>
public enum Variation
{
    Little = 1,
    Some = 2,
    Much = 3,
}

/// <summary>A look as the catalogue states it.</summary>
public sealed class LookEntry
{
    private readonly ToneSet[] _tones;

    internal LookEntry(string of, IReadOnlyList<Expression> expressions, ToneSet[] tones, Evidence evidence)
    {
        Of = of;
        Expressions = expressions;
        _tones = tones;
        Evidence = evidence;
    }

    /// <summary>Gets the makings as trade text.</summary>
    public string Of { get; }

    /// <summary>Gets the visible forms, one a locus, in the catalogue's order; none: the normal animal.</summary>
    public IReadOnlyList<Expression> Expressions { get; }

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

    /// <summary>Gets whether the look is recorded; false: whoever wrote the entry put it together from its parts.</summary>
    public bool IsRecorded { get; internal init; } = true;

    /// <summary>Gets a remark, or <c>null</c>.</summary>
    public string? Note { get; internal init; }

    /// <summary>Gets on what grounds it stands.</summary>
    public Evidence Evidence { get; }

    /// <summary>The tones at an age; a stage that the entry leaves out is as the one before.</summary>
    public ToneSet TonesAt(AgeStage stage) => _tones[(int)stage];
}
