using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Pedigrees;

namespace Clutchwright.Desk.Kin;

/// <summary>Who is related to this animal, and how inbred is it?</summary>
public sealed class ShowRelatives
{
    private readonly AnimalSource _source;

    internal ShowRelatives(AnimalSource source) => _source = source;

    /// <summary>Answers for an animal of the stock.</summary>
    /// <param name="tag">Its tag.</param>
    /// <param name="mostRoutes">The most routes of descent to list.</param>
    /// <param name="cancel">Stops the reading.</param>
    public async Task<Answer<RelativesAnswer>> RunAsync(string tag, int mostRoutes, CancellationToken cancel)
    {
        var read = await _source.ReadAsync(null, cancel);
        var stock = new KinStock(read.Value!.Animals);
        var problems = new List<AskedWrongly>();
        return AskKin.Find(stock, null, "animal", tag, problems) is { } animal ? Of(stock, animal, mostRoutes) : problems.ToArray();
    }

    internal static RelativesAnswer Of(KinStock stock, int animal, int mostRoutes)
    {
        var position = stock.PositionOf(animal);
        int[] all = [.. Enumerable.Range(0, stock.Count).Select(stock.PositionOf)];
        var row = stock.Reckoner.Table([position], all);
        var relatives = Enumerable.Range(0, stock.Count)
            .Where(other => other != animal && row[0, other] > 0.0)
            .OrderByDescending(other => row[0, other])
            .Select(other => new KinRelative(stock.Animal(other), row[0, other], stock.Relation(animal, other)));
        var (sire, dam) = (stock.Pedigree.SireOf(position), stock.Pedigree.DamOf(position));
        return new(
            stock.Line(animal),
            sire == Pedigree.NotKnown || dam == Pedigree.NotKnown ? null : stock.Routes(sire, dam, mostRoutes),
            [.. relatives]);
    }
}
