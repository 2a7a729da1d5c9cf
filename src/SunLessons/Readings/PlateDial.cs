using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Readings;

/// <summary>A dial whose reading is corrected: a level plate, or a face that leans or stands upright. Both are the same forward model.</summary>
/// <param name="Flat">The level plate's design; its latitudes are those of the face too.</param>
/// <param name="Face">The face; null for a level plate.</param>
internal readonly record struct PlateDial(FlatDial Flat, FaceDial? Face)
{
    public bool IsLevel => Face is null;

    /// <summary>Why there is no scale that could be read in any light; null when there is one.</summary>
    public DialReading.Nothing? Fault => IsLevel ? ForwardModel.ScaleFault(Flat) : null;

    /// <summary>What it shows, or null when it shows nothing.</summary>
    public DialTime? Shown(DialStance stance, LocalDirection sun) => Read(stance, sun).Time;

    /// <summary>What it shows, or why it shows nothing.</summary>
    public (DialTime? Time, DialReading.Nothing? Nothing) Read(DialStance stance, LocalDirection sun) => Face is { } face
        ? FaceModel.Read(face, stance, sun) switch
        {
            FaceReading.Shows shows => (shows.Time, null),
            FaceReading.Nothing nothing => (null, new DialReading.Nothing(nothing.Why, nothing.Sentence)),
            _ => throw new InvalidOperationException("A face shows something or nothing."),
        }
        : ForwardModel.Read(Flat, stance, sun) switch
        {
            DialReading.Shows shows => (shows.Time, null),
            DialReading.Nothing nothing => (null, nothing),
            _ => throw new InvalidOperationException("A dial shows something or nothing."),
        };

    /// <summary>Every true hour angle that fits a reading.</summary>
    public IReadOnlyList<HourAngle> HourAngles(DialStance stance, Latitude place, SolarDeclination declination, DialTime shown) => Face is { } face
        ? FaceInverse.HourAngles(face, stance, place, declination, shown)
        : InverseModel.HourAngles(Flat, stance, place, declination, shown);
}
