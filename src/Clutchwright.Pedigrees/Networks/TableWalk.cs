using System.Numerics;
using System.Runtime.InteropServices;

namespace Clutchwright.Pedigrees.Networks;

/// <summary>Walks a large table in blocks, together with tables over some of its variables.</summary>
/// <remarks>A table's variables are listed slowest first. Within a block of the large table the place in a small one is read from a
/// list made once; from block to block it is counted on.</remarks>
internal readonly struct TableWalk
{
    private const int BlockLimit = 256;
    private readonly int[] _outerCounts;

    private TableWalk(int[] scope, int[] counts)
    {
        var block = 1;
        var inner = scope.Length;
        while (inner > 0 && (inner == scope.Length || (long)block * counts[inner - 1] <= BlockLimit))
        {
            block *= counts[--inner];
        }

        Scope = scope;
        Counts = counts;
        Inner = inner;
        Block = block;
        _outerCounts = counts[..inner];
    }

    /// <summary>Gets the variables of the large table.</summary>
    public int[] Scope { get; }

    /// <summary>Gets their numbers of states.</summary>
    public int[] Counts { get; }

    /// <summary>Gets how many variables count blocks; the others count inside a block.</summary>
    public int Inner { get; }

    /// <summary>Gets the entries of a block.</summary>
    public int Block { get; }

    /// <summary>Prepares a walk over a table.</summary>
    public static TableWalk Over(int[] scope, int[] counts) => new(scope, counts);

    /// <summary>Multiplies small tables together into the large one, which is overwritten.</summary>
    public void Product(double[] target, IReadOnlyList<(int[] Scope, double[] Values)> sources)
    {
        var n = sources.Count;
        if (n == 0)
        {
            Array.Fill(target, 1.0);
            return;
        }

        var lanes = new Lane[n];
        for (var s = 0; s < n; s++)
        {
            lanes[s] = Lane.Of(this, sources[s].Scope);
        }

        Span<int> digits = stackalloc int[Inner];
        digits.Clear();
        for (var start = 0; start < target.Length; start += Block)
        {
            var block = target.AsSpan(start, Block);
            lanes[0].Assign(block, sources[0].Values);
            for (var s = 1; s < n; s++)
            {
                lanes[s].Multiply(block, sources[s].Values);
            }

            Advance(digits, lanes);
        }
    }

    /// <summary>Multiplies one small table into the large one.</summary>
    public void Multiply(double[] target, int[] scope, double[] source)
    {
        Lane[] lanes = [Lane.Of(this, scope)];
        Span<int> digits = stackalloc int[Inner];
        digits.Clear();
        for (var start = 0; start < target.Length; start += Block)
        {
            lanes[0].Multiply(target.AsSpan(start, Block), source);
            Advance(digits, lanes);
        }
    }

    /// <summary>Sums the large table into small ones.</summary>
    public void Sum(double[] table, IReadOnlyList<(int[] Scope, double[] Values)> targets)
    {
        var lanes = new Lane[targets.Count];
        for (var s = 0; s < lanes.Length; s++)
        {
            lanes[s] = Lane.Of(this, targets[s].Scope);
            Array.Clear(targets[s].Values);
        }

        Span<int> digits = stackalloc int[Inner];
        digits.Clear();
        for (var start = 0; start < table.Length; start += Block)
        {
            var block = table.AsSpan(start, Block);
            for (var s = 0; s < lanes.Length; s++)
            {
                lanes[s].AddTo(targets[s].Values, block);
            }

            Advance(digits, lanes);
        }
    }

    private void Advance(Span<int> digits, Lane[] lanes)
    {
        for (var d = Inner - 1; d >= 0; d--)
        {
            if (++digits[d] < _outerCounts[d])
            {
                for (var s = 0; s < lanes.Length; s++)
                {
                    lanes[s].Base += lanes[s].Strides[d];
                }

                return;
            }

            digits[d] = 0;
            for (var s = 0; s < lanes.Length; s++)
            {
                lanes[s].Base -= lanes[s].Strides[d] * (_outerCounts[d] - 1);
            }
        }
    }

    /// <summary>A small table's place in the walk.</summary>
    private struct Lane
    {
        public int[] Strides;
        public int Base;
        private int[] _offsets;
        private LaneKind _kind;

        private enum LaneKind
        {
            Constant,
            Run,
            Scattered,
        }

        public static Lane Of(in TableWalk walk, int[] scope)
        {
            var strides = new int[walk.Scope.Length];
            var stride = 1;
            var at = walk.Scope.Length - 1;
            for (var i = scope.Length - 1; i >= 0; i--)
            {
                while (walk.Scope[at] != scope[i])
                {
                    at--;
                }

                strides[at] = stride;
                stride *= walk.Counts[at];
            }

            var offsets = new int[walk.Block];
            var filled = 1;
            for (var d = walk.Scope.Length - 1; d >= walk.Inner; d--)
            {
                for (var x = 1; x < walk.Counts[d]; x++)
                {
                    for (var i = 0; i < filled; i++)
                    {
                        offsets[(x * filled) + i] = offsets[i] + (x * strides[d]);
                    }
                }

                filled *= walk.Counts[d];
            }

            var lane = new Lane
            {
                Strides = strides,
                _offsets = offsets,
                _kind = offsets[^1] == offsets.Length - 1 ? LaneKind.Run : offsets[^1] == 0 ? LaneKind.Constant : LaneKind.Scattered,
            };
            return lane;
        }

        public readonly void Assign(Span<double> block, double[] source)
        {
            switch (_kind)
            {
                case LaneKind.Constant:
                    block.Fill(source[Base]);
                    break;
                case LaneKind.Run:
                    source.AsSpan(Base, block.Length).CopyTo(block);
                    break;
                default:
                    var offsets = _offsets.AsSpan(0, block.Length);
                    for (var i = 0; i < block.Length; i++)
                    {
                        block[i] = source[Base + offsets[i]];
                    }

                    break;
            }
        }

        public readonly void Multiply(Span<double> block, double[] source)
        {
            switch (_kind)
            {
                case LaneKind.Constant:
                    Scale(block, source[Base]);
                    break;
                case LaneKind.Run:
                    MultiplyRun(block, source.AsSpan(Base, block.Length));
                    break;
                default:
                    var offsets = _offsets.AsSpan(0, block.Length);
                    for (var i = 0; i < block.Length; i++)
                    {
                        block[i] *= source[Base + offsets[i]];
                    }

                    break;
            }
        }

        public readonly void AddTo(double[] target, Span<double> block)
        {
            switch (_kind)
            {
                case LaneKind.Constant:
                    target[Base] += Total(block);
                    break;
                case LaneKind.Run:
                    AddRun(target.AsSpan(Base, block.Length), block);
                    break;
                default:
                    var offsets = _offsets.AsSpan(0, block.Length);
                    for (var i = 0; i < block.Length; i++)
                    {
                        target[Base + offsets[i]] += block[i];
                    }

                    break;
            }
        }

        private static void Scale(Span<double> block, double factor)
        {
            var vectors = MemoryMarshal.Cast<double, Vector<double>>(block);
            for (var i = 0; i < vectors.Length; i++)
            {
                vectors[i] *= factor;
            }

            for (var i = vectors.Length * Vector<double>.Count; i < block.Length; i++)
            {
                block[i] *= factor;
            }
        }

        private static void MultiplyRun(Span<double> block, ReadOnlySpan<double> source)
        {
            var vectors = MemoryMarshal.Cast<double, Vector<double>>(block);
            var others = MemoryMarshal.Cast<double, Vector<double>>(source);
            for (var i = 0; i < vectors.Length; i++)
            {
                vectors[i] *= others[i];
            }

            for (var i = vectors.Length * Vector<double>.Count; i < block.Length; i++)
            {
                block[i] *= source[i];
            }
        }

        private static void AddRun(Span<double> target, ReadOnlySpan<double> block)
        {
            var vectors = MemoryMarshal.Cast<double, Vector<double>>(target);
            var others = MemoryMarshal.Cast<double, Vector<double>>(block);
            for (var i = 0; i < vectors.Length; i++)
            {
                vectors[i] += others[i];
            }

            for (var i = vectors.Length * Vector<double>.Count; i < target.Length; i++)
            {
                target[i] += block[i];
            }
        }

        private static double Total(ReadOnlySpan<double> block)
        {
            var total = 0.0;
            foreach (var value in block)
            {
                total += value;
            }

            return total;
        }
    }
}
