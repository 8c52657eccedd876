using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Words;

public sealed class CompleteText
{
    public IReadOnlyList<Completion> Run(string text, int caret) => throw new NotSupportedException("To come.");
}
