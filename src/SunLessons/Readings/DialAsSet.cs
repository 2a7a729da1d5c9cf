using NodaTime;
using SunLessons.Dials;

namespace SunLessons.Readings;

/// <summary>A profile at its place and date: design and stance settled.</summary>
internal sealed record DialAsSet(DialProfile Profile, FlatDial Dial, SettingAnswer.Known Setting)
{
    public DialStance Stance => Setting.Stance;

    /// <summary>Nothing is known that would move a reading: it is the Sun's own hour, whatever the kind of dial.</summary>
    public bool IsFaultless => Profile.ScaleLatitude is null && !Setting.IsMeasured;

    /// <summary>The dial, or why there is none: the compass cannot be used, or there is no scale to read.</summary>
    public static (DialAsSet? Dial, ClockReading.None? Fault) Of(DialProfile profile, GeoPoint place, LocalDate date)
    {
        if (profile.Setting.At(place, date) is not SettingAnswer.Known setting)
        {
            return (null, new ClockReading.None(NoClock.SettingUnknown, ((SettingAnswer.Unknown)profile.Setting.At(place, date)).Sentence));
        }

        var dial = new DialAsSet(profile, profile.DialAt(place.Latitude), setting);
        return !dial.IsFaultless && ForwardModel.ScaleFault(dial.Dial) is { } fault
            ? (null, new ClockReading.None(NoClock.DialHasNoScale, fault.Sentence))
            : (dial, null);
    }
}
