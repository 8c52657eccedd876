namespace Clutchwright.Genetics.Loci;

/// <summary>A species' description contradicts itself.</summary>
public sealed class SpeciesException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What is wrong, and where.</param>
    public SpeciesException(string message)
        : base(message)
    {
    }

    /// <summary>Makes the exception without saying more.</summary>
    public SpeciesException()
    {
    }

    /// <summary>Makes the exception with its cause.</summary>
    public SpeciesException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
