namespace Clutchwright.Stock.Books;

/// <summary>The checksum of a file in a ZIP, which the library writes and does not look at: CRC-32 with the polynomial 0xEDB88320, by ISO/IEC
/// 21320-1 and PKWARE's APPNOTE, 4.4.7.</summary>
internal static class Crc32
{
    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(n => Enumerable.Range(0, 8).Aggregate((uint)n, (c, _) => (c & 1) == 1 ? 0xEDB8_8320u ^ (c >> 1) : c >> 1))];

    public static uint Of(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var one in bytes)
        {
            sum = Table[(sum ^ one) & 0xFF] ^ (sum >> 8);
        }

        return ~sum;
    }
}
