using System.Globalization;
using SunLessons.Tests.CivilTime;

namespace SunLessons.Tests.Sun;

/// <summary>A comma-separated table under authorities/sun, its columns by name.</summary>
internal sealed class ErfaTable
{
    private readonly string[] _columns;

    private ErfaTable(string[] columns, IReadOnlyList<string[]> rows) => (_columns, Rows) = (columns, rows);

    public IReadOnlyList<string[]> Rows { get; }

    public static ErfaTable Read(string file)
    {
        var lines = Authorities.Lines("sun", file);
        return new ErfaTable(lines[0].Split(','), [.. lines.Skip(1).Where(l => l.Length > 0).Select(l => l.Split(','))]);
    }

    public string Text(string[] row, string column) => row[Array.IndexOf(_columns, column)];

    public double Number(string[] row, string column) => double.Parse(Text(row, column), CultureInfo.InvariantCulture);
}

/// <summary>The worst and the root mean square of differences.</summary>
internal sealed class Differences
{
    private double _squares;

    public int Count { get; private set; }

    public double Worst { get; private set; }

    public double Rms => Math.Sqrt(_squares / Count);

    public void Add(double difference)
    {
        Count++;
        Worst = Math.Max(Worst, Math.Abs(difference));
        _squares += difference * difference;
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"worst {Worst:0.#######} RMS {Rms:0.#######} of {Count}");
}
