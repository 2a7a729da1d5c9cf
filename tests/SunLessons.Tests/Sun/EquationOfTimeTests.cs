using NodaTime;
using SunLessons.Places;
using SunLessons.Sun;

namespace SunLessons.Tests.Sun;

/// <summary>What everybody who reads dials knows of the equation of time, and its two causes.</summary>
public sealed class EquationOfTimeTests
{
    private static readonly Longitude Greenwich = Longitude.FromDegrees(0.0);

    // Common practice, no source: on 21 August the date correction is +3 minutes, to the nearest minute, year after year.
    [Fact]
    public void OnTheTwentyFirstOfAugustThreeMinutesAreAdded()
    {
        for (var year = 1990; year <= 2060; year++)
        {
            var correction = SolarEphemeris.EquationOfTimeAtNoon(new LocalDate(year, 8, 21), Greenwich).ToCorrection();
            Assert.Equal(3.0, Math.Round(correction.Minutes));
        }
    }

    // Cross-check worked with ERFA for the lessons: the four turning points of 2026, to a tenth of a minute.
    [Theory]
    [InlineData(2, 11, -14.2)]
    [InlineData(5, 13, 3.7)]
    [InlineData(5, 14, 3.7)]
    [InlineData(7, 26, -6.6)]
    [InlineData(11, 3, 16.4)]
    public void TheFourTurningPoints(int month, int day, double minutes) =>
        Assert.Equal(minutes, SolarEphemeris.EquationOfTimeAtNoon(new LocalDate(2026, month, day), Greenwich).Minutes, 0.05);

