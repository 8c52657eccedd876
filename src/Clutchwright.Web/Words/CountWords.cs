using System.Globalization;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Words;

namespace Clutchwright.Web.Words;

/// <summary>Puts numbers of animals and eggs into words, in the reader's culture.</summary>
internal static class CountWords
{
    /// <summary>How many of a kind a clutch holds: where nine clutches in ten lie, and the mean.</summary>
    public static string Range(CountRange count)
    {
        var range = count.Low == count.High ? Whole(count.Low) : $"{Whole(count.Low)} to {Whole(count.High)}";
        return $"{range}, mean {OddsText.Mean(count.Mean)}";
    }

    /// <summary>A number with its noun.</summary>
    public static string Of(int number, string one, string many) => $"{Whole(number)} {(number == 1 ? one : many)}";

    /// <summary>A whole number with the culture's grouping.</summary>
    public static string Whole(long number) => number.ToString("N0", CultureInfo.CurrentCulture);
}
