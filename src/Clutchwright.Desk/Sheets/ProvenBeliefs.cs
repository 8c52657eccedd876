using Clutchwright.Desk.Opened;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Desk.Sheets;

/// <summary>What would be believed of the stock if nobody had told anything of it: from what was seen, proven by breeding and ruled out alone.</summary>
internal sealed class ProvenBeliefs
{
    private readonly Lock _turn = new();
    private (StockState State, PedigreeBeliefs Beliefs)? _known;

    /// <summary>The beliefs; kept until the stock changes.</summary>
    public PedigreeBeliefs Of(StockState state, CancellationToken cancel)
    {
        lock (_turn)
        {
            if (_known is not var (known, beliefs) || !ReferenceEquals(known, state))
            {
                beliefs = state.Record.Animals.Any(a => a.Observations.Any(IsHearsay))
                    ? PedigreeBeliefs.Of(
                        state.Beliefs.Species,
                        [.. state.Record.Animals.Select(a => a.Observations.Any(IsHearsay) ? a with { Observations = [.. a.Observations.Where(o => !IsHearsay(o))] } : a)],
                        state.Beliefs.Settings,
                        state.Beliefs,
                        cancel)
                    : state.Beliefs;
                _known = (state, beliefs);
            }

            return beliefs;
        }
    }

    // A test is heard of too: its rates of error are the laboratory's word.
    private static bool IsHearsay(Observation observation) => observation is Observation.Said { Basis: StatementBasis.Told } or Observation.DnaTest;
}
