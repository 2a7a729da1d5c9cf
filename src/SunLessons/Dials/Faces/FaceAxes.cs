namespace SunLessons.Dials.Faces;

/// <summary>A face's own axes along east, north and up: right and up as seen by one who stands before it, and the outward normal.</summary>
internal readonly record struct FaceAxes(Vector3 Right, Vector3 Up, Vector3 Normal)
{
    public static FaceAxes Of(Face face)
    {
        var i = face.Inclination.Angle;
        var looks = face.Declination.LooksTowards.Angle;

        // The viewer looks against the normal, so his right hand points 90° anticlockwise (from above) of where the face looks.
        return new FaceAxes(
            new Vector3(-looks.Cos, looks.Sin, 0.0),
            new Vector3(-i.Cos * looks.Sin, -i.Cos * looks.Cos, i.Sin),
            new Vector3(i.Sin * looks.Sin, i.Sin * looks.Cos, i.Cos));
    }

    public Vector3 ToFace(Vector3 v) => new(v.Dot(Right), v.Dot(Up), v.Dot(Normal));

    public Vector3 FromFace(Vector3 v) => new(
        v.X * Right.X + v.Y * Up.X + v.Z * Normal.X,
        v.X * Right.Y + v.Y * Up.Y + v.Z * Normal.Y,
        v.X * Right.Z + v.Y * Up.Z + v.Z * Normal.Z);

    /// <summary>The sky of a latitude along the face's axes.</summary>
    public PolarFrame Sky(Latitude latitude)
    {
        var sky = PolarFrame.At(latitude);
        return new PolarFrame(ToFace(sky.Pole), ToFace(sky.Meridian), ToFace(sky.West));
    }
}
