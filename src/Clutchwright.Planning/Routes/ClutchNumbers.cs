using System.Collections.Concurrent;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Planning.Routes;

/// <summary>What a season of paired females gives of something that has a chance per good egg. Safe to use from many threads.</summary>
internal sealed class ClutchNumbers(RouteSettings settings)
{
    private readonly double[] _eggs = [.. settings.Clutch.Chances.Select(p => p.Value)];
    private readonly ConcurrentDictionary<(double Chance, int Dams), double[]> _numbers = new();

    /// <summary>The chance that one paired female gives none of what has a chance per good egg, this season.</summary>
    public double NoneOf(double chance)
    {
        var (none, miss) = (0.0, 1.0 - chance);
        for (var n = _eggs.Length - 1; n >= 0; n--)
        {
            none = (none * miss) + _eggs[n];
        }

        return none;
    }

    /// <summary>The chance of each number of what has a chance per good egg in one season of several females, up to the most sisters held back.</summary>
    public double[] NumberOf(double chance, int dams)
    {
        if (!_numbers.TryGetValue((chance, dams), out var number))
        {
            var one = settings.Clutch.NumberOf(Probability.Rounded(chance));
            number = new double[settings.MostDams + 1];
            number[0] = 1.0;
            for (var d = 0; d < dams; d++)
            {
                for (var n = number.Length - 1; n >= 0; n--)
                {
                    var sum = 0.0;
                    for (var k = 0; k <= Math.Min(n, one.Count - 1); k++)
                    {
                        sum += one[k] * number[n - k];
                    }

                    number[n] = sum;
                }
            }

            _numbers.TryAdd((chance, dams), number);
        }

        return number;
    }
}
