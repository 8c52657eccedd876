namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>How much of the time that a reckoning may take is over.</summary>
internal sealed class WorkClock
{
    private readonly BeliefSettings _settings;
    private readonly long _started;

    /// <summary>Starts now.</summary>
    /// <param name="settings">The clock, if there is one, and the time.</param>
    public WorkClock(BeliefSettings settings)
    {
        _settings = settings;
        _started = settings.Clock?.GetTimestamp() ?? 0;
    }

    /// <summary>Gets the share of the time that is over, from 0 up; 0 always where there is no clock.</summary>
    public double Share => _settings.Clock is { } clock ? clock.GetElapsedTime(_started) / _settings.Patience : 0.0;
}
