using Clutchwright.Stock.Export;

namespace Clutchwright.Stock.Books;

/// <summary>Whether animals and clutches can be written so that each comes after those it names.</summary>
internal static class BookOrder
{
    /// <returns>An animal that names itself over others; null: none does.</returns>
    public static Guid? Loop(BookRecords records)
    {
        var names = new Dictionary<Guid, List<Guid>>();
        foreach (var animal in records.Animals)
        {
            names[animal.Id] = [.. new[] { animal.Sire, animal.Dam, animal.Clutch }.OfType<Guid>(), .. animal.PossibleSires];
        }

        foreach (var clutch in records.Clutches)
        {
            names[clutch.Id] = [clutch.Dam];
        }

        // What names nobody that is left goes, again and again; what stays is in a loop or names one that is.
        var open = names.ToDictionary(n => n.Key, n => n.Value.Count);
        var namedBy = names.SelectMany(n => n.Value, (n, named) => (n.Key, named)).ToLookup(n => n.named, n => n.Key);
        var free = new Stack<Guid>(open.Where(o => o.Value == 0).Select(o => o.Key));
        while (free.TryPop(out var one))
        {
            open.Remove(one);
            foreach (var other in namedBy[one])
            {
                if (--open[other] == 0)
                {
                    free.Push(other);
                }
            }
        }

        return records.Animals.Select(a => (Guid?)a.Id).FirstOrDefault(id => open.ContainsKey(id!.Value));
    }
}
