namespace Clutchwright.Planning.Expectations;

/// <summary>What is believed of every interval of a year.</summary>
/// <param name="PairingToOvulation">From the first pairing of a season to ovulation.</param>
/// <param name="OvulationToShed">From ovulation to the pre-lay shed.</param>
/// <param name="ShedToEggs">From the pre-lay shed to the eggs.</param>
/// <param name="OvulationToEggs">From ovulation to the eggs: it teaches the years in which the shed between was missed.</param>
/// <param name="EggsToPip">From the laying to the first pipped egg.</param>
/// <param name="PipToHatch">From then to the first hatchling out of its egg.</param>
/// <param name="HatchToShed">From hatching to the first shed.</param>
/// <param name="ShedToMeal">From the first shed to the first meal taken.</param>
/// <param name="EggsToNextEggs">From a laying to the next one of females that lay the season after.</param>
/// <param name="OvulationNoticed">The chance that an ovulation is noticed and written down, in [0, 1).</param>
/// <param name="ShedNoticed">The chance that a pre-lay shed is, in [0, 1).</param>
public sealed record YearIntervals(
    IntervalBelief PairingToOvulation,
    IntervalBelief OvulationToShed,
    IntervalBelief ShedToEggs,
    IntervalBelief OvulationToEggs,
    IntervalBelief EggsToPip,
    IntervalBelief PipToHatch,
    IntervalBelief HatchToShed,
    IntervalBelief ShedToMeal,
    IntervalBelief EggsToNextEggs,
    double OvulationNoticed,
    double ShedNoticed);
