namespace SunLessons.Dials.Faces;

/// <summary>Where the shadow of the nodus falls, or why it falls nowhere.</summary>
public abstract record NodusShadow
{
    private NodusShadow()
    {
    }

    /// <summary>The shadow lies on the plane of the face.</summary>
    /// <param name="Point">The place, in nodus heights from the foot of the nodus.</param>
    public sealed record At(FacePoint Point) : NodusShadow;

    /// <summary>There is no shadow.</summary>
    /// <param name="Why">The reason, for programs.</param>
    /// <param name="Sentence">The reason, for people.</param>
    public sealed record None(NoReading Why, string Sentence) : NodusShadow;
}
