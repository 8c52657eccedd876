namespace Clutchwright.Planning.Expectations;

/// <summary>The steps of a female's year and of her young, in their order.</summary>
public enum YearStep
{
    /// <summary>She was first put with a male, or first seen to mate, this season.</summary>
    Paired = 1,

    /// <summary>Ovulation.</summary>
    Ovulation,

    /// <summary>The shed between ovulation and laying.</summary>
    PreLayShed,

    /// <summary>Eggs are laid.</summary>
    Eggs,

    /// <summary>The first egg is pipped.</summary>
    Pip,

    /// <summary>The first hatchling has left its egg.</summary>
    Hatch,

    /// <summary>The first shed of a hatchling.</summary>
    FirstShed,

    /// <summary>The first meal that a hatchling takes.</summary>
    FirstMeal,

    /// <summary>Eggs of the season after.</summary>
    NextEggs,
}
