using System.Globalization;

namespace Clutchwright.Stock.History;

/// <summary>The number of a deed: 1 for the first in the book, then without gaps. Ordered by time. The default is no deed.</summary>
public readonly record struct DeedId(long Number) : IComparable<DeedId>
{
    public static bool operator <(DeedId left, DeedId right) => left.Number < right.Number;

    public static bool operator >(DeedId left, DeedId right) => left.Number > right.Number;

    public static bool operator <=(DeedId left, DeedId right) => left.Number <= right.Number;

    public static bool operator >=(DeedId left, DeedId right) => left.Number >= right.Number;

    public int CompareTo(DeedId other) => Number.CompareTo(other.Number);

    public override string ToString() => Number.ToString(CultureInfo.InvariantCulture);
}
