namespace Clutchwright.Pictures;

/// <summary>A picture as it is kept: upright, of a size for a screen, and without anything of where and with what it was taken.</summary>
/// <param name="Picture">A JPEG file.</param>
/// <param name="Thumbnail">The same, small, as a JPEG file.</param>
/// <param name="Width">Of the picture, in pixels.</param>
/// <param name="Height">Of the picture, in pixels.</param>
/// <param name="Taken">The day the camera wrote into the file, as the camera's clock had it; <c>null</c>: none.</param>
public sealed record PreparedPicture(ReadOnlyMemory<byte> Picture, ReadOnlyMemory<byte> Thumbnail, int Width, int Height, DateOnly? Taken);
