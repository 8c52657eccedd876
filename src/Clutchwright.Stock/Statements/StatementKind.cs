namespace Clutchwright.Stock.Statements;

/// <summary>On what a statement rests.</summary>
public enum StatementKind
{
    /// <summary>Visible on the animal: the text says what.</summary>
    Seen = 1,

    /// <summary>Looked at, and it shows nothing: there is no text.</summary>
    LookedAtNormal = 2,

    /// <summary>What a seller or breeder said, <c>66% het Clown</c>.</summary>
    Told = 3,

    /// <summary>A laboratory looked for what the text names, with the error rates of <see cref="DnaTest"/>.</summary>
    DnaTest = 4,

    /// <summary>Its offspring showed that it carries what the text names.</summary>
    ProvenByBreeding = 5,

    /// <summary>It does not carry what the text names.</summary>
    RuledOut = 6,
}
