using NodaTime;
using SunLessons.Dials;
using SunLessons.Magnetism;

namespace SunLessons.Readings;

/// <summary>How a dial stands that was set by its compass: the field model at place and date, or a measured declination.</summary>
internal static class SettingByCompass
{
    public static SettingAnswer At(GeoPoint place, LocalDate date, MagneticDeclination? measured, Func<MagneticDeclination, CompassSetting> setting)
    {
        if (measured is { } declination)
        {
            return Known(setting(declination), []);
        }

        // Noon of the date by universal time: a compass does not feel the hours.
        var north = MagneticField.At(place, date.At(LocalTime.Noon).InUtc().ToInstant());
        return north switch
        {
            NorthAnswer.Known { CompassUsable: true } known => Known(
                setting(known.Declination), [ReadingComponents.CompassModel(known)]) with
            {
                Caution = known.Zone == CompassZone.Caution ? known.Summary : null,
            },
            _ => new SettingAnswer.Unknown(north.Summary),
        };
    }

    private static SettingAnswer.Known Known(CompassSetting set, ComponentSize[] model)
    {
        var stance = new DialStance(set.Twist, Angle.Zero, Angle.Zero);
        return new SettingAnswer.Known(stance, StanceInWords.Of(stance))
        {
            DirectionDoubts = [ReadingComponents.CompassReading, ReadingComponents.LocalIron, .. model],
        };
    }
}
