namespace Clutchwright.Stock;

/// <summary>Why a person's wish was not carried out; nothing has changed. It holds values, <see cref="ProblemWords"/> the words.</summary>
public abstract record Problem
{
    private protected Problem()
    {
    }
}
