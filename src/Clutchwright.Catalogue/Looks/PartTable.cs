using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.Looks;

/// <summary>The stated looks as parts that others are composed of, with what composing needs worked out once.</summary>
/// <remarks>The numbers are those of <see cref="LookBook"/>'s rule.</remarks>
internal sealed class PartTable
{
    public const int Places = 3;

    private readonly (CielabColour Lab, double Share)[][,] _tones;
    private readonly CielabColour[,] _normal;

    public PartTable(LookBook book)
    {
        Grid = book.Tones;
        Normal = book.Find([]);
        Parts = [.. book.Entries.Where(e => e.Expressions.Count > 0 && book.Find(e.Expressions) == e)];
        Index = [.. Parts.Prepend(Normal).OfType<LookEntry>().Select(TonesOf)];
        var stages = Enum.GetValues<AgeStage>();
        _tones = [.. Parts.Select(_ => new (CielabColour, double)[stages.Length, Places])];
        _normal = new CielabColour[stages.Length, Places];
        Weakest = new int[stages.Length][];
        if (Normal is null)
        {
            return;
        }

        foreach (var stage in stages)
        {
            var start = TonesAt(Normal, stage);
            for (var place = 0; place < Places; place++)
            {
                _normal[(int)stage, place] = start[place].Lab;
                for (var part = 0; part < Parts.Count; part++)
                {
                    var tone = TonesAt(Parts[part], stage)[place];
                    _tones[part][(int)stage, place] = (tone.Lab, LookBook.ShareOf(start[place], tone));
                }
            }

            var order = Enumerable.Range(0, Parts.Count)
                .OrderBy(p => LookBook.Strength(Parts[p].TonesAt(stage), Normal.TonesAt(stage)))
                .ThenByDescending(p => Parts[p].Expressions.Count)
                .ToArray();
            Weakest[(int)stage] = new int[Parts.Count];
            for (var rank = 0; rank < order.Length; rank++)
            {
                Weakest[(int)stage][order[rank]] = rank;
            }
        }
    }

    public ToneGrid Grid { get; }

    /// <summary>Gets the look of the normal animal; without it nothing is composed.</summary>
    public LookEntry? Normal { get; }

    /// <summary>Gets the parts in the catalogue's order.</summary>
    public IReadOnlyList<LookEntry> Parts { get; }

    /// <summary>Gets for Normal and each part in turn the places of its tones in <see cref="Grid"/>, by stage and place.</summary>
    public IReadOnlyList<int[,]> Index { get; }

    /// <summary>Gets for each stage the rank of each part: of two, the one with the lower rank is mixed in first.</summary>
    public int[][] Weakest { get; }

    public CielabColour NormalAt(AgeStage stage, int place) => _normal[(int)stage, place];

    public (CielabColour Lab, double Share) ToneAt(int part, AgeStage stage, int place) => _tones[part][(int)stage, place];

    /// <summary>The tone that parts come to, as its place in <see cref="Grid"/>.</summary>
    /// <param name="parts">Two or more; their order does not matter.</param>
    /// <param name="stage">The stage.</param>
    /// <param name="place">The place, from 0.</param>
    public int Mix(ReadOnlySpan<int> parts, AgeStage stage, int place)
    {
        Span<int> ordered = stackalloc int[parts.Length];
        parts.CopyTo(ordered);
        var rank = Weakest[(int)stage];
        for (var i = 1; i < ordered.Length; i++)
        {
            for (var j = i; j > 0 && rank[ordered[j]] < rank[ordered[j - 1]]; j--)
            {
                (ordered[j], ordered[j - 1]) = (ordered[j - 1], ordered[j]);
            }
        }

        var colour = _normal[(int)stage, place];
        foreach (var part in ordered)
        {
            var (lab, share) = _tones[part][(int)stage, place];
            colour = colour.Towards(lab, share);
        }

        return Grid.NearestIndex(colour);
    }

    private static Tone[] TonesAt(LookEntry entry, AgeStage stage)
    {
        var tones = entry.TonesAt(stage);
        return [tones.Ground, tones.Pattern, tones.Eye];
    }

    private int[,] TonesOf(LookEntry entry)
    {
        var result = new int[Enum.GetValues<AgeStage>().Length, Places];
        foreach (var stage in Enum.GetValues<AgeStage>())
        {
            var tones = TonesAt(entry, stage);
            for (var place = 0; place < Places; place++)
            {
                result[(int)stage, place] = Grid.IndexOf(tones[place]);
            }
        }

        return result;
    }
}
