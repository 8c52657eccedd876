using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Photos;

/// <summary>Why a photo cannot be as it was entered.</summary>
public abstract record PhotoProblem : Problem
{
    private PhotoProblem()
    {
    }

    public sealed record Empty : PhotoProblem;

    public sealed record CaptionInvalid(int MaxLength) : PhotoProblem;

    public sealed record InTheFuture(DateRange Taken) : PhotoProblem;

    public sealed record BeforeItHatched(string Tag, DateRange Hatched, DateRange Taken) : PhotoProblem;

    /// <summary>The animal has this very picture already.</summary>
    public sealed record AlreadyThere(string Tag) : PhotoProblem;

    public sealed record NotFound(PhotoId Photo) : PhotoProblem;

    public sealed record AlreadyWithdrawn(PhotoId Photo) : PhotoProblem;

    /// <summary>Somebody else changed it meanwhile.</summary>
    public sealed record ChangedSince(PhotoId Photo) : PhotoProblem;
}
