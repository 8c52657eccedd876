using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Words;

/// <summary>Reads a number as a keeper writes it, by the rule of the book.</summary>
internal static class DecimalText
{
    /// <summary>The number; <c>null</c>: it is none.</summary>
    public static double? Read(string text) => NumberText.Read(text);
}
