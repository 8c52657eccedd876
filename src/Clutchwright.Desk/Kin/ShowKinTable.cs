using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Kin;

/// <summary>How inbred would the young of each pair be that the room allows?</summary>
public sealed class ShowKinTable
{
    private readonly AnimalSource _source;

    internal ShowKinTable(AnimalSource source) => _source = source;

    /// <summary>Answers for every male with every female in the room.</summary>
    public async Task<KinTableAnswer> RunAsync(CancellationToken cancel)
    {
        var stock = new KinStock((await _source.ReadAsync(null, cancel)).Value!.Animals);
        int[] males = [.. stock.Here.Where(i => stock[i].Sex == Sex.Male)];
        int[] females = [.. stock.Here.Where(i => stock[i].Sex == Sex.Female)];
        var table = stock.Reckoner.Table([.. males.Select(stock.PositionOf)], [.. females.Select(stock.PositionOf)]);
        return new(
            [.. males.Select(stock.Line)],
            [.. females.Select(stock.Line)],
            [.. males.Select((_, row) => (IReadOnlyList<double>)[.. females.Select((_, column) => table[row, column])])],
            stock.Here.Count(i => stock[i].Sex is null));
    }

    /// <summary>What if these two were paired?</summary>
    /// <param name="first">A tag.</param>
    /// <param name="second">A tag.</param>
    /// <param name="mostRoutes">The most routes of descent to list.</param>
    /// <param name="cancel">Stops the reading.</param>
    public async Task<Answer<KinPair>> PairAsync(string first, string second, int mostRoutes, CancellationToken cancel)
    {
        var stock = new KinStock((await _source.ReadAsync(null, cancel)).Value!.Animals);
        var problems = new List<AskedWrongly>();
        var one = AskKin.Find(stock, null, "first", first, problems);
        var other = AskKin.Find(stock, null, "second", second, problems);
        return problems.Count > 0 ? problems.ToArray() : AskKin.Pair(stock, one!.Value, other!.Value, mostRoutes);
    }
}
