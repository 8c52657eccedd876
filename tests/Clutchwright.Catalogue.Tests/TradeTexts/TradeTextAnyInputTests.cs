using CsCheck;
using Xunit;

namespace Clutchwright.Catalogue.Tests.TradeTexts;

public sealed class TradeTextAnyInputTests
{
    private static readonly string[] Pieces =
    [
        "1.0", "0.1", "0.0.1", "66%", "33 %", "100%", "0%", "66", "het", "poss", "ph", "dh", "double", "triple", "super", "visual", "male",
        "female", "maker", "male maker", "female maker", "and", "for", "or", "/", "+", "(", ")", ",", "·", "&", "|", "X", "Y", "Clown", "Cryptic",
        "Albino", "Candy", "Pied", "Pastel", "Black Pastel", "Spider", "Banana", "Left", "Right", "Lesser", "Mojave", "Mystic", "BEL",
        "Mystic Potion", "Bumblebee", "Normal", "zzz", "-", "'", "é", "♂",
    ];

    private static readonly Gen<string> Texts =
        Gen.Int[0, Pieces.Length - 1].Array[0, 9].Select(p => string.Join(' ', p.Select(i => Pieces[i])));

    [Fact]
    public void Read_AnyWords_GivesAnAnimalOrAPlaceInTheText() =>
        Texts.Sample(
            text =>
            {
                var outcome = SampleSpecies.Trade.Read(text);
                return outcome.IsRead
                    ? outcome.Value.Notes.All(n => IsWithin(n.Position, n.Length, text))
                    : IsWithin(outcome.Problem.Position, outcome.Problem.Length, text);
            },
            iter: 50_000);

    [Fact]
    public void Read_AnyAnimal_IsReadAlikeFromItsCanonicalText() =>
        Texts.Sample(
            text =>
            {
                if (SampleSpecies.Trade.Read(text) is not { IsRead: true, Value: var animal })
                {
                    return true;
                }

                var sex = animal.Sex ?? Genetics.Loci.Sex.Female;
                var belief = animal.ToBelief(sex).Value!;
                var canonical = SampleSpecies.Trade.Write(belief);
                var again = SampleSpecies.Trade.Read(canonical).Value!.ToBelief(sex).Value!;
                return SampleSpecies.Species.Groups.All(g =>
                    belief[g].Count == again[g].Count
                    && belief[g].Zip(again[g]).All(w => w.First.Value == w.Second.Value && Math.Abs(w.First.Weight.Value - w.Second.Weight.Value) < 0.01));
            },
            iter: 20_000);

    [Fact]
    public void ReadWant_AnyWords_GivesAWantOrAPlaceInTheText() =>
        Texts.Sample(
            text =>
            {
                var outcome = SampleSpecies.Trade.ReadWant(text);
                return outcome.IsRead
                    ? outcome.Value.Alternatives.Count > 0
                    : IsWithin(outcome.Problem.Position, outcome.Problem.Length, text);
            },
            iter: 20_000);

    [Fact]
    public void Suggest_AnyTextAndCaret_ReplacesAStretchOfTheText() =>
        Gen.Select(Texts, Gen.Int[0, 60]).Sample(
            (text, at) =>
            {
                var caret = Math.Min(at, text.Length);
                return SampleSpecies.Trade.Suggest(text, caret).All(c => IsWithin(c.Start, c.Length, text) && c.Start <= caret);
            },
            iter: 5_000);

    private static bool IsWithin(int position, int length, string text) =>
        position >= 0 && length >= 0 && position + length <= text.Length;
}
