using NodaTime;
using SunLessons.Dials;
using SunLessons.Dials.Faces;
using SunLessons.Uncertainty;

namespace SunLessons.Readings;

/// <summary>One reading with its causes of doubt as numbers: which dial they make, and when that dial shows what was read.</summary>
internal sealed class ReadingDraw
{
    private readonly ReadingChain _chain;
    private readonly DialProfile _profile;
    private readonly FlatDial _dial;
    private readonly FaceDial? _face;
    private readonly FaceLayout? _layout;
    private readonly DialStance _stance;
    private readonly bool _faultless;
    private readonly Cause[] _causes;
    private readonly double _declinationPerDegree;
    private readonly double _equationMinutesPerDegree;

    public ReadingDraw(ReadingChain chain, DialProfile profile)
    {
        _chain = chain;
        _profile = profile;
        var (dial, fault) = DialAsSet.Of(profile, chain.Place, chain.Date);
        if (dial is null)
        {
            throw new ArgumentException(fault!.Sentence, nameof(profile));
        }

        _dial = dial.Dial.Flat;
        _face = dial.Dial.Face;
        _layout = _face is null ? null : FaceLayout.Of(_face.Face, _face.MadeFor);
        _stance = dial.Stance;
        _faultless = dial.IsFaultless;
        Inputs = [.. chain.Budget.Lines.Select(line => line.Quantity)];
        _causes = [.. Inputs.Select(input => CauseOf(input.Name))];

        // Per degree of hour angle, four minutes.
        var before = SunNow.At(chain.Instant - Duration.FromMinutes(20));
        var after = SunNow.At(chain.Instant + Duration.FromMinutes(20));
        _declinationPerDegree = (after.Declination.Degrees - before.Declination.Degrees) / 10.0;
        _equationMinutesPerDegree = (after.EquationOfTime.Minutes - before.EquationOfTime.Minutes) / 10.0;
    }

    private enum Cause
    {
        PlateReading,
        ShadowEdge,
        Engraving,
        StyleHeight,
        PlaceLatitude,
        NearestScale,
        Air,
        EastEdge,
        NorthEdge,
        Longitude,
        DateTable,
        Twist,
    }

    /// <summary>The causes as the first-order budget has them: names, sizes and shapes.</summary>
    public IReadOnlyList<Quantity> Inputs { get; }

    /// <summary>All steps together, minutes, for given values of the causes; not a number where such a dial never shows the reading.</summary>
    public double Minutes(ReadOnlySpan<double> values)
    {
        var later = HourAngleDegrees(values) - _chain.HourAngle.Degrees;
        var minutes = _chain.Budget.Value + later * (4.0 - _equationMinutesPerDegree);
        for (var i = 0; i < _causes.Length; i++)
        {
            minutes += _causes[i] switch
            {
                // 4 minutes to the degree; a place further east has an earlier clock.
                Cause.Longitude => -4.0 * values[i],
                Cause.DateTable => values[i],
                Cause.ShadowEdge => values[i] / _chain.Declination.Angle.Cos,
                _ => 0.0,
            };
        }

        return minutes;
    }

    /// <summary>The Sun's true hour angle, degrees, near the chain's own; not a number where there is none.</summary>
    public double HourAngleDegrees(ReadOnlySpan<double> values)
    {
        var made = Made(values);
        var start = _chain.HourAngle.Degrees;
        if (_faultless)
        {
            return start + (made.Shown.HourAngle.Angle - _chain.Shown.HourAngle.Angle).AroundZero().Degrees;
        }

        if (PlaneOf(made) is not { } plane)
        {
            return double.NaN;
        }

        var normal = made.Stance.ToWorld(plane);
        var sky = PolarFrame.At(made.Place);
        var (west, meridian, pole) = (normal.Dot(sky.West), normal.Dot(sky.Meridian), normal.Dot(sky.Pole));
        var middle = Math.Atan2(west, meridian);
        var size = Math.Sqrt(west * west + meridian * meridian);
        var (sinLatitude, cosLatitude) = (sky.Pole.Z, sky.Pole.Y);
        var lift = made.Air == 0.0 ? 0.0 : Math.Tan(made.Air * (Math.PI / 180.0));

        // normal · sun(H) = 0, with the declination and the air's lift at the hour angle of the round before; what is left shrinks some thousandfold a round.
        var h = start;
        for (var round = 0; round < 3; round++)
        {
            var d = (_chain.Declination.Degrees + _declinationPerDegree * (h - start)) * (Math.PI / 180.0);
            var (sin, cos) = Math.SinCos(d);
            var c = pole * sin;
            if (lift != 0.0)
            {
                // Lifted by x the Sun is sun cos x + (up − sin a sun) sin x / cos a; divided by cos x (1 − tan x tan a).
                var sinAltitude = sinLatitude * sin + cosLatitude * cos * Math.Cos(h * (Math.PI / 180.0));
                var cosAltitude = Math.Sqrt(Math.Max(1e-12, 1.0 - sinAltitude * sinAltitude));
                c += lift * normal.Z / (cosAltitude - lift * sinAltitude);
            }

            var half = Math.Acos(-c / (size * cos));
            if (!double.IsFinite(half))
            {
                return double.NaN;
            }

            var one = Near(middle + half, start);
            var other = Near(middle - half, start);
            h = Math.Abs(one - start) < Math.Abs(other - start) ? one : other;
        }

        // A plane has two half-planes: only one of them is the reading, the other lies twelve hours from it.
        return Math.Abs(h - start) < 90.0 ? h : double.NaN;
    }

