using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Kinship;

/// <summary>The founders of which a keeper says how related they are: each is written as shares of the earlier ones and a rest of
/// its own, as an offspring is of its parents.</summary>
internal sealed class FounderBlock
{
    private readonly Pedigree _pedigree;
    private readonly KinshipSettings _settings;
    private readonly int[] _related;
    private readonly Dictionary<int, int> _indexOf = [];
    private readonly double[][] _shares;
    private readonly double[] _rests;

    private FounderBlock(Pedigree pedigree, KinshipSettings settings, int[] related, Probability[,] kinships)
    {
        _pedigree = pedigree;
        _settings = settings;
        _related = related;
        Kinships = kinships;
        for (var i = 0; i < related.Length; i++)
        {
            _indexOf.Add(related[i], i);
        }

        (_shares, _rests) = Decompose();
    }

    /// <summary>The given kinships of the related founders.</summary>
    public Probability[,] Kinships { get; }

    public static FounderBlock Of(Pedigree pedigree, KinshipSettings settings)
    {
        foreach (var key in settings.FounderInbreeding.Keys.Concat(settings.FounderKinships.SelectMany(k => new[] { k.First, k.Second })))
        {
            if (!pedigree.Animals[pedigree.PositionOf(key)].IsFounder)
            {
                throw new ArgumentException($"{key} is no founder: its parents say how related it is.", nameof(settings));
            }
        }

        int[] related = [.. settings.FounderKinships.SelectMany(k => new[] { k.First, k.Second }).Select(pedigree.PositionOf).Distinct().Order()];
        var kinships = new Probability[related.Length, related.Length];
        for (var i = 0; i < related.Length; i++)
        {
            var own = settings.FounderInbreeding.GetValueOrDefault(pedigree.Animals[related[i]].Key);
            kinships[i, i] = (Probability.Certain * Probability.Half) + (own * Probability.Half);
        }

        foreach (var given in settings.FounderKinships)
        {
            var (first, second) = (Array.IndexOf(related, pedigree.PositionOf(given.First)), Array.IndexOf(related, pedigree.PositionOf(given.Second)));
            if (first == second)
            {
                throw new ArgumentException($"{given.First} is named with itself; say its inbreeding coefficient instead.", nameof(settings));
            }

            kinships[first, second] = kinships[second, first] = given.Kinship;
        }

        return new FounderBlock(pedigree, settings, related, kinships);
    }

    public bool IsRelated(int animal) => _indexOf.ContainsKey(animal);

    public int AddTo(DescentGraph graph, int animal, int[] nodes)
    {
        var inbreeding = _settings.FounderInbreeding.GetValueOrDefault(_pedigree.Animals[animal].Key);
        return _indexOf.TryGetValue(animal, out var index) && index > 0
            ? graph.AddRelatedFounder(
                [.. _related.Take(index).Select(other => nodes[other])],
                _shares[index],
                _rests[index],
                inbreeding,
                [.. Enumerable.Range(0, index).Select(other => Kinships[index, other])])
            : graph.AddFounder(inbreeding);
    }

    /// <summary>Row by row, the shares of the earlier founders that explain the kinships with them, and what is left of the self-kinship.</summary>
    private (double[][] Shares, double[] Rests) Decompose()
    {
        var kinships = Kinships;
        var n = kinships.GetLength(0);
        var lower = new double[n, n];
        var rests = new double[n];
        var shares = new double[n][];
        for (var i = 0; i < n; i++)
        {
            rests[i] = kinships[i, i].Value;
            for (var j = 0; j < i; j++)
            {
                var left = kinships[i, j].Value;
                for (var k = 0; k < j; k++)
                {
                    left -= lower[i, k] * lower[j, k] * rests[k];
                }

                lower[i, j] = rests[j] > Probability.RoundingTolerance ? left / rests[j] : Nothing(left, i);
                rests[i] -= lower[i, j] * lower[i, j] * rests[j];
            }

            rests[i] = rests[i] < 0.0 ? Nothing(rests[i], i) : rests[i];
            shares[i] = new double[i];
            for (var k = i - 1; k >= 0; k--)
            {
                shares[i][k] = lower[i, k];
                for (var j = k + 1; j < i; j++)
                {
                    shares[i][k] -= shares[i][j] * lower[j, k];
                }
            }
        }

        return (shares, rests);
    }

    private double Nothing(double left, int index) => Math.Abs(left) <= 1e-9
        ? 0.0
        : throw new ImpossibleKinshipException(_pedigree.Animals[_related[index]].Key);
}
