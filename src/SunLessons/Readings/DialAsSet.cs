using NodaTime;
using SunLessons.Dials;

namespace SunLessons.Readings;

/// <summary>A profile at its place and date: design and stance settled.</summary>
internal sealed record DialAsSet(DialProfile Profile, PlateDial Dial, SettingAnswer.Known Setting)
{
    public DialStance Stance => Setting.Stance;

    /// <summary>Nothing is known that would move a reading: it is the Sun's own hour, whatever the kind of dial.</summary>
    public bool IsFaultless => Dial.IsLevel && Profile is { ScaleLatitude: null, NearestOfScalesApart: null } && !Setting.IsMeasured;

    /// <summary>The dial, or why there is none: the compass cannot be used, or there is no scale to read.</summary>
    public static (DialAsSet? Dial, ClockReading.None? Fault) Of(DialProfile profile, GeoPoint place, LocalDate date)
    {
        if (profile.Face is not null && profile.Setting is not (DialSetting.TakenAsRight or DialSetting.Standing))
        {
            return (null, new ClockReading.None(
                NoClock.SettingUnknown,
                "A noon line and a compass set a plate that lies level; for a face that does not, give how it stands by twist and tilts, or leave it out."));
        }

        if (profile.Setting.At(place, date) is not SettingAnswer.Known setting)
        {
            return (null, new ClockReading.None(NoClock.SettingUnknown, ((SettingAnswer.Unknown)profile.Setting.At(place, date)).Sentence));
        }

        var dial = new DialAsSet(profile, profile.PlateAt(place.Latitude), setting);
        return !dial.IsFaultless && dial.Dial.Fault is { } fault
            ? (null, new ClockReading.None(NoClock.DialHasNoScale, fault.Sentence))
            : (dial, null);
    }
}