    /// <summary>
    /// The normal, before the dial is set down, of the plane that holds the style and the line where the shadow lies: where the scale's own hour plane cuts the
    /// plate, moved by the engraver. Null where there is none.
    /// </summary>
    private Vector3? PlaneOf(in (FlatDial Dial, DialStance Stance, Latitude Place, DialTime Shown, double Engraving, double Air) made)
    {
        if (_face is not null)
        {
            return FaceInverse.PlaneOf(_face, _layout!, made.Shown);
        }

        if (ForwardModel.ScaleFault(made.Dial) is not null)
        {
            return null;
        }

        var scale = PolarFrame.At(made.Dial.ScaleLatitude);
        var (sinHour, cosHour) = Math.SinCos(made.Shown.HourAngle.Radians);
        var line = ForwardModel.ShadowOnPlate(ForwardModel.Style(made.Dial.ScaleLatitude, scale), scale.ToLocal(sinHour, cosHour, 0.0));
        var (sinMoved, cosMoved) = Math.SinCos(made.Engraving * (Math.PI / 180.0));
        var shadow = new Vector3(line.X * cosMoved + line.Y * sinMoved, line.Y * cosMoved - line.X * sinMoved, 0.0);
        return ForwardModel.Style(made.Dial.StyleLatitude).Cross(shadow);
    }

    /// <summary>The dial, place and reading that the causes make.</summary>
    internal (FlatDial Dial, DialStance Stance, Latitude Place, DialTime Shown, double Engraving, double Air) Made(ReadOnlySpan<double> values)
    {
        double reading = 0.0, engraving = 0.0, style = 0.0, place = 0.0, scale = 0.0, air = 0.0, twist = 0.0, east = 0.0, north = 0.0;
        for (var i = 0; i < _causes.Length; i++)
        {
            switch (_causes[i])
            {
                case Cause.PlateReading: reading += values[i]; break;
                case Cause.Engraving: engraving += values[i]; break;
                case Cause.StyleHeight: style += values[i]; break;
                case Cause.PlaceLatitude: place += values[i]; break;
                case Cause.NearestScale: scale += values[i]; break;
                case Cause.Air: air += values[i]; break;
                case Cause.Twist: twist += values[i]; break;
                case Cause.EastEdge: east += values[i]; break;
                case Cause.NorthEdge: north += values[i]; break;
                default: break;
            }
        }

        var withScale = _profile.Style == StyleSet.ForPlace ? 0.0 : scale;
        return (
            new FlatDial(Shifted(_dial.ScaleLatitude, scale), Shifted(_dial.StyleLatitude, style + withScale)),
            new DialStance(
                _stance.TwistClockwise + Angle.FromDegrees(twist),
                _stance.EastEdgeRaised + Angle.FromDegrees(east),
                _stance.NorthEdgeRaised + Angle.FromDegrees(north)),
            Shifted(_chain.Place.Latitude, place),
            DialTime.FromHours(_chain.Shown.Hours + reading / 60.0),
            engraving,
            air);
    }

    // Rounding to whole turns is several times faster than the library's remainder.
    private static double Near(double radians, double degrees)
    {
        var off = radians * (180.0 / Math.PI) - degrees;
        return degrees + (off - 360.0 * Math.Round(off / 360.0));
    }

    private static Latitude Shifted(Latitude latitude, double degrees) =>
        degrees == 0.0 ? latitude : Latitude.FromDegrees(Math.Clamp(latitude.Degrees + degrees, -90.0, 90.0));

    private static Cause CauseOf(string name) =>
        name == ReadingComponents.PlateReading.Name ? Cause.PlateReading
        : name == ReadingComponents.ShadowEdge.Name ? Cause.ShadowEdge
        : name == ReadingComponents.HourLineEngraving.Name ? Cause.Engraving
        : name == ReadingComponents.StyleHeight.Name ? Cause.StyleHeight
        : name == ReadingComponents.LatitudeOfPlace.Name ? Cause.PlaceLatitude
        : name == ReadingComponents.NearestScale(Angle.Zero).Name ? Cause.NearestScale
        : name == ReadingComponents.Refraction(Angle.Zero).Name ? Cause.Air
        : name == ReadingComponents.LevelEastWest.Name ? Cause.EastEdge
        : name == ReadingComponents.LevelNorthSouth.Name ? Cause.NorthEdge
        : name == ReadingComponents.LongitudeOfPlace.Name ? Cause.Longitude
        : name == ReadingComponents.DateTable.Name ? Cause.DateTable

        // Compass model, reading, iron, or a doubt of the noon line that the owner stated: all turn the dial.
        : Cause.Twist;
}
