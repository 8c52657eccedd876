namespace Clutchwright.Desk;

/// <summary>The catalogue or the book cannot be opened; the message says which, and why.</summary>
public sealed class DeskClosedException : Exception
{
    /// <summary>Makes the exception.</summary>
    public DeskClosedException(string message)
        : base(message)
    {
    }

    /// <summary>Makes the exception without saying more.</summary>
    public DeskClosedException()
    {
    }

    /// <summary>Makes the exception with its cause.</summary>
    public DeskClosedException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
