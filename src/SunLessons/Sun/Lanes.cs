using System.Numerics;

namespace SunLessons.Sun;

/// <summary>Lays a column of a table out in the lanes of the processor's vectors; empty lanes at the end hold zeros.</summary>
internal static class Lanes
{
    /// <summary>Column <paramref name="column"/> of the rows, as many to a vector as the processor takes.</summary>
    public static Vector<double>[] Of(IReadOnlyList<double[]> rows, int column)
    {
        var vectors = new Vector<double>[(rows.Count + Vector<double>.Count - 1) / Vector<double>.Count];
        var lanes = new double[Vector<double>.Count];
        for (var v = 0; v < vectors.Length; v++)
        {
            for (var lane = 0; lane < lanes.Length; lane++)
            {
                var row = v * lanes.Length + lane;
                lanes[lane] = row < rows.Count ? rows[row][column] : 0.0;
            }

            vectors[v] = new Vector<double>(lanes);
        }

        return vectors;
    }
}
