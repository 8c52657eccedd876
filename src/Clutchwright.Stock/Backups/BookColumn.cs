using System.Data.Common;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Backups;

/// <summary>One column of a table of the book, with the type in which its values are read, compared and written.</summary>
/// <param name="Name">As in the database.</param>
/// <param name="Type">As the model hands it to the database, never nullable.</param>
/// <param name="StoreType">As the database calls it.</param>
internal sealed record BookColumn(string Name, Type Type, string StoreType)
{
    private static readonly HashSet<Type> Known =
    [
        typeof(string), typeof(long), typeof(int), typeof(short), typeof(double), typeof(bool), typeof(Guid), typeof(DateTime), typeof(DateOnly),
        typeof(TimeOnly), typeof(decimal), typeof(byte[]),
    ];

    /// <summary>Whether values of this type can be copied; a new one in the model must be added here and in <see cref="TableDigest"/>.</summary>
    public bool CanBeCopied => Known.Contains(Type);

    /// <summary>The value in the row that the reader stands on. Whole numbers come as <see cref="long"/>, instants in UTC and to the
    /// microsecond, since old books in a file have finer ones, which PostgreSQL does not keep; null is null.</summary>
    public object? Read(DbDataReader reader, int ordinal) => reader.IsDBNull(ordinal) ? null : Type switch
    {
        var type when type == typeof(string) => reader.GetString(ordinal),
        var type when type == typeof(long) => reader.GetInt64(ordinal),
        var type when type == typeof(int) => (long)reader.GetInt32(ordinal),
        var type when type == typeof(short) => (long)reader.GetInt16(ordinal),
        var type when type == typeof(double) => reader.GetDouble(ordinal),
        var type when type == typeof(bool) => reader.GetBoolean(ordinal),
        var type when type == typeof(Guid) => reader.GetGuid(ordinal),
        var type when type == typeof(DateTime) => Instants.ToMicrosecond(DateTime.SpecifyKind(reader.GetDateTime(ordinal), DateTimeKind.Utc)),
        var type when type == typeof(DateOnly) => reader.GetFieldValue<DateOnly>(ordinal),
        var type when type == typeof(TimeOnly) => reader.GetFieldValue<TimeOnly>(ordinal),
        var type when type == typeof(decimal) => reader.GetDecimal(ordinal),
        var type when type == typeof(byte[]) => reader.GetFieldValue<byte[]>(ordinal),
        _ => throw new NotSupportedException($"The column {Name} has values of {Type}, which cannot be copied."),
    };
}
