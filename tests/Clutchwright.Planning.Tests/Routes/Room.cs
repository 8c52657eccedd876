using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Planning.Routes;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Planning.Tests.Routes;

/// <summary>A small room: free loci with one mutant allele each, and a few founders.</summary>
internal sealed record Room(
    IReadOnlyList<RoomLocus> Loci, IReadOnlyList<RoomFounder> Founders, IReadOnlyList<double> Eggs, int Seasons, int MaleAge, int FemaleAge, double Rearing, int MostRaised)
{
    /// <summary>Rooms of so many loci.</summary>
    public static Gen<Room> Gen(int loci, int mostRaised) => Draw.Gen(draw =>
    {
        RoomLocus[] all = [.. Enumerable.Range(0, loci).Select(_ => new RoomLocus(draw.Chance(1, 2), draw.Of<int[]>([1], [2], [1, 2], [2])))];
        var founders = new List<RoomFounder>();
        var (males, females) = (1 + draw.Below(2), 1 + draw.Below(2));
        for (var i = 0; i < males + females; i++)
        {
            int[] copies = [.. all.Select(_ => draw.Weighted(2, 2, 1))];
            var founder = new RoomFounder(i < males ? Sex.Male : Sex.Female, copies) { Ready = draw.Chance(1, 6) ? 2 : 1 };
            int[] singles = [.. Enumerable.Range(0, loci).Where(l => copies[l] == 1 && all[l].IsRecessive)];
            founders.Add(singles.Length > 0 && draw.Chance(1, 3) ? founder with { Doubtful = draw.Of(singles), Chance = draw.Of(0.5, 2.0 / 3.0) } : founder);
        }

        var room = new Room(
            all,
            founders,
            draw.Of<double[]>([0, 1], [0, 0, 0, 1], [0.2, 0, 0.3, 0, 0.5], [0.25, 0, 0, 0, 0, 0, 0.75]),
            2 + draw.Below(4),
            1 + draw.Below(2),
            1 + draw.Below(3),
            draw.Chance(1, 2) ? 1.0 : 0.9,
            1 + draw.Below(mostRaised));
        draw.Count(founders.Count + room.Seasons + room.MostRaised);
        return room;
    });

    public RouteProblem Problem()
    {
        var species = Describe.Species(
            SexSystem.XY, [.. Loci.Select((l, i) => Describe.Free($"L{i}", l.IsRecessive ? Describe.Recessive($"m{i}") : Describe.Incomplete($"m{i}")))]);
        return new(
            species,
            new Want([new WantedGenotype(null, [.. Loci.Select((l, i) => WantedPairs.Of(species.Loci[i], l.Target.Select(Pair)))])]),
            [.. Founders.Select(f => new RouteAnimal(f.Sex, Belief(species, f)) { ReadySeason = f.Ready })],
            new()
            {
                Seasons = Seasons, MaleMaturity = MaleAge, FemaleMaturity = FemaleAge, Rearing = Rearing, MostRaised = MostRaised, MostDams = 1,
                Clutch = GoodEggs.Of([.. Eggs], Probability.Certain, ClutchRate.Fixed(1.0), ClutchRate.Fixed(1.0)),
            });
    }

    public override string ToString() => $"{string.Join(", ", Loci)}; {string.Join("; ", Founders)}; eggs {string.Join(' ', Eggs)}; {Seasons} seasons, "
        + $"males from {MaleAge}, females from {FemaleAge}, rearing {Rearing}, at most {MostRaised} raised";

    private static (int First, int Second) Pair(int copies) => copies switch { 0 => (0, 0), 1 => (0, 1), _ => (1, 1) };

    private static GenotypeBelief Belief(Species species, RoomFounder founder)
    {
        var certain = GenotypeBelief.Certain(Genotype(founder.Copies));
        return founder.Doubtful is { } locus
            ? certain.With(species.Loci[locus].Group,
                [new(new(0, 1), Probability.Rounded(founder.Chance)), new(new(0, 0), Probability.Rounded(1.0 - founder.Chance))])
            : certain;

        Genotype Genotype(int[] copies) => copies.Select((c, i) => (c, i)).Aggregate(
            Genetics.Genotypes.Genotype.Wild(species, founder.Sex), (g, p) => g.With(species.Loci[p.i], Pair(p.c).First, Pair(p.c).Second));
    }
}

/// <summary>A locus of a room.</summary>
/// <param name="IsRecessive">Whether one copy cannot be seen; otherwise one and two copies look different.</param>
/// <param name="Target">Which numbers of copies are wanted.</param>
internal sealed record RoomLocus(bool IsRecessive, int[] Target)
{
    public override string ToString() => $"{(IsRecessive ? "recessive" : "incomplete")} {string.Join('|', Target)}";
}

/// <summary>A founder of a room.</summary>
/// <param name="Sex">Its sex.</param>
/// <param name="Copies">Copies at each locus.</param>
internal sealed record RoomFounder(Sex Sex, int[] Copies)
{
    public int Ready { get; init; } = 1;

    /// <summary>The locus at which it has its copy with a chance only, else none.</summary>
    public int? Doubtful { get; init; }

    public double Chance { get; init; } = 1.0;

    public override string ToString() => $"{Sex} {string.Join(string.Empty, Copies)}{(Doubtful is { } l ? $" (L{l} by {Chance:0.00})" : string.Empty)} from {Ready}";
}
