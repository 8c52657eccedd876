using Clutchwright.Catalogue.Looks;

namespace Clutchwright.Catalogue.Tests.Looks;

/// <summary>CIEDE2000 written down from the numbered formulas of the paper, in degrees, one line a formula.</summary>
/// <remarks>Source: docs/references.md [Sharma2005], equations 2 to 22 [recalled].</remarks>
internal static class SlowCiede2000
{
    public static double Between(CielabColour first, CielabColour second)
    {
        var c1ab = Math.Pow(Math.Pow(first.A, 2) + Math.Pow(first.B, 2), 0.5); // (2)
        var c2ab = Math.Pow(Math.Pow(second.A, 2) + Math.Pow(second.B, 2), 0.5);
        var cbar = (c1ab + c2ab) / 2; // (3)
        var g = 0.5 * (1 - Math.Sqrt(Math.Pow(cbar, 7) / (Math.Pow(cbar, 7) + Math.Pow(25, 7)))); // (4)
        var a1 = (1 + g) * first.A; // (5)
        var a2 = (1 + g) * second.A;
        var c1 = Math.Sqrt((a1 * a1) + (first.B * first.B)); // (6)
        var c2 = Math.Sqrt((a2 * a2) + (second.B * second.B));
        var h1 = HueDegrees(a1, first.B); // (7)
        var h2 = HueDegrees(a2, second.B);

        var dl = second.L - first.L; // (8)
        var dc = c2 - c1; // (9)
        double dh; // (10)
        if (c1 * c2 == 0)
        {
            dh = 0;
        }
        else if (Math.Abs(h2 - h1) <= 180)
        {
            dh = h2 - h1;
        }
        else if (h2 - h1 > 180)
        {
            dh = h2 - h1 - 360;
        }
        else
        {
            dh = h2 - h1 + 360;
        }

        var dbigh = 2 * Math.Sqrt(c1 * c2) * Sin(dh / 2); // (11)
        var lbar = (first.L + second.L) / 2; // (12)
        var cbarPrime = (c1 + c2) / 2; // (13)
        double hbar; // (14)
        if (c1 * c2 == 0)
        {
            hbar = h1 + h2;
        }
        else if (Math.Abs(h1 - h2) <= 180)
        {
            hbar = (h1 + h2) / 2;
        }
        else if (h1 + h2 < 360)
        {
            hbar = (h1 + h2 + 360) / 2;
        }
        else
        {
            hbar = (h1 + h2 - 360) / 2;
        }

        var t = 1 - (0.17 * Cos(hbar - 30)) + (0.24 * Cos(2 * hbar)) + (0.32 * Cos((3 * hbar) + 6)) - (0.20 * Cos((4 * hbar) - 63)); // (15)
        var theta = 30 * Math.Exp(-Math.Pow((hbar - 275) / 25, 2)); // (16)
        var rc = 2 * Math.Sqrt(Math.Pow(cbarPrime, 7) / (Math.Pow(cbarPrime, 7) + Math.Pow(25, 7))); // (17)
        var sl = 1 + (0.015 * Math.Pow(lbar - 50, 2) / Math.Sqrt(20 + Math.Pow(lbar - 50, 2))); // (18)
        var sc = 1 + (0.045 * cbarPrime); // (19)
        var sh = 1 + (0.015 * cbarPrime * t); // (20)
        var rt = -Sin(2 * theta) * rc; // (21)
        return Math.Sqrt(
            Math.Pow(dl / sl, 2) + Math.Pow(dc / sc, 2) + Math.Pow(dbigh / sh, 2) + (rt * (dc / sc) * (dbigh / sh))); // (22)
    }

    private static double HueDegrees(double a, double b)
    {
        if (a == 0 && b == 0)
        {
            return 0;
        }

        var degrees = Math.Atan2(b, a) / Math.PI * 180;
        return degrees >= 0 ? degrees : degrees + 360;
    }

    private static double Sin(double degrees) => Math.Sin(degrees * Math.PI / 180);

    private static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);
}
