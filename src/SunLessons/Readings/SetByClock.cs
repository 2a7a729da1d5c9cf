using System.Globalization;
using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Places;

namespace SunLessons.Readings;

/// <summary>How to set a dial by a clock, without a compass: lay it level and turn it until it shows what a dial that stands right shows then.</summary>
public abstract record SetByClock
{
    // Minutes of reading for a degree of twist below which the shadow hardly answers to turning; 2 minutes would then be worth 4 degrees.
    private const double HardlyMinutesPerDegree = 0.5;

    private SetByClock()
    {
    }

    /// <summary>One sentence for the person with the dial.</summary>
    public abstract string Sentence { get; }

    /// <summary>Turn the level dial until it shows this.</summary>
    /// <param name="Clock">The clock time at which to do it.</param>
    /// <param name="TurnUntil">What the dial shows when its noon line points true north; the error of a scale for another latitude is in it.</param>
    /// <param name="MinutesPerDegree">How the reading moves for one degree of twist clockwise at that moment, minutes, signed.</param>
    /// <param name="TwistStandardUncertainty">
    /// How well the direction is found: reading the plate, the shadow's edge and the clock (<see cref="ReadingComponents"/>) through that slope.
    /// </param>
    /// <param name="OtherTwists">
    /// Other directions, clockwise from true north, in which the dial shows the same: so begin with the noon line roughly north. Often none.
    /// </param>
    public sealed record Turn(
        LocalDateTime Clock, DialTime TurnUntil, double MinutesPerDegree, Angle TwistStandardUncertainty, IReadOnlyList<Angle> OtherTwists) : SetByClock
    {
        /// <summary>Whether the shadow hardly moves when the dial is turned, so that another hour should be chosen.</summary>
        public bool HardlyAnswers => Math.Abs(MinutesPerDegree) < HardlyMinutesPerDegree;

        /// <inheritdoc/>
        public override string Sentence
        {
            get
            {
                var others = OtherTwists.Count == 0
                    ? ""
                    : $" Begin with the noon line roughly north: it shows the same when turned {string.Join(" or ", OtherTwists.Select(InWords))}.";
                var weak = HardlyAnswers
                    ? $" Choose another hour if you can: now a degree of turning moves the reading by {Number(Math.Abs(MinutesPerDegree))} min only."
                    : "";
                return $"At {ReadingChain.TimeText(Clock)} on {ReadingChain.DateText(Clock.Date)} lay the dial level and turn it until it shows {TurnUntil}: "
                    + $"then its noon line points true north, give or take {Number(2.0 * TwistStandardUncertainty.Degrees)} degrees.{others}{weak}";
            }
        }

        private static string InWords(Angle twist) =>
            $"{Number(Math.Abs(twist.Degrees))} degrees {(twist.Degrees > 0.0 ? "clockwise" : "anticlockwise")}";

        private static string Number(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);
    }

    /// <summary>It cannot be done then.</summary>
    /// <param name="Reason">Why, and what to do instead.</param>
    public sealed record Impossible(string Reason) : SetByClock
    {
        /// <inheritdoc/>
        public override string Sentence => Reason;
    }

    /// <summary>How to set a dial at a named place; as the other overload.</summary>
    public static SetByClock At(Place place, LocalDateTime clock, DialProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(place);
        return At(place.Point, place.Zone, clock, profile);
    }

    /// <summary>How to set a dial when the clock shows a time.</summary>
    /// <param name="place">Where the dial stands.</param>
    /// <param name="zone">The zone whose clock is used.</param>
    /// <param name="clock">What the clock shows, with its date.</param>
    /// <param name="profile">The dial's scale and style; how it stands now does not matter. Null for a dial made for the place.</param>
    public static SetByClock At(GeoPoint place, CivilZone zone, LocalDateTime clock, DialProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return zone.InstantOf(clock) is ClockAnswer.One one ? At(place, zone, one.Instant, profile) : new Impossible(zone.InstantOf(clock).Message);
    }

    /// <summary>How to set a dial at an instant: for a clock time that the clock shows twice.</summary>
    public static SetByClock At(GeoPoint place, CivilZone zone, Instant instant, DialProfile? profile = null)
    {
        ArgumentNullException.ThrowIfNull(zone);

        if (profile?.Face is not null)
        {
            return new Impossible("Only a plate that lies level is set by turning it; a face that leans or stands upright is set where it is fixed.");
        }

        // Level and true, whatever the profile says of how it stands now; a made-for-the-place dial as a real plate, not as "faultless".
        var wanted = (profile ?? DialProfile.Faultless) with
        {
            ScaleLatitude = profile?.ScaleLatitude ?? place.Latitude,
            Setting = new DialSetting.TakenAsRight(),
        };
        return DialFromClock.At(place, zone, instant, wanted) switch
        {
            DialForecast.One forecast => Turned(place, zone.ClockAt(instant), wanted.DialAt(place.Latitude), forecast.Chain),
            DialForecast.None none => new Impossible(none.Sentence),
            _ => throw new InvalidOperationException("An instant has one forecast or none."),
        };
    }

    private static Turn Turned(GeoPoint place, LocalDateTime clock, FlatDial dial, ReadingChain chain)
    {
        double? Off(double twist) =>
            ForwardModel.Read(dial, DialStance.FromDegrees(twist), place.Latitude, chain.HourAngle, chain.Declination) is DialReading.Shows shows
                ? (shows.Time.HourAngle.Angle - chain.Shown.HourAngle.Angle).AroundZero().TimeMinutes
                : null;

        // A level plate stays lit when it is turned, so both sides are there.
        const double Small = 1e-3;
        var slope = (Off(Small)!.Value - Off(-Small)!.Value) / (2.0 * Small);
        var doubt = Math.Sqrt(
            Square(ReadingComponents.PlateReading.StandardUncertainty)
            + Square(ReadingComponents.ShadowEdge.StandardUncertainty / chain.Declination.Angle.Cos)
            + Square(ReadingComponents.Clock.StandardUncertainty));

        // Beyond a quarter turn the first-order doubt means nothing more than "unknown".
        var twistDoubt = Math.Min(90.0, slope == 0.0 ? 90.0 : doubt / Math.Abs(slope));
        return new Turn(clock, chain.Shown, slope, Angle.FromDegrees(twistDoubt), Others(Off));
    }

    private static List<Angle> Others(Func<double, double?> off)
    {
        var found = new List<Angle>();
        for (var low = -180.0; low < 180.0; low += 0.5)
        {
            double a = off(low)!.Value, b = off(low + 0.5)!.Value;

            // A jump from +12 h to -12 h is no crossing.
            if (a > 0.0 == b > 0.0 || Math.Abs(a - b) > 360.0)
            {
                continue;
            }

            var (left, right) = (low, low + 0.5);
            for (var i = 0; i < 40; i++)
            {
                var middle = (left + right) / 2.0;
                (left, right) = off(middle)!.Value > 0.0 == a > 0.0 ? (middle, right) : (left, middle);
            }

            if (Math.Abs(left) > 0.05)
            {
                found.Add(Angle.FromDegrees(left));
            }
        }

        return found;
    }

    private static double Square(double x) => x * x;
}
