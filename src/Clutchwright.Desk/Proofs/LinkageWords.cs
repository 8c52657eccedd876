using Clutchwright.Proofs.Linkages;

namespace Clutchwright.Desk.Proofs;

/// <summary>Puts a linkage test into words.</summary>
internal static class LinkageWords
{
    public const string Looks =
        "However often one looks, the LOD at a fraction named beforehand passes 3 by luck in fewer than 1 of 1,000 cases; the highest over all fractions a little more often. A p value would not stand looking often.";

    public static string Verdict(LodCurve curve)
    {
        if (curve.Most >= LodCurve.Linked)
        {
            return $"Linked: the highest LOD, {curve.Most:0.##}, passes 3.";
        }

        if (curve.ExcludedBelow is { } limit and >= 0.005)
        {
            return curve.Best >= 0.5 - 1e-9
                ? $"No sign of linkage; closer than r = {limit:0.###} is ruled out (LOD -2)."
                : $"Not settled; closer than r = {limit:0.###} is ruled out (LOD -2).";
        }

        return $"Not settled: the highest LOD, {curve.Most:0.##}, does not reach 3, and nothing is ruled out. More young are needed.";
    }

    public static IEnumerable<string> Notes(LinkageTest test)
    {
        if (test.Families.Any(f => f.Phase == LinkagePhase.Unknown))
        {
            yield return "Phase unknown: the two kinds of young are told apart, but not which are the recombinants; both ways round count half each.";
        }

        if (test.Heterogeneity is { } apart)
        {
            yield return apart.PValue < 0.05
                ? $"The families do not agree on one fraction (chi-square {apart.ChiSquare:0.##}, {apart.DegreesOfFreedom} df, p {apart.PValue:0.####}): look at them one by one."
                : $"The families agree on one fraction (chi-square {apart.ChiSquare:0.##}, {apart.DegreesOfFreedom} df, p {apart.PValue:0.####}).";
        }

        yield return Looks;
    }
}
