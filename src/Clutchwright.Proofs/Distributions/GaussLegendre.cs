namespace Clutchwright.Proofs.Distributions;

/// <summary>Gauss's rule of integration, as a mean over an interval.</summary>
internal static class GaussLegendre
{
    /// <summary>The places in an interval and their weights, in sum 1: the mean of any polynomial of degree below twice the order is exact.</summary>
    public static (double At, double Weight)[] On(double low, double high, int order)
    {
        var result = new (double At, double Weight)[order];
        for (var i = 0; i < order; i++)
        {
            // Newton's steps from Tricomi's first guess of the root.
            var x = Math.Cos(Math.PI * (i + 0.75) / (order + 0.5));
            var slope = 1.0;
            for (var step = 0; step < 100; step++)
            {
                var (value, before) = (x, 1.0);
                for (var k = 2; k <= order; k++)
                {
                    (value, before) = (((((2.0 * k) - 1.0) * x * value) - ((k - 1.0) * before)) / k, value);
                }

                slope = order * ((x * value) - before) / ((x * x) - 1.0);
                var move = value / slope;
                x -= move;
                if (Math.Abs(move) < 1e-16)
                {
                    break;
                }
            }

            result[i] = (low + ((high - low) * (1.0 - x) / 2.0), 1.0 / ((1.0 - (x * x)) * slope * slope));
        }

        return result;
    }
}
