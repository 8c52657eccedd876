using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees;

namespace Clutchwright.Testing.Pedigrees;

/// <summary>A made-up pedigree: animals in an order in which parents come first.</summary>
/// <remarks>Positions count from 0; the id of an animal is its position plus 1, and a parent that is not known has position -1.</remarks>
public sealed class SamplePedigree
{
    private readonly List<int> _sires = [];
    private readonly List<int> _dams = [];
    private readonly List<Sex> _sexes = [];

    /// <summary>The sires' positions.</summary>
    public IReadOnlyList<int> Sires => _sires;

    /// <summary>The dams' positions.</summary>
    public IReadOnlyList<int> Dams => _dams;

    /// <summary>The sexes.</summary>
    public IReadOnlyList<Sex> Sexes => _sexes;

    /// <summary>How many animals there are.</summary>
    public int Count => _sires.Count;

    /// <summary>The positions of the animals that have young, in order.</summary>
    public IReadOnlyList<int> Breeders => [.. _sires.Concat(_dams).Where(parent => parent >= 0).Distinct().Order()];

    /// <summary>Whether no parent is known.</summary>
    public bool IsFounder(int position) => _sires[position] < 0 && _dams[position] < 0;

    /// <summary>Adds an animal.</summary>
    /// <returns>Its position.</returns>
    public int Add(Sex sex, int sire = -1, int dam = -1)
    {
        _sires.Add(sire);
        _dams.Add(dam);
        _sexes.Add(sex);
        return Count - 1;
    }

    /// <summary>The id of an animal as text; null for a parent that is not known.</summary>
    public static string? Id(int position) => position < 0 ? null : (position + 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>The animals in the engine's terms, keyed by their ids.</summary>
    public IEnumerable<PedigreeAnimal> Animals() =>
        Enumerable.Range(0, Count).Select(i => new PedigreeAnimal(Id(i)!, Id(_sires[i]), Id(_dams[i])));

    /// <summary>The pedigree in the engine's terms, in the same order.</summary>
    public Pedigree ToPedigree() => Pedigree.Of(Animals());

    /// <summary>A table <c>id,sire,dam,sex</c> with a header: unknown parents 0, male 1, female 2. Its digest names the pedigree.</summary>
    public string ToNumberTable()
    {
        var text = new StringBuilder("id,sire,dam,sex\n");
        for (var i = 0; i < Count; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{i + 1},{_sires[i] + 1},{_dams[i] + 1},{(_sexes[i] == Sex.Male ? 1 : 2)}\n");
        }

        return text.ToString();
    }

    /// <summary>The pedigree as a file that the command line reads.</summary>
    public string ToPedigreeFile()
    {
        var text = new StringBuilder("id,sex,sire,dam\n");
        for (var i = 0; i < Count; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{i + 1},{(_sexes[i] == Sex.Male ? 'm' : 'f')},{Id(_sires[i])},{Id(_dams[i])}\n");
        }

        return text.ToString();
    }

    /// <inheritdoc/>
    public override string ToString() => Count <= 100 ? ToNumberTable() : $"{Count} animals";
}
