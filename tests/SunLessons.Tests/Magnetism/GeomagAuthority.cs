using System.Globalization;

namespace SunLessons.Tests.Magnetism;

/// <summary>Reads the tables in authorities/geomag; see the README there.</summary>
internal static class GeomagAuthority
{
    public static IEnumerable<Row> Rows(string fileName)
    {
        var lines = File.ReadAllLines(Checkout.Authority("geomag", fileName)).Where(line => line.Length > 0 && line[0] != '#').ToArray();
        var header = lines[0].Split(',');
        return lines.Skip(1).Select(line => new Row(header.Zip(line.Split(',')).ToDictionary(p => p.First, p => p.Second)));
    }

    internal sealed record Row(IReadOnlyDictionary<string, string> Cells)
    {
        public string this[string column] => Cells[column];

        public double Number(string column) => double.Parse(Cells[column], CultureInfo.InvariantCulture);
    }
}
