using CsCheck;

namespace Clutchwright.Testing;

/// <summary>Random choices for one generated value. It counts what was chosen, so that a failing example can be made smaller.</summary>
public sealed class Draw
{
    private readonly PCG _random;

    internal Draw(PCG random) => _random = random;

    /// <summary>Gets how much was chosen; a failing example with less is easier to read.</summary>
    public ulong Size { get; private set; }

    /// <summary>Makes a generator from a function that draws.</summary>
    public static Gen<T> Gen<T>(Func<Draw, T> make) => new Generator<T>(make);

    /// <summary>A whole number from 0 to <paramref name="limit"/> less 1.</summary>
    public int Below(int limit) => (int)_random.Next((uint)limit);

    /// <summary>True <paramref name="times"/> in <paramref name="of"/> times.</summary>
    public bool Chance(int times, int of) => Below(of) < times;

    /// <summary>One of several.</summary>
    public T Of<T>(params IReadOnlyList<T> items) => items[Below(items.Count)];

    /// <summary>An index, each as often as its weight says.</summary>
    public int Weighted(params IReadOnlyList<int> weights)
    {
        var left = Below(weights.Sum());
        for (var i = 0; ; i++)
        {
            left -= weights[i];
            if (left < 0)
            {
                return i;
            }
        }
    }

    /// <summary>Counts something towards the size of the example.</summary>
    public void Count(int size = 1) => Size += (ulong)size;

    private sealed class Generator<T>(Func<Draw, T> make) : Gen<T>
    {
        public override T Generate(PCG pcg, Size? min, out Size size)
        {
            var draw = new Draw(pcg);
            var value = make(draw);
            size = new Size(draw.Size);
            return value;
        }
    }
}
