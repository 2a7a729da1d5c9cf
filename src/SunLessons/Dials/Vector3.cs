namespace SunLessons.Dials;

/// <summary>Three parts along three right-handed axes: X to the right (east), Y ahead (north), Z upwards.</summary>
internal readonly record struct Vector3(double X, double Y, double Z)
{
    public double Dot(Vector3 other) => X * other.X + Y * other.Y + Z * other.Z;

    public Vector3 Cross(Vector3 other) =>
        new(Y * other.Z - Z * other.Y, Z * other.X - X * other.Z, X * other.Y - Y * other.X);
}
