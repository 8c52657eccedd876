using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>Reads and writes animals and wants the way the trade writes them. Immutable.</summary>
/// <remarks>The grammar is in docs/how-to/trade-text.md. What <see cref="Write(Genotype)"/> writes, <see cref="Read"/> takes back.</remarks>
public sealed class TradeText
{
    private readonly Lexicon _lexicon;
    private readonly TradeWriter _writer;

    internal TradeText(Lexicon lexicon)
    {
        _lexicon = lexicon;
        _writer = new(lexicon);
    }

    /// <summary>Gets the species.</summary>
    public Species Species => _lexicon.Species;

    /// <summary>A reader and writer that knows a species' alleles and forms by their own names, without a catalogue.</summary>
    /// <exception cref="ArgumentException">Two names are the same when case, spaces and hyphens do not count.</exception>
    public static TradeText For(Species species) => new(Lexicon.Of(species));

    /// <summary>Reads an animal.</summary>
    public TextOutcome<ReadAnimal> Read(string text)
    {
        var parsed = TradeParser.Parse(_lexicon, text, TextToken.Split(text));
        return parsed.IsRead ? ReadAnimal.From(Species, parsed.Value, text) : new(parsed.Problem);
    }

    /// <summary>Reads what is wanted: alternatives joined by <c>or</c>.</summary>
    public TextOutcome<Want> ReadWant(string text) => WantReader.Read(_lexicon, text);

    /// <summary>Writes a genotype in one fixed way.</summary>
    public string Write(Genotype genotype) => Write(GenotypeBelief.Certain(genotype));

    /// <summary>Writes a belief in one fixed way, percentages rounded as the trade rounds them.</summary>
    public string Write(GenotypeBelief belief) => _writer.Join(Words(belief));

    /// <summary>The parts of <see cref="Write(Genotype)"/> in order.</summary>
    public IReadOnlyList<TradeWord> Words(Genotype genotype) => Words(GenotypeBelief.Certain(genotype));

    /// <summary>The parts of <see cref="Write(GenotypeBelief)"/> in order.</summary>
    public IReadOnlyList<TradeWord> Words(GenotypeBelief belief) =>
        belief.Species == Species ? _writer.Words(belief) : throw new ArgumentException($"Not a genotype of {Species.Id}.", nameof(belief));

    /// <summary>Puts parts together as <see cref="Write(GenotypeBelief)"/> does, some perhaps left out.</summary>
    public string Join(IReadOnlyList<TradeWord> words) => _writer.Join(words);

    /// <summary>The names of visible forms in the catalogue's order; the name of the wild type if there are none.</summary>
    public string WriteLook(IEnumerable<Expression> expressions) => _writer.Look(expressions);

    /// <summary>Ways to go on with a text that is being typed, best first, at most 12.</summary>
    /// <param name="text">The text so far.</param>
    /// <param name="caret">How many characters stand before the caret.</param>
    /// <exception cref="ArgumentOutOfRangeException">The caret is outside the text.</exception>
    public IReadOnlyList<Completion> Suggest(string text, int caret)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(caret);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(caret, text.Length);
        return new TradeCompleter(_lexicon).Suggest(text, caret);
    }
}
