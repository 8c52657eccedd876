namespace Clutchwright.Catalogue.Looks;

/// <summary>Finds the nearest tone to a colour by straight distance: L*a*b* cut into cubes, each with the tones that can be nearest in it.</summary>
/// <remarks>
/// Colours mixed from tones lie within the box of all tones, which the cubes fill. The answer is the same as that of looking at every
/// tone, the first listed of equally near ones. Cost: one look at each tone for each cube when made, about 5 tones a question.
/// </remarks>
internal sealed class ToneGrid
{
    private const double Edge = 8.0;

    private readonly (double L, double A, double B) _origin;
    private readonly (int L, int A, int B) _size;
    private readonly Lazy<int[][]> _cubes;
    private readonly Dictionary<Tone, int> _places;

    public ToneGrid(IEnumerable<Tone> tones)
    {
        Tones = [.. tones.Distinct()];
        _places = Tones.Select((t, i) => (t, i)).ToDictionary(t => t.t, t => t.i);
        if (Tones.Count > 0)
        {
            _origin = (Tones.Min(t => t.Lab.L), Tones.Min(t => t.Lab.A), Tones.Min(t => t.Lab.B));
            _size = (
                Steps(Tones.Max(t => t.Lab.L), _origin.L), Steps(Tones.Max(t => t.Lab.A), _origin.A), Steps(Tones.Max(t => t.Lab.B), _origin.B));
        }

        _cubes = new(() => [.. Enumerable.Range(0, _size.L * _size.A * _size.B).Select(Candidates)]);
    }

    /// <summary>Gets the tones, in order.</summary>
    public IReadOnlyList<Tone> Tones { get; }

    /// <summary>Gets for each cube the places in <see cref="Tones"/> of those that can be nearest in it.</summary>
    public IReadOnlyList<int[]> Cubes => _cubes.Value;

    /// <summary>The place of a tone in <see cref="Tones"/>.</summary>
    public int IndexOf(Tone tone) => _places[tone];

    /// <summary>The nearest tone.</summary>
    public Tone Nearest(CielabColour colour) => Tones[NearestIndex(colour)];

    /// <summary>The place in <see cref="Tones"/> of the nearest.</summary>
    public int NearestIndex(CielabColour colour)
    {
        var (best, least) = (-1, double.PositiveInfinity);
        foreach (var index in _cubes.Value[CubeAt(At(colour.L, _origin.L, _size.L), At(colour.A, _origin.A, _size.A), At(colour.B, _origin.B, _size.B))])
        {
            var tone = Tones[index].Lab;
            var distance = ((tone.L - colour.L) * (tone.L - colour.L))
                + ((tone.A - colour.A) * (tone.A - colour.A))
                + ((tone.B - colour.B) * (tone.B - colour.B));
            if (distance < least)
            {
                (best, least) = (index, distance);
            }
        }

        return best;
    }

    /// <summary>The least of a value of cubes over those that a box meets.</summary>
    public double Least(CielabBox box, double[] ofCubes)
    {
        var (l1, l2) = (At(box.Least.L, _origin.L, _size.L), At(box.Most.L, _origin.L, _size.L));
        var (a1, a2) = (At(box.Least.A, _origin.A, _size.A), At(box.Most.A, _origin.A, _size.A));
        var (b1, b2) = (At(box.Least.B, _origin.B, _size.B), At(box.Most.B, _origin.B, _size.B));
        var least = double.PositiveInfinity;
        for (var l = l1; l <= l2; l++)
        {
            for (var a = a1; a <= a2; a++)
            {
                for (var b = b1; b <= b2; b++)
                {
                    least = Math.Min(least, ofCubes[CubeAt(l, a, b)]);
                }
            }
        }

        return least;
    }

    // What is nearest anywhere in the cube is no farther from it than the farthest corner is from the tone that is best for that corner.
    private int[] Candidates(int cube)
    {
        var (l, a, b) = (cube / (_size.A * _size.B), cube / _size.B % _size.A, cube % _size.B);

        // A little wider, so that rounding at a face does not matter.
        var (low, high) = (
            new CielabColour(_origin.L + (l * Edge) - 0.001, _origin.A + (a * Edge) - 0.001, _origin.B + (b * Edge) - 0.001),
            new CielabColour(_origin.L + ((l + 1) * Edge) + 0.001, _origin.A + ((a + 1) * Edge) + 0.001, _origin.B + ((b + 1) * Edge) + 0.001));
        var reach = Tones.Min(t => Far(t.Lab, low, high));
        return [.. Enumerable.Range(0, Tones.Count).Where(i => Near(Tones[i].Lab, low, high) <= reach)];
    }

    private static double Far(CielabColour tone, CielabColour low, CielabColour high) => Math.Sqrt(
        Square(Math.Max(Math.Abs(tone.L - low.L), Math.Abs(tone.L - high.L)))
        + Square(Math.Max(Math.Abs(tone.A - low.A), Math.Abs(tone.A - high.A)))
        + Square(Math.Max(Math.Abs(tone.B - low.B), Math.Abs(tone.B - high.B))));

    private static double Near(CielabColour tone, CielabColour low, CielabColour high) => Math.Sqrt(
        Square(tone.L - Math.Clamp(tone.L, low.L, high.L))
        + Square(tone.A - Math.Clamp(tone.A, low.A, high.A))
        + Square(tone.B - Math.Clamp(tone.B, low.B, high.B)));

    private static double Square(double value) => value * value;

    private static int Steps(double most, double least) => (int)Math.Floor((most - least) / Edge) + 1;

    private static int At(double value, double origin, int size) => Math.Clamp((int)Math.Floor((value - origin) / Edge), 0, size - 1);

    private int CubeAt(int l, int a, int b) => (((l * _size.A) + a) * _size.B) + b;
}

/// <summary>All colours between two corners.</summary>
internal readonly record struct CielabBox(CielabColour Least, CielabColour Most)
{
    public static CielabBox Of(CielabColour colour) => new(colour, colour);

    public CielabBox With(CielabColour colour) => new(
        new(Math.Min(Least.L, colour.L), Math.Min(Least.A, colour.A), Math.Min(Least.B, colour.B)),
        new(Math.Max(Most.L, colour.L), Math.Max(Most.A, colour.A), Math.Max(Most.B, colour.B)));

    /// <summary>Where the colours of the box come to when each goes a share of the way to another.</summary>
    public CielabBox Towards(CielabColour colour, double share) => new(Least.Towards(colour, share), Most.Towards(colour, share));
}
