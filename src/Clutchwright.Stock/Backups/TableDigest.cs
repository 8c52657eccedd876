using System.Buffers;
using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Clutchwright.Stock.Backups;

/// <summary>SHA-256 over the rows of a table as they are added: each value with its type and length, so that two tables have the same
/// digest only if they hold the same, whichever databases they lie on.</summary>
internal sealed class TableDigest : IDisposable
{
    // Small rows go to the hash together.
    private const int Many = 1 << 16;

    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private readonly ArrayBufferWriter<byte> _row = new();

    public long Rows { get; private set; }

    public static string OfAll(IEnumerable<TableContents> tables)
    {
        using var all = new TableDigest();
        foreach (var table in tables.OrderBy(table => table.Name, StringComparer.Ordinal))
        {
            all.Add([table.Name, table.Rows, table.Digest]);
        }

        return all.Finish();
    }

    public void Add(ReadOnlySpan<object?> row)
    {
        foreach (var value in row)
        {
            Put(value);
        }

        EndRow();
    }

    /// <summary>Ends a row whose values were put one by one.</summary>
    public void EndRow()
    {
        Rows++;
        if (_row.WrittenCount >= Many)
        {
            Flush();
        }
    }

    /// <summary>Adds bytes as a value.</summary>
    public void PutBytes(ReadOnlySpan<byte> bytes)
    {
        PutWhole('x', bytes.Length);
        Flush();
        _hash.AppendData(bytes);
    }

    /// <summary>Adds a text that is in UTF-8 already.</summary>
    public void PutText(ReadOnlySpan<byte> text)
    {
        PutWhole('s', text.Length);
        _row.Write(text);
    }

    public void Put(DateOnly day) => PutWhole('d', day.DayNumber);

    public void Put(DateTime instant) => PutWhole('t', instant.Ticks);

    public void Put(Guid id)
    {
        _row.GetSpan(1)[0] = (byte)'g';
        _row.Advance(1);
        id.TryWriteBytes(_row.GetSpan(16), bigEndian: true, out var written);
        _row.Advance(written);
    }

    /// <summary>The digest in 64 hexadecimal digits; adding begins anew.</summary>
    public string Finish()
    {
        Flush();
        return Convert.ToHexStringLower(_hash.GetHashAndReset());
    }

    public void Dispose() => _hash.Dispose();

    /// <summary>Adds a value.</summary>
    public void Put(object? value)
    {
        switch (value)
        {
            case null: PutWhole('-', 0); break;
            case string text: PutText('s', text); break;
            case long whole: PutWhole('i', whole); break;

            // A database may forget the sign of zero.
            case double real: PutWhole('r', BitConverter.DoubleToInt64Bits(real == 0 ? 0 : real)); break;
            case bool truth: PutWhole('b', truth ? 1 : 0); break;
            case DateTime instant: Put(instant); break;
            case DateOnly day: Put(day); break;
            case TimeOnly time: PutWhole('h', time.Ticks); break;
            case decimal amount: PutText('m', (amount / 1.0000000000000000000000000000m).ToString(System.Globalization.CultureInfo.InvariantCulture)); break;
            case Guid id: Put(id); break;
            case byte[] bytes: PutBytes(bytes); break;
            default: throw new NotSupportedException($"Values of {value.GetType()} cannot be compared.");
        }
    }

    private void Flush()
    {
        _hash.AppendData(_row.WrittenSpan);
        _row.ResetWrittenCount();
    }

    private void PutWhole(char kind, long value)
    {
        var span = _row.GetSpan(9);
        span[0] = (byte)kind;
        BinaryPrimitives.WriteInt64BigEndian(span[1..], value);
        _row.Advance(9);
    }

    private void PutText(char kind, string text)
    {
        PutWhole(kind, Encoding.UTF8.GetByteCount(text));
        Encoding.UTF8.GetBytes(text, _row);
    }
}
