using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Crosses;

/// <summary>Understands what is asked of a parent: a tag of the stock, or else trade text.</summary>
internal static class ParentReader
{
    public static (GenotypeBelief Belief, ParentAnswer Answer)? Read(
        OpenCatalogue catalogue, StockState? stock, string where, string asked, Sex sex, List<AskedWrongly> problems)
    {
        if (stock?.Find(asked) is { } animal)
        {
            if (animal.Animal.Sex is { } known && known != sex)
            {
                problems.Add(new(where, $"{animal.Animal.Tag} is {Word(known)}; the {where} is {Word(sex)}."));
                return null;
            }

            var notes = new List<string>(animal.Problems);
            if (animal.Animal.Sex is null)
            {
                notes.Add($"{animal.Animal.Tag} is not sexed, and was taken as {Word(sex)}.");
            }

            var belief = animal.As(sex);
            return (belief, new(asked, animal.Animal.Tag, sex, catalogue.Wording.Animal(belief), notes) { Name = animal.Animal.Name });
        }

        var text = catalogue.Catalogue.Trade.Read(asked);
        if (!text.IsRead)
        {
            problems.Add(Problem(where, text.Problem));
            return null;
        }

        if (text.Value.Sex is { } told && told != sex)
        {
            problems.Add(new(where, $"\"{asked}\" is {Word(told)}; the {where} is {Word(sex)}."));
            return null;
        }

        var reading = text.Value.ToBelief(sex);
        if (!reading.IsRead)
        {
            problems.Add(Problem(where, reading.Problem));
            return null;
        }

        return (reading.Value, new(
            asked, null, sex, catalogue.Wording.Animal(reading.Value), text.Value.Notes.Select(n => n.Text).ToArray()));
    }

    public static AskedWrongly Problem(string where, TextProblem problem) =>
        new(where, problem.Text, problem.Position, problem.Length, problem.Spellings);

    private static string Word(Sex sex) => sex == Sex.Male ? "male" : "female";
}
