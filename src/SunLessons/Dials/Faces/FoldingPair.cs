namespace SunLessons.Dials.Faces;

/// <summary>
/// Two plates hinged at a right angle with one string between them for a style: the flat one level, the upright one at its poleward edge, looking to the
/// equator. Immutable.
/// </summary>
/// <remarks>
/// <para>Both plates tell the hour plane that holds string and Sun. So while the string fits the scales they agree, and agree even when the whole pair is
/// twisted, tipped or in the wrong latitude: agreement does not prove that it is set right. They part when the string does not fit the scales: by
/// the wrong hole, or a stretched string. A sagging string and a hinge that is not square are left out.</para>
/// <para>Each scale is taken as drawn about the hole that the string runs through, so a wrong latitude of the string is a wrong angle over each plate:
/// too steep on one by as much as too flat on the other.</para>
/// </remarks>
/// <param name="MadeFor">The latitude of the scales, north positive, neither the equator nor a pole.</param>
public sealed record FoldingPair(Latitude MadeFor)
{
    /// <summary>The latitude for which the string is hung; null means that of the scales.</summary>
    public Latitude? StringFor { get; init; }

    /// <summary>The flat plate as a dial.</summary>
    public FaceDial Flat => new(Face.Horizontal, MadeFor) { StyleTooSteep = Excess };

    /// <summary>The upright plate as a dial.</summary>
    public FaceDial Upright => new(MadeFor.IsSouthern ? Face.VerticalNorth : Face.VerticalSouth, MadeFor) { StyleTooSteep = -Excess };

    /// <summary>
    /// How high over the hinge the string must leave the upright plate, in distances of its hole in the flat plate from the hinge: the tangent of its latitude.
    /// </summary>
    public double HoleHeight => Math.Abs((StringFor ?? MadeFor).Angle.Tan);

    private Angle Excess => StringFor is { } other
        ? Angle.FromDegrees((MadeFor.IsSouthern ? -1.0 : 1.0) * (other.Degrees - MadeFor.Degrees))
        : Angle.Zero;

    /// <summary>What both plates show.</summary>
    /// <param name="stance">How the pair stands as one solid thing.</param>
    /// <param name="place">The latitude of the place.</param>
    /// <param name="hourAngle">The Sun's hour angle.</param>
    /// <param name="declination">The Sun's declination.</param>
    public FoldingReading Read(DialStance stance, Latitude place, HourAngle hourAngle, SolarDeclination declination) => new(
        FaceModel.Read(Flat, stance, place, hourAngle, declination),
        FaceModel.Read(Upright, stance, place, hourAngle, declination));
}
