using System.Buffers.Binary;
using System.Security.Cryptography;

namespace Clutchwright.Stock.Backups;

/// <summary>Marks a finished backup with a checksum of its bytes, in two fields of SQLite's header that are the application's own, so that
/// damage is found which leaves the form of the file as it is.</summary>
/// <remarks>Places in the header by the documentation of SQLite's file format: 18 and 19 are 1 in a file without and 2 in one with a
/// write-ahead log, 60 is the user version, 68 the application's id. A backup that was opened and written as a book has a log; its checksum
/// says nothing any more.</remarks>
internal static class BackupSeal
{
    private const int LogPlace = 18;
    private const int SumPlace = 60;
    private const int MarkPlace = 68;
    private const int HeaderLength = 100;

    /// <summary>"Clut" in ASCII.</summary>
    private const uint Mark = 0x436C_7574;

    /// <summary>The checksum that a file will have when it is sealed.</summary>
    public static async Task<uint> SumAsync(string file, CancellationToken cancellation)
    {
        await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return await SumAsync(await MarkedHeaderAsync(stream, cancellation), stream, Stream.Null, cancellation);
    }

    /// <summary>Seals a file that nobody has open with its checksum.</summary>
    public static async Task PutAsync(string file, uint sum, CancellationToken cancellation)
    {
        await using var stream = new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        var header = await MarkedHeaderAsync(stream, cancellation);
        BinaryPrimitives.WriteUInt32BigEndian(header.AsSpan(SumPlace), sum);
        stream.Position = 0;
        await stream.WriteAsync(header, cancellation);
    }

    /// <summary>Copies a file.</summary>
    /// <returns>Whether its bytes are as they were when it was sealed; true also of a file without a seal.</returns>
    public static async Task<bool> CopyAsync(Stream from, Stream to, CancellationToken cancellation)
    {
        var header = new byte[HeaderLength];
        var length = await from.ReadAtLeastAsync(header, header.Length, throwOnEndOfStream: false, cancellation);
        await to.WriteAsync(header.AsMemory(0, length), cancellation);
        var sum = BinaryPrimitives.ReadUInt32BigEndian(header.AsSpan(SumPlace));
        var isSealed = BinaryPrimitives.ReadUInt32BigEndian(header.AsSpan(MarkPlace)) == Mark && header[LogPlace] == 1 && header[LogPlace + 1] == 1;
        return await SumAsync(header, from, to, cancellation) == sum || !isSealed;
    }

    private static async Task<byte[]> MarkedHeaderAsync(Stream stream, CancellationToken cancellation)
    {
        var header = new byte[HeaderLength];
        await stream.ReadExactlyAsync(header, cancellation);
        BinaryPrimitives.WriteUInt32BigEndian(header.AsSpan(MarkPlace), Mark);
        return header;
    }

    // Of the header as sealed but for the sum, and of all after it, which is copied on the way.
    private static async Task<uint> SumAsync(byte[] header, Stream rest, Stream copy, CancellationToken cancellation)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(header.AsSpan(0, SumPlace));
        hash.AppendData(header.AsSpan(SumPlace + sizeof(uint)));
        var buffer = new byte[1 << 20];
        for (int read; (read = await rest.ReadAsync(buffer, cancellation)) > 0;)
        {
            hash.AppendData(buffer.AsSpan(0, read));
            await copy.WriteAsync(buffer.AsMemory(0, read), cancellation);
        }

        return BinaryPrimitives.ReadUInt32BigEndian(hash.GetHashAndReset());
    }
}