    // Cross-check of the lessons, N1 and N2: Darwin on 3 November at solar noon 12:30.2; St. John's on 14 May in daylight time 12:57.
    [Theory]
    [InlineData("Darwin", 11, 3, 12.0 * 60.0 + 30.2, 0.1)]
    [InlineData("St. John's", 5, 14, 12.0 * 60.0 + 57.0, 0.5)]
    public void ClockTimeOfSolarNoon(string town, int month, int day, double minutes, double tolerance)
    {
        var place = Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find(town)).Place;
        var clock = place.Zone.ClockAt(SunDay.For(place, new LocalDate(2026, month, day)).Transit.ToInstant());
        Assert.Equal(minutes, (clock.TimeOfDay - LocalTime.Midnight).ToDuration().TotalMinutes, tolerance);
    }

    // Cross-check of the lessons, N4: dial and clock agree on 15 April, 13 June, 1 September and 25 December.
    [Theory]
    [InlineData(4, 15)]
    [InlineData(6, 13)]
    [InlineData(9, 1)]
    [InlineData(12, 25)]
    public void FourDatesOfAgreement(int month, int day)
    {
        double On(int shift) => SolarEphemeris.EquationOfTimeAtNoon(new LocalDate(2026, month, day).PlusDays(shift), Greenwich).Seconds;
        Assert.True(On(-1) * On(1) < 0.0);
    }

    [Fact]
    public void NoonOfAPlaceIsItsStandardNoon()
    {
        var vigo = Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find("Vigo")).Place;
        var atElevenUtc = SolarEphemeris.At(SunInstant.FromInstant(Instant.FromUtc(2026, 7, 15, 11, 0))).EquationOfTime;
        Assert.Equal(atElevenUtc, SolarEphemeris.EquationOfTimeAtNoon(new LocalDate(2026, 7, 15), vigo));
    }

    // Mean noon comes earlier in the east: at 150 degrees east it is 02:00 at Greenwich (15 degrees to the hour: common practice, no source).
    [Fact]
    public void NoonOfALongitudeIsItsOwnMeanNoon()
    {
        var atTwoUtc = SolarEphemeris.At(SunInstant.FromInstant(Instant.FromUtc(2026, 12, 22, 2, 0))).EquationOfTime;
        var east = Longitude.FromDegrees(150.0);
        Assert.Equal(atTwoUtc.Seconds, SolarEphemeris.EquationOfTimeAtNoon(new LocalDate(2026, 12, 22), east).Seconds, 1e-6);

        // The day of a date at a bare longitude is then the one whose noon is 02:00 UTC of that date, not of the day before or after.
        var noon = SunDay.For(GeoPoint.FromDegrees(0.0, 150.0), new LocalDate(2026, 12, 22)).Transit.ToInstant();
        Assert.Equal(0.0, (noon - Instant.FromUtc(2026, 12, 22, 2, 0)).TotalMinutes, 3.0);
    }

    [Fact]
    public void TheTwoPartsSumToTheWhole()
    {
        for (var day = 0; day < 73000; day += 97)
        {
            var instant = SunInstant.FromUt1(2415021.0 + day, 60.0);
            var parts = EquationOfTimeParts.Of(instant);

            // 1e-9 s: rounding of the sum only.
            Assert.Equal(SolarEphemeris.At(instant).EquationOfTime.Seconds, parts.Whole.Seconds, 1e-9);
        }
    }

    // Of the Earth's own shape the two parts alone make the whole.
    [Fact]
    public void WithTheEarthsOwnShapeTheTwoPartsSumToTheWhole()
    {
        for (var day = 0; day < 73000; day += 7)
        {
            var instant = SunInstant.FromUt1(2415021.3 + day, 60.0);
            var parts = EquationOfTimeParts.Of(instant, OrbitShape.OfTheEarth(instant));

            // 1e-9 s: rounding of the sums only.
            Assert.Equal(SolarEphemeris.At(instant).EquationOfTime.Seconds, parts.Whole.Seconds, 1e-9);
        }
    }

    // What two bodies cannot hold is named: worst 2.6 s, as stated, and at least 1.5 s, or the word would be idle.
    [Fact]
    public void TwoBodiesAndWhatLiesBeyondThemSumToTheWhole()
    {
        var third = new Differences();
        for (var day = 0; day < 73000; day += 7)
        {
            var instant = SunInstant.FromUt1(2415021.3 + day, 60.0);
            var beyond = EquationOfTimeParts.BeyondTwoBodies(instant);
            var sum = EquationOfTimeParts.OfTwoBodies(instant, OrbitShape.OfTheEarth(instant)).Whole.Seconds + beyond.Seconds;
            Assert.Equal(SolarEphemeris.At(instant).EquationOfTime.Seconds, sum, 1e-9);
            third.Add(beyond.Seconds);
        }

        Assert.InRange(third.Worst, 1.5, 2.6);
    }

    // Each part has parameters of its own: the tilt's part does not heed a round orbit's perihelion, the orbit's part does not heed the tilt.
    [Fact]
    public void EachPartAnswersToItsOwnParameters()
    {
        var instant = SunInstant.FromUt1(2461100.3, 69.1);
        EquationOfTimeParts With(double eccentricity, double tilt, int day) => EquationOfTimeParts.Of(instant, OrbitShape.Of(eccentricity, Angle.FromDegrees(tilt), day));
        Assert.Equal(With(0.02, 10.0, 100).FromOrbit, With(0.02, 25.0, 100).FromOrbit);
        Assert.Equal(With(0.0, 20.0, 3).FromTilt, With(0.0, 20.0, 200).FromTilt);
        Assert.True(Math.Abs(With(0.04, 10.0, 100).FromOrbit.Seconds - With(0.02, 10.0, 100).FromOrbit.Seconds) > 60.0);
        Assert.True(Math.Abs(With(0.02, 10.0, 100).FromTilt.Seconds - With(0.02, 25.0, 100).FromTilt.Seconds) > 60.0);
    }

    // The stated accuracy of Kepler's two bodies: 2.6 s at worst, 0.73 s RMS, on every day of the two centuries.
    [Fact]
    public void TheEarthsOwnShapeGivesTheWholeButForMoonAndPlanets()
    {
        var differences = new Differences();
        for (var day = -36500; day < 36880; day++)
        {
            var instant = SunInstant.FromUt1(2451545.0 + day, 60.0);
            differences.Add(EquationOfTimeParts.OfTwoBodies(instant, OrbitShape.OfTheEarth(instant)).Whole.Seconds - SolarEphemeris.At(instant).EquationOfTime.Seconds);
        }

        Assert.True(differences.Worst < 2.6 && differences.Rms < 0.74, differences.ToString());
    }

    // Amplitudes as common practice gives them (no source): 7.65 min once a year by the orbit, 9.87 min twice a year by the tilt; and by closed
    // forms: 2e - e^3/4 radians (the equation of the centre's first term and a little) and asin(tan^2 (tilt/2)).
    [Fact]
    public void TheAmplitudesAreThoseOfTheClosedForms()
    {
        double orbit = 0.0, tilt = 0.0;
        for (var hour = 0; hour < 365 * 24; hour += 6)
        {
            var instant = SunInstant.FromUt1(2461042.0 + hour / 24.0, 69.1);
            var parts = EquationOfTimeParts.OfTwoBodies(instant, OrbitShape.OfTheEarth(instant));
            orbit = Math.Max(orbit, Math.Abs(parts.FromOrbit.Minutes));
            tilt = Math.Max(tilt, Math.Abs(parts.FromTilt.Minutes));
        }

        // 0.02: the lesson's two decimals; eccentricity and tilt shrink a little from one century to the next.
        Assert.Equal(7.65, orbit, 0.02);
        Assert.Equal(9.87, tilt, 0.02);
        Assert.Equal(Math.Asin(Math.Pow(Math.Tan(23.436 / 2.0 * Math.PI / 180.0), 2.0)) * 720.0 / Math.PI, tilt, 0.002);
        Assert.Equal(2.0 * 0.016698 * 720.0 / Math.PI, orbit, 0.002);
    }

    [Fact]
    public void WithoutOvalAndTiltDialAndClockAgreeButForMoonAndPlanets()
    {
        var instant = SunInstant.FromUt1(2461100.3, 69.1);
        Assert.Equal(0.0, EquationOfTimeParts.OfTwoBodies(instant, default).Whole.Seconds, 1e-9);
        Assert.Equal(EquationOfTimeParts.BeyondTwoBodies(instant).Seconds, EquationOfTimeParts.Of(instant, default).Whole.Seconds, 1e-9);
        var tilted = EquationOfTimeParts.OfTwoBodies(instant, OrbitShape.Of(0.0, Angle.FromDegrees(23.44), 3));
        Assert.Equal(0.0, tilted.FromOrbit.Seconds, 1e-9);
        Assert.True(Math.Abs(tilted.FromTilt.Seconds) > 60.0);
    }

    // The Earth's perihelion in 2026 was on 3 January (common practice: 2 to 5 January; no source). A shape given by that day is nearly the Earth's.
    [Fact]
    public void AShapeGivenByItsPerihelionDayIsTheEarthsWithinTheDaysRounding()
    {
        var instant = SunInstant.FromUt1(2461042.0 + 200.0, 69.1);
        var own = OrbitShape.OfTheEarth(instant);
        Assert.InRange(own.PerihelionDayOfYear, 2, 5);
        var given = OrbitShape.Of(own.Eccentricity, own.Tilt, own.PerihelionDayOfYear);

        // Half a day of perihelion is 0.5 degree x 2e in the orbit's part: 4 s.
        Assert.Equal(EquationOfTimeParts.Of(instant, own).FromOrbit.Seconds, EquationOfTimeParts.Of(instant, given).FromOrbit.Seconds, 4.1);
    }

    [Fact]
    public void OutsideTheCheckedYearsNothingIsAnswered()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => SolarEphemeris.At(SunInstant.FromUt1(2400000.5, 0.0)));
        Assert.StartsWith(
            "Julian date 2400000.5 lies outside the years 1900 to 2100 (2415020.5 to 2488434.5), for which the Sun's place was checked. Write a date of these years.",
            error.Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.06, 23.0, 3, "Eccentricity 0.06 is outside 0 to 0.05. The Earth's own is 0.0167.")]
    [InlineData(0.02, 31.0, 3, "Tilt 31 degrees is outside 0 to 30 degrees. The Earth's own is 23.44.")]
    [InlineData(0.02, 23.0, 0, "Perihelion day 0 is outside 1 to 366. Count from 1 January; the Earth's own is about 3.")]
    public void BadShapesGetOneSentence(double eccentricity, double tilt, int day, string message)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => OrbitShape.Of(eccentricity, Angle.FromDegrees(tilt), day));
        Assert.StartsWith(message, error.Message, StringComparison.Ordinal);
    }
}
