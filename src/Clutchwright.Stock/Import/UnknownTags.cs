using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Import;

/// <summary>Ids that no animal has, each with the one that was probably meant. A file names the same again and again.</summary>
internal sealed class UnknownTags(IReadOnlyList<string> tags)
{
    private readonly Dictionary<string, string?> _nearest = new(StringComparer.Ordinal);

    public AnimalProblem Of(string tag)
    {
        if (!_nearest.TryGetValue(tag, out var nearest))
        {
            _nearest[tag] = nearest = Tags.Nearest(tag, tags);
        }

        return new AnimalProblem.NoSuchTag(tag, nearest);
    }
}
