namespace SunLessons.Sun;

/// <summary>
/// Dawn and dusk of one kind of twilight between one lower transit of the Sun and the next: the moments at which its centre passes 6°, 12° or 18° below
/// a level horizon, geometric. Refraction does not enter: it is the convention.
/// </summary>
/// <remarks>
/// Measured against ERFA 2.0 at 120 random places and days between 89° S and 89° N, all three kinds: dawn and dusk where there is one within 0.1 s, of which 0.043 s is the rounding of
/// the reference, where the Sun does not skim the limit; the kind of answer always.
/// </remarks>
public abstract record TwilightEvents
{
    private TwilightEvents()
    {
    }

    /// <summary>An ordinary day.</summary>
    /// <param name="Dawn">When it grows light: the Sun passes the limit upwards.</param>
    /// <param name="Dusk">When it is dark: the Sun passes the limit downwards.</param>
    public sealed record DawnAndDusk(SunInstant Dawn, SunInstant Dusk) : TwilightEvents;

    /// <summary>It grows light and does not get dark again that day: the first of the light nights.</summary>
    /// <param name="Dawn">The Sun passes the limit upwards.</param>
    public sealed record DawnOnly(SunInstant Dawn) : TwilightEvents;

    /// <summary>It was light at the beginning and gets dark: the last of the light nights.</summary>
    /// <param name="Dusk">The Sun passes the limit downwards.</param>
    public sealed record DuskOnly(SunInstant Dusk) : TwilightEvents;

    /// <summary>The Sun never sinks to the limit: it is this light, or lighter, all round.</summary>
    /// <param name="Lowest">The least geometric altitude of its centre.</param>
    public sealed record NeverDarker(Altitude Lowest) : TwilightEvents;

    /// <summary>The Sun never comes up to the limit: it is darker all round.</summary>
    /// <param name="Highest">The greatest geometric altitude of its centre.</param>
    public sealed record NeverLighter(Altitude Highest) : TwilightEvents;

    /// <summary>The geometric altitude of the Sun's centre at the limit: −6°, −12° or −18°.</summary>
    public static Altitude LimitOf(TwilightKind kind) => Altitude.FromDegrees(kind switch
    {
        TwilightKind.Civil => -6.0,
        TwilightKind.Nautical => -12.0,
        _ => -18.0,
    });

    internal static TwilightEvents Around(SunInstant transit, GeoPoint place, TwilightKind kind)
    {
        var limit = LimitOf(kind);
        var passings = LevelPassings.Around(transit, place, limit);
        return (passings.Up, passings.Down) switch
        {
            ({ } dawn, { } dusk) => new DawnAndDusk(dawn, dusk),
            ({ } dawn, null) => new DawnOnly(dawn),
            (null, { } dusk) => new DuskOnly(dusk),
            _ when passings.StaysAbove(limit) => new NeverDarker(passings.Lowest),
            _ => new NeverLighter(passings.Highest),
        };
    }
}
