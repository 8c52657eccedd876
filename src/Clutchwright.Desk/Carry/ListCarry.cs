using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Carry;

/// <summary>What may the animals of the stock, or of a pedigree file, carry?</summary>
public sealed class ListCarry
{
    private readonly OpenCatalogue _catalogue;
    private readonly Func<StockBeliefs> _stock;

    /// <param name="catalogue">The species.</param>
    /// <param name="stock">Opens the stock; not asked where there is a file.</param>
    internal ListCarry(OpenCatalogue catalogue, Func<StockBeliefs> stock)
    {
        _catalogue = catalogue;
        _stock = stock;
    }

    /// <summary>Tells what the animals may carry.</summary>
    /// <returns>The answer; or everything that is wrong with the file, the settings or the ids asked for.</returns>
    public async Task<Answer<CarryAnswer>> RunAsync(CarryQuestion question, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var settings = CarrySettings.Read(_catalogue, question, problems);
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        StockState state;
        if (question.File is { } file)
        {
            var read = await PedigreeFile.ReadAsync(_catalogue, file, cancel);
            if (read.Value is not { } pedigree)
            {
                return read.Problems.ToArray();
            }

            state = new(default, StockRecord.Of(_catalogue, pedigree), settings, null, cancel);
        }
        else
        {
            state = await _stock().ReadAsync(settings, cancel);
        }

        var asked = new List<StockAnimal>();
        foreach (var id in question.Animals.Distinct(StringComparer.OrdinalIgnoreCase))
        {
            if (state.Find(id) is { } found)
            {
                asked.Add(found);
            }
            else
            {
                problems.Add(new(
                    "animal",
                    $"{(question.File is { } named ? named.Name : "The stock")} has no '{id}'.",
                    DidYouMean: NearWords.Of(id, state.Animals.Select(a => a.Animal.Tag))));
            }
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var wording = new CarryWording(state);
        return new CarryAnswer(
            [.. (question.Animals.Count == 0 ? state.Animals : asked).Select(wording.Animal)],
            state.Animals.Count,
            state.Beliefs.LogLikelihood,
            [.. state.Beliefs.Clashes.Select(c => new CarryContradiction(
                [.. c.Animals.Select(k => state.Record[k].Animal.Tag)],
                [.. c.Records.Select(r => ClashWords.Record(state.Record, r)).Distinct(StringComparer.Ordinal)],
                []))],
            state.Beliefs.IsExact,
            state.Beliefs.StandardError,
            [.. state.Record.Entries.SelectMany(e => e.Read.Problems.Select(p => $"{e.Animal.Tag}: {p}"))]);
    }
}
