using System.Runtime.CompilerServices;

namespace SunLessons.Figures.Layout;

/// <summary>
/// The text of a drawing while it grows. A number in what is added is a coordinate and is written as <see cref="Hundredths"/> say, straight into the text:
/// as a text of its own each of some three thousand numbers would have to be made, kept and copied.
/// </summary>
internal sealed class DrawingText
{
    private char[] _signs = new char[1 << 15];

    public int Length { get; private set; }

    public void Add(string text)
    {
        Reserve(text.Length);
        text.CopyTo(0, _signs, Length, text.Length);
        Length += text.Length;
    }

    /// <summary>Adds a step of a path: a letter and two coordinates.</summary>
    public void Add(char pen, long x, long y)
    {
        Reserve(2 * Hundredths.Longest + 2);
        var at = Length;
        _signs[at++] = pen;
        at = Hundredths.Write(_signs, at, x);
        _signs[at++] = ' ';
        Length = Hundredths.Write(_signs, at, y);
    }

    public void Add(double coordinate)
    {
        Reserve(Hundredths.Longest);
        Length = Hundredths.Write(_signs, Length, Hundredths.Of(coordinate));
    }

#pragma warning disable CA1822, IDE0060 // the piece has written itself while it was made
    public void Add([InterpolatedStringHandlerArgument("")] Piece piece)
    {
    }
#pragma warning restore CA1822, IDE0060

    /// <summary>Takes back what was added since the text was as long as this.</summary>
    public void CutTo(int length) => Length = length;

    public override string ToString() => new(_signs, 0, Length);

    private void Reserve(int more)
    {
        if (_signs.Length - Length < more)
        {
            Array.Resize(ref _signs, Math.Max(_signs.Length * 2, Length + more));
        }
    }

    /// <summary>Writes the parts of an interpolated text one after another.</summary>
    [InterpolatedStringHandler]
#pragma warning disable CS9113 // the language hands over how much there is to write
    public readonly struct Piece(int literalLength, int formattedCount, DrawingText text)
#pragma warning restore CS9113
    {
        public void AppendLiteral(string value) => text.Add(value);

        public void AppendFormatted(string value) => text.Add(value);

        public void AppendFormatted(double value) => text.Add(value);
    }
}
