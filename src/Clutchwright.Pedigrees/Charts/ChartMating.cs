namespace Clutchwright.Pedigrees.Charts;

/// <summary>The line that joins a pair.</summary>
/// <param name="Sire">The place of the male's symbol in <see cref="PedigreeChart.Symbols"/>, from 0.</param>
/// <param name="Dam">The place of the female's symbol, from 0.</param>
/// <param name="Path">The line, corner by corner: two points where the two stand side by side, four where it passes over others.</param>
/// <param name="IsBetweenKin">Whether the two are kin by the recorded pedigree; the line is then drawn double.</param>
/// <param name="IsPossible">Whether he is only one of several possible sires; the line is then dashed.</param>
public sealed record ChartMating(int Sire, int Dam, IReadOnlyList<ChartPoint> Path, bool IsBetweenKin, bool IsPossible);

/// <summary>The lines from a pair, or from several possible ones, to its young.</summary>
/// <param name="Descents">The lines down from the matings; one, or one for each possible sire.</param>
/// <param name="LineY">The height of the sibship line, which runs over all young and under all descents.</param>
/// <param name="LineFrom">The left end of the sibship line.</param>
/// <param name="LineTo">The right end of the sibship line; the same as the left where one young stands right below.</param>
/// <param name="Young">The lines from the sibship line down to the young, from left to right.</param>
public sealed record ChartSibship(
    IReadOnlyList<ChartDescent> Descents, double LineY, double LineFrom, double LineTo, IReadOnlyList<ChartDrop> Young);

/// <summary>A line down from a mating.</summary>
/// <param name="Mating">The place of the mating in <see cref="PedigreeChart.Matings"/>, from 0.</param>
/// <param name="From">Where it leaves the mating line; it ends on the sibship line right below.</param>
public sealed record ChartDescent(int Mating, ChartPoint From);

/// <summary>A line down to one young.</summary>
/// <param name="Symbol">The place of the young's symbol in <see cref="PedigreeChart.Symbols"/>, from 0.</param>
/// <param name="To">Where it ends, at the upper edge of the symbol; it begins on the sibship line right above.</param>
public sealed record ChartDrop(int Symbol, ChartPoint To);

/// <summary>The dotted arc that joins two symbols of one animal.</summary>
/// <param name="Animal">The place of the animal's own symbol in <see cref="PedigreeChart.Symbols"/>, from 0.</param>
/// <param name="Again">The place of the other symbol, from 0.</param>
/// <param name="Path">The four points of a cubic Bézier curve.</param>
public sealed record ChartArc(int Animal, int Again, IReadOnlyList<ChartPoint> Path);
