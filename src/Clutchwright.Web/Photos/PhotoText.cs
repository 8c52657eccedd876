using System.Globalization;
using Clutchwright.Desk.Photos;

namespace Clutchwright.Web.Photos;

/// <summary>Puts photos into words for those who do not see them.</summary>
internal static class PhotoText
{
    public static string When(PhotoWords photo) => (photo.Taken, photo.Age) switch
    {
        (null, _) => "no day known",
        (var taken, null) => taken,
        var (taken, age) => $"{taken}, {age} old",
    };

    public static string Alt(string tag, PhotoWords photo) => $"{tag}, {When(photo)}{(photo.Caption.Length > 0 ? $": {photo.Caption}" : string.Empty)}";

    public static string Strip(PhotoWords photo) => photo.Caption.Length > 0 ? photo.Caption : When(photo);

    /// <summary>The width of a picture shown at a height, so that the page does not move when it comes.</summary>
    public static string Width(PhotoWords photo, int height) => Math.Round((double)photo.Width / photo.Height * height).ToString(CultureInfo.InvariantCulture);
}
