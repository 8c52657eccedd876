namespace Clutchwright.Stock.Settings;

/// <summary>Why a setting cannot be kept.</summary>
public abstract record SettingProblem : Problem
{
    private SettingProblem()
    {
    }

    public sealed record NameInvalid(string Name) : SettingProblem;

    public sealed record ValueInvalid(string Name, int MaxLength) : SettingProblem;
}
