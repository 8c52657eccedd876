namespace Clutchwright.Stock;

/// <summary>Why a person's wish was not carried out; nothing has changed. It holds values;
/// for the problems of the book <see cref="ProblemWords"/> has the words.</summary>
public abstract record Problem
{
    protected Problem()
    {
    }
}
