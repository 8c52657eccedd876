using QRCoder;

namespace Clutchwright.Sheets.Codes;

/// <summary>A QR code: a square of dark and light modules, without the quiet zone around it.</summary>
public sealed class QrMatrix
{
    /// <summary>The light modules that a code needs on every side (ISO/IEC 18004).</summary>
    public const int QuietZone = 4;

    private readonly bool[,] _dark;

    private QrMatrix(bool[,] dark) => _dark = dark;

    /// <summary>Gets the modules on a side, the quiet zone not counted.</summary>
    public int Size => _dark.GetLength(0);

    /// <summary>Whether a module is dark; counted from 0 at the upper left.</summary>
    public bool this[int x, int y] => _dark[x, y];

    /// <summary>Writes a text as a code.</summary>
    /// <param name="text">The text, as UTF-8.</param>
    /// <param name="isSmallest">Whether the code is as small as it can be (7 % of it may be lost) or sturdier (15 %).</param>
    /// <returns>The code; <c>null</c>: the text is too long for any.</returns>
    public static QrMatrix? Of(string text, bool isSmallest)
    {
        try
        {
            using var code = QRCodeGenerator.GenerateQrCode(
                text, isSmallest ? QRCodeGenerator.ECCLevel.L : QRCodeGenerator.ECCLevel.M, forceUtf8: text.Any(c => c > 126));
            var (size, edge) = (code.ModuleMatrix.Count - (2 * QuietZone), QuietZone);
            var dark = new bool[size, size];
            for (var y = 0; y < size; y++)
            {
                for (var x = 0; x < size; x++)
                {
                    dark[x, y] = code.ModuleMatrix[y + edge][x + edge];
                }
            }

            return new(dark);
        }
        catch (QRCoder.Exceptions.DataTooLongException)
        {
            return null;
        }
    }

    /// <summary>The dark runs of each row: where each begins, its row and its length, in modules.</summary>
    public IEnumerable<(int X, int Y, int Length)> Runs()
    {
        for (var y = 0; y < Size; y++)
        {
            for (var x = 0; x < Size; x++)
            {
                var start = x;
                while (x < Size && _dark[x, y])
                {
                    x++;
                }

                if (x > start)
                {
                    yield return (start, y, x - start);
                }
            }
        }
    }
}
