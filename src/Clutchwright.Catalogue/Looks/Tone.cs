namespace Clutchwright.Catalogue.Looks;

/// <summary>A colour name of the ISCC-NBS system with the colour at its centre.</summary>
/// <remarks>Equal when the ids are. Source: docs/references.md [KellyJudd1976].</remarks>
public sealed class Tone : IEquatable<Tone>
{
    internal Tone(string id, string name, int number, string srgb)
    {
        Id = id;
        Name = name;
        Number = number;
        Srgb = srgb;
        Lab = CielabColour.FromSrgb(SrgbColour.Parse(srgb));
    }

    /// <summary>Gets the id, the name with hyphens.</summary>
    public string Id { get; }

    /// <summary>Gets the name.</summary>
    public string Name { get; }

    /// <summary>Gets the number of the colour's block, from 1.</summary>
    public int Number { get; }

    /// <summary>Gets the centre as <c>#RRGGBB</c> in sRGB.</summary>
    public string Srgb { get; }

    /// <summary>Gets the centre in L*a*b*.</summary>
    public CielabColour Lab { get; }

    /// <inheritdoc/>
    public bool Equals(Tone? other) => other is not null && string.Equals(Id, other.Id, StringComparison.Ordinal);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Tone);

    /// <inheritdoc/>
    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);

    /// <inheritdoc/>
    public override string ToString() => Name;
}

/// <summary>The tones of an animal at one age.</summary>
/// <param name="Ground">Of the ground.</param>
/// <param name="Pattern">Of the pattern upon it.</param>
/// <param name="Eye">Of the eye.</param>
public sealed record ToneSet(Tone Ground, Tone Pattern, Tone Eye);
