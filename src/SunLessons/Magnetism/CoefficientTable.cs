using System.Globalization;

namespace SunLessons.Magnetism;

/// <summary>
/// Gauss coefficients as read from a table: a column a main-field epoch (nT), a last column of secular variation (nT a year).
/// </summary>
internal sealed class CoefficientTable
{
    public CoefficientTable(double[] epochYears, IReadOnlyList<Row> rows)
    {
        EpochYears = epochYears;
        Rows = rows;
    }

    /// <summary>Epochs of the main-field columns, decimal years, ascending.</summary>
    public double[] EpochYears { get; }

    /// <summary>One entry a coefficient.</summary>
    public IReadOnlyList<Row> Rows { get; }

    /// <summary>Reads one of the tables under Tables/Magnetism.</summary>
    public static CoefficientTable Read(string fileName)
    {
        var assembly = typeof(CoefficientTable).Assembly;
        using var stream = assembly.GetManifestResourceStream("SunLessons.Tables.Magnetism." + fileName)
            ?? throw new InvalidOperationException($"The table {fileName} is not embedded in this assembly; rebuild SunLessons with Tables/Magnetism.");
        using var reader = new StreamReader(stream);

        // gh,n,m,<epoch>,...,SV<from>-<to>
        var header = reader.ReadLine()!.Split(',');
        var epochs = header[3..^1].Select(Number).ToArray();
        var rows = new List<Row>();
        while (reader.ReadLine() is { Length: > 0 } line)
        {
            var cells = line.Split(',');
            rows.Add(new Row(
                cells[0] == "h",
                int.Parse(cells[1], CultureInfo.InvariantCulture),
                int.Parse(cells[2], CultureInfo.InvariantCulture),
                cells[3..^1].Select(Number).ToArray(),
                Number(cells[^1])));
        }

        return new CoefficientTable(epochs, rows);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>One Gauss coefficient: its letter, degree n, order m, values by epoch and secular variation.</summary>
    internal sealed record Row(bool IsH, int Degree, int Order, double[] MainNanotesla, double RateNanoteslaPerYear);
}
