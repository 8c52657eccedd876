using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Clutchwright.Pedigrees.Networks;

/// <summary>A small table's places on the walk over a large one.</summary>
/// <remarks>The last variables of both tables mostly agree, so that a block of the large table is made of stretches that lie together in the small one.</remarks>
internal sealed class Lane
{
    // Where each stretch of a block begins; null where the block is one stretch.
    private readonly int[]? _offsets;
    private readonly int _stretch;
    private readonly int _reach;

    /// <summary>Prepares the places.</summary>
    /// <param name="walk">The walk over the large table.</param>
    /// <param name="scope">The variables of the small one, in the same order.</param>
    public Lane(TableWalk walk, int[] scope)
    {
        Strides = new int[walk.Scope.Length];
        var stride = 1;
        var at = walk.Scope.Length - 1;
        for (var i = scope.Length - 1; i >= 0; i--)
        {
            while (walk.Scope[at] != scope[i])
            {
                at--;
            }

            Strides[at] = stride;
            stride *= walk.Counts[at];
        }

        _stretch = 1;
        var inner = walk.Scope.Length;
        while (inner > walk.Inner && Strides[inner - 1] == _stretch)
        {
            _stretch *= walk.Counts[--inner];
        }

        _reach = _stretch;
        if (inner == walk.Inner)
        {
            return;
        }

        _offsets = new int[walk.Block / _stretch];
        var filled = 1;
        for (var d = inner - 1; d >= walk.Inner; d--)
        {
            for (var x = 1; x < walk.Counts[d]; x++)
            {
                for (var i = 0; i < filled; i++)
                {
                    _offsets[(x * filled) + i] = _offsets[i] + (x * Strides[d]);
                }
            }

            filled *= walk.Counts[d];
        }

        _reach = _offsets[^1] + _stretch;
    }

    /// <summary>Gets how far the small table's place moves with each variable of the large one.</summary>
    public int[] Strides { get; }

    /// <summary>Reads a block out of the small table.</summary>
    public void Assign(Span<double> block, double[] source, int start)
    {
        if (_offsets is null)
        {
            source.AsSpan(start, block.Length).CopyTo(block);
            return;
        }

        ref var from = ref Checked(block.Length, source, start);
        ref var to = ref MemoryMarshal.GetReference(block);
        nuint at = 0;
        unchecked
        {
            foreach (var offset in _offsets)
            {
                var place = (nuint)offset;
                var end = at + (nuint)_stretch;
                for (; at + 4 <= end; at += 4, place += 4)
                {
                    Vector256.LoadUnsafe(ref from, place).StoreUnsafe(ref to, at);
                }

                for (; at + 2 <= end; at += 2, place += 2)
                {
                    Vector128.LoadUnsafe(ref from, place).StoreUnsafe(ref to, at);
                }

                if (at < end)
                {
                    System.Runtime.CompilerServices.Unsafe.Add(ref to, at++) = System.Runtime.CompilerServices.Unsafe.Add(ref from, place);
                }
            }
        }
    }

    /// <summary>Multiplies a block by what the small table has there.</summary>
    public void Multiply(Span<double> block, double[] source, int start)
    {
        ref var from = ref Checked(block.Length, source, start);
        ref var to = ref MemoryMarshal.GetReference(block);
        nuint at = 0;
        unchecked
        {
            foreach (var offset in _offsets ?? [0])
            {
                var place = (nuint)offset;
                var end = at + (nuint)_stretch;
                for (; at + 4 <= end; at += 4, place += 4)
                {
                    (Vector256.LoadUnsafe(ref to, at) * Vector256.LoadUnsafe(ref from, place)).StoreUnsafe(ref to, at);
                }

                for (; at + 2 <= end; at += 2, place += 2)
                {
                    (Vector128.LoadUnsafe(ref to, at) * Vector128.LoadUnsafe(ref from, place)).StoreUnsafe(ref to, at);
                }

                if (at < end)
                {
                    System.Runtime.CompilerServices.Unsafe.Add(ref to, at++) *= System.Runtime.CompilerServices.Unsafe.Add(ref from, place);
                }
            }
        }
    }

    /// <summary>Adds a block to what the small table has there.</summary>
    public void AddTo(double[] target, int start, ReadOnlySpan<double> block)
    {
        ref var to = ref Checked(block.Length, target, start);
        ref var from = ref MemoryMarshal.GetReference(block);
        nuint at = 0;
        unchecked
        {
            foreach (var offset in _offsets ?? [0])
            {
                var place = (nuint)offset;
                var end = at + (nuint)_stretch;
                for (; at + 4 <= end; at += 4, place += 4)
                {
                    (Vector256.LoadUnsafe(ref to, place) + Vector256.LoadUnsafe(ref from, at)).StoreUnsafe(ref to, place);
                }

                for (; at + 2 <= end; at += 2, place += 2)
                {
                    (Vector128.LoadUnsafe(ref to, place) + Vector128.LoadUnsafe(ref from, at)).StoreUnsafe(ref to, place);
                }

                if (at < end)
                {
                    System.Runtime.CompilerServices.Unsafe.Add(ref to, place) += System.Runtime.CompilerServices.Unsafe.Add(ref from, at++);
                }
            }
        }
    }

    // The places below are read without a check each, so they are checked here together: none lies before the start or beyond the reach.
    private ref double Checked(int block, double[] small, int start)
    {
        var entries = _offsets is null ? _stretch : _offsets.Length * _stretch;
        if (block != entries || start < 0 || start + _reach > small.Length)
        {
            throw new ArgumentException("The tables do not have the sizes of the walk.");
        }

        return ref small[start];
    }
}
