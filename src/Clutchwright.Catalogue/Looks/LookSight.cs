using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.Looks;

/// <summary>How a wish judges tones, words and white.</summary>
internal sealed class LookSight
{
    // Stands for a text that is not settled yet.
    private const string AnyWord = "\u0000";

    private static readonly AgeStage[] Stages = Enum.GetValues<AgeStage>();
    private static readonly int[] GroundAndPattern = [(int)TonePlace.Ground - 1, (int)TonePlace.Pattern - 1];

    private readonly LookWish _wish;
    private readonly PartTable _table;
    private readonly double[][] _differences;
    private readonly double[][] _ofCubes;

    public LookSight(LookWish wish, PartTable table)
    {
        (_wish, _table) = (wish, table);
        var tones = table.Grid.Tones;
        _differences = [.. wish.Tones.Select(w => tones.Select(t => w.Colours.Min(c => c.DifferenceFrom(t.Lab))).ToArray())];

        // What no tone within the limit can be nearest to is out of reach.
        _ofCubes = [.. wish.Tones.Select((w, i) => table.Grid.Cubes
            .Select(cube => cube.Min(t => _differences[i][t] <= w.Most ? _differences[i][t] : double.PositiveInfinity))
            .ToArray())];
    }

    /// <summary>The distance of a look from the tones wished, its course taken into account; <c>null</c>: it is not such a look.</summary>
    /// <param name="toneAt">The look's tone at a stage and place, as its place in the grid.</param>
    public double? Distance(Func<AgeStage, int, int> toneAt)
    {
        var main = At(toneAt, _wish.MainStage);
        if (main is null)
        {
            return null;
        }

        return _wish.Course switch
        {
            LookCourse.AtOneAge => main,
            LookCourse.Comes => At(toneAt, AgeStage.Hatchling) is null ? main : null,
            LookCourse.Fades => At(toneAt, AgeStage.Adult) is null ? main : null,
            LookCourse.Holds when _wish.Tones.Count == 0 => Change(toneAt),
            LookCourse.Holds => Stages.Select(s => At(toneAt, s)).Aggregate(main, (worst, d) => worst is null || d is null ? null : Math.Max(worst.Value, d.Value)),
        };
    }

    /// <summary>No look within the boxes comes nearer than this at the main stage.</summary>
    /// <param name="boxAt">The colours that can be reached at a place.</param>
    public double Least(Func<int, CielabBox> boxAt)
    {
        var least = 0.0;
        for (var i = 0; i < _wish.Tones.Count; i++)
        {
            var nearest = double.PositiveInfinity;
            foreach (var place in _wish.Tones[i].Places)
            {
                nearest = Math.Min(nearest, _table.Grid.Least(boxAt((int)place - 1), _ofCubes[i]));
            }

            least = Math.Max(least, nearest);
        }

        return least;
    }

    /// <summary>Whether the words of a look are those wished.</summary>
    public bool HasWords(string? ground, string? form, string? head) =>
        _wish.Words.All(wish => wish.Words.All(word => wish.Place switch
        {
            WordPlace.Ground => Has(ground, word),
            WordPlace.Form => Has(form, word),
            WordPlace.Head => Has(head, word),
            _ => Has(ground, word) || Has(form, word) || Has(head, word),
        }));

    /// <summary>Whether weaker parts can still bring the words wished, where those of a text that is there stand.</summary>
    public bool CanHaveWords(string? ground, string? form, string? head) =>
        _wish.Words.Count == 0 || HasWords(ground ?? AnyWord, form ?? AnyWord, head ?? AnyWord);

    /// <summary>Whether the white of a look is as wished.</summary>
    public bool HasWhite(WhiteExtent? white) => _wish.White is not var (least, most) || (white is { } known && known >= least && known <= most);

    private static bool Has(string? text, string word) =>
        text is not null && (ReferenceEquals(text, AnyWord) || text.Contains(word, StringComparison.OrdinalIgnoreCase));

    // The greatest distance over the wishes; null: some tone is farther than it may be.
    private double? At(Func<AgeStage, int, int> toneAt, AgeStage stage)
    {
        var worst = 0.0;
        for (var i = 0; i < _wish.Tones.Count; i++)
        {
            var nearest = double.PositiveInfinity;
            foreach (var place in _wish.Tones[i].Places)
            {
                nearest = Math.Min(nearest, _differences[i][toneAt(stage, (int)place - 1)]);
            }

            if (nearest > _wish.Tones[i].Most)
            {
                return null;
            }

            worst = Math.Max(worst, nearest);
        }

        return worst;
    }

    // How far ground and pattern go from where they began.
    private double? Change(Func<AgeStage, int, int> toneAt)
    {
        var tones = _table.Grid.Tones;
        var change = (from place in GroundAndPattern
                      let start = tones[toneAt(AgeStage.Hatchling, place)].Lab
                      from stage in Stages
                      select start.DifferenceFrom(tones[toneAt(stage, place)].Lab)).Max();
        return change <= _wish.MostChange ? change : null;
    }
}
