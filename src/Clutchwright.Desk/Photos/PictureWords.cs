using Clutchwright.Pictures;

namespace Clutchwright.Desk.Photos;

/// <summary>Why a file cannot be taken for a picture, in words.</summary>
internal static class PictureWords
{
    public static string Say(PictureProblem problem) => problem switch
    {
        PictureProblem.TooManyBytes => $"The file is too large. At most {PictureReader.MostBytes / (1024 * 1024)} MiB.",
        PictureProblem.TooManyPixels => $"The picture has too many pixels. At most {PictureReader.MostPixels / 1_000_000} million.",
        PictureProblem.Unreadable => "This is no picture that can be read, or it is broken. JPEG, PNG or WebP; a phone that makes HEIC files can be set to make JPEG.",
    };
}
