using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Planning.Pairs;

/// <summary>The chance of at least one from a clutch, by the chance per egg: the same few come back in pair after pair.</summary>
internal sealed class ClutchChances(GoodEggs clutch)
{
    private readonly Dictionary<Probability, Probability> _known = [];

    public Probability AtLeastOne(SharedChance chance)
    {
        var sum = Probability.Impossible;
        foreach (var (perEgg, weight) in chance.Cases)
        {
            if (!_known.TryGetValue(perEgg, out var atLeastOne))
            {
                _known.Add(perEgg, atLeastOne = SharedChance.Certain(perEgg).AtLeastOne(clutch));
            }

            sum += weight * atLeastOne;
        }

        return sum;
    }
}
