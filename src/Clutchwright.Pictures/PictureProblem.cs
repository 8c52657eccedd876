namespace Clutchwright.Pictures;

/// <summary>Why a file cannot be taken for a picture.</summary>
public enum PictureProblem
{
    /// <summary>The file is larger than <see cref="PictureReader.MostBytes"/>.</summary>
    TooManyBytes = 1,

    /// <summary>It would unpack to more pixels than <see cref="PictureReader.MostPixels"/>.</summary>
    TooManyPixels,

    /// <summary>It is no picture of a kind that can be read, or it is broken.</summary>
    Unreadable,
}
