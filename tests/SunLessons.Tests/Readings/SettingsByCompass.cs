using NodaTime;
using SunLessons.CivilTime;
using SunLessons.Dials;
using SunLessons.Magnetism;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Tests.Readings;

public class SettingsByCompass
{
    private static readonly LocalDate June = new(2026, 6, 21);

    [Fact]
    public void An_old_line_for_15_west_at_Vigo_today_twists_the_dial_14_degrees_clockwise()
    {
        // Offset of Vigo in 2025 1.2 W, moving 0.15 east a year (IGRF-14): 1.0 W in the middle of 2026, so 15 - 1.0 = 14.0 clockwise.
        var known = Known(new DialSetting.NeedleOnLine(new CompassLine(MagneticDeclination.FromDegrees(-15))), "Vigo", June);
        Assert.Equal(14.0, known.Stance.TwistClockwise.Degrees, 0.15);
        Assert.Equal(["reading the compass", "iron near the compass", "model of the Earth's field"], known.DirectionDoubts.Select(d => d.Name));

        var place = Found("Vigo");
        var profile = new DialProfile
        {
            ScaleLatitude = Latitude.FromDegrees(49),
            Setting = new DialSetting.NeedleOnLine(new CompassLine(MagneticDeclination.FromDegrees(-15))),
        };
        var chain = Assert.IsType<ClockReading.One>(ClockFromDial.Read(place, June, DialTime.FromHoursMinutes(11, 39.2), profile)).Chain;

        // The whole invented old dial, the twist from WMM2025 instead of IGRF-14 (0.1 degrees apart, 1.5 minutes each).
        Assert.Equal(14 * 60 + 36.7, chain.Clock.TimeOfDay.NanosecondOfDay / 6e10, 0.3);
        Assert.Empty(chain.TakenAsRight);
    }

    // Beggan 2022 (abstract): standard deviations of IGRF's errors 144 nT north and 136 nT east, 68.3 % within 87 and 73; first order in D = atan2(Y, X), worked out here.
    [Fact]
    public void Before_2025_the_models_doubt_is_the_larger_standard_deviation_and_says_whose_it_is()
    {
        var date = new LocalDate(1980, 6, 21);
        var vigo = Found("Vigo");
        var doubt = Known(new DialSetting.NeedleOnLine(new CompassLine(MagneticDeclination.FromDegrees(-15))), "Vigo", date).DirectionDoubts.Single(d => d.Name == "model of the Earth's field");
        var field = Assert.IsType<NorthAnswer.Known>(MagneticField.At(vigo.Point, date.At(LocalTime.Noon).InUtc().ToInstant())).Field;
        var (x, y) = (field.NorthNanotesla, field.EastNanotesla);
        double Carried(double north, double east) => Math.Sqrt(x * east * x * east + y * north * y * north) / (x * x + y * y) * 180.0 / Math.PI;
        Assert.Equal(Carried(144.0, 136.0), doubt.StandardUncertainty, 1e-9);
        Assert.True(doubt.StandardUncertainty > 1.5 * Carried(87.0, 73.0));
        Assert.StartsWith("One standard deviation of the magnetic declination by IGRF-14 at this place: Beggan 2022", doubt.Source, StringComparison.Ordinal);
        Assert.EndsWith("standard deviation, for budgets, 144 and 136 nT.", doubt.Source, StringComparison.Ordinal);

        // From 2025 on there is one published size, and it is used.
        var now = Known(new DialSetting.NeedleOnLine(new CompassLine(MagneticDeclination.FromDegrees(-15))), "Vigo", June).DirectionDoubts.Single(d => d.Name == "model of the Earth's field");
        Assert.Contains("by WMM2025 at this place: error model of WMM2025", now.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_corrected_to_todays_offset_needs_no_setting_step()
    {
        var vigo = Found("Vigo");
        var today = Assert.IsType<NorthAnswer.Known>(MagneticField.At(vigo.Point, June.At(LocalTime.Noon).InUtc().ToInstant())).Declination;
        var profile = new DialProfile { Setting = new DialSetting.NeedleOnLine(new CompassLine(today)) };
        var chain = Assert.IsType<ClockReading.One>(ClockFromDial.Read(vigo, June, DialTime.FromHours(10), profile)).Chain;
        Assert.Equal(0.0, chain[StepName.Setting].Amount.Minutes, 1e-6);
        Assert.Equal("add 0.0 min: the noon line points to true north", chain[StepName.Setting].InWords);
    }

    [Fact]
    public void A_card_read_at_its_mark_gives_the_noon_lines_azimuth()
    {
        // Dunedin, needle bearing 340 with the offset 26.4 E: true 6.4.
        var compass = new Compass(CompassBuild.CardReadAtLubberLine, CompassGraduation.Clockwise);
        var setting = new DialSetting.CompassShowed(compass, CompassReading.FromDegrees(340)) { MeasuredDeclination = MagneticDeclination.FromDegrees(26.4) };
        var known = Known(setting, "Dunedin", June);
        Assert.Equal(6.4, known.Stance.TwistClockwise.Degrees, 1e-9);
        Assert.Equal("the noon line points 6.4 degrees clockwise (east) of true north", known.InWords);
        Assert.Equal(["reading the compass", "iron near the compass"], known.DirectionDoubts.Select(d => d.Name));
    }

    [Fact]
    public void Without_a_model_for_the_date_or_with_no_field_to_speak_of_there_is_no_clock_time()
    {
        var bare = new DialProfile { Setting = new DialSetting.NeedleOnLine(new CompassLine(MagneticDeclination.FromDegrees(0))) };
        var late = Assert.IsType<ClockReading.None>(ClockFromDial.Read(Found("Vigo"), new LocalDate(2031, 6, 21), DialTime.FromHours(12), bare));
        Assert.Equal(NoClock.SettingUnknown, late.Why);
        Assert.StartsWith("WMM2025 was valid until 2030.0 and cannot answer for 2031.5: ", late.Sentence);

        // Near the northern dip pole the needle has nothing to turn it.
        var blackout = Assert.IsType<ClockReading.None>(ClockFromDial.Read(
            GeoPoint.FromDegrees(85.8, 139.3), CivilZones.Get("UTC"), June, DialTime.FromHours(12), bare));
        Assert.Equal(NoClock.SettingUnknown, blackout.Why);
        Assert.StartsWith("No compass can be used here: ", blackout.Sentence);

        // A weak field is used, with its caution.
        var weak = Assert.IsType<ClockReading.One>(ClockFromDial.Read(
            GeoPoint.FromDegrees(78, -68), CivilZones.Get("UTC-4"), June, DialTime.FromHours(12), bare)).Chain;
        Assert.Contains("Use with caution", weak.Caution, StringComparison.Ordinal);
    }

    [Fact]
    public void A_year_for_which_the_Sun_is_not_known_is_refused_in_one_sentence()
    {
        var none = Assert.IsType<ClockReading.None>(ClockFromDial.Read(Found("Vigo"), new LocalDate(1880, 6, 21), DialTime.FromHours(12)));
        Assert.Equal(NoClock.OutsideYears, none.Why);
        Assert.Equal(
            "Date 21 June 1880 is outside the years 1900 to 2100, for which the Sun's place is known here; write a date of these years.", none.Sentence);
    }

    [Fact]
    public void Tilts_are_named_in_words()
    {
        var known = Known(new DialSetting.Standing(DialStance.FromDegrees(-3, 1.5, -0.5)), "Vigo", June);
        Assert.Equal(
            "the noon line points 3.0 degrees anticlockwise (west) of true north, its east edge 1.5 degrees too high, its north edge 0.5 degrees too low",
            known.InWords);
    }

    private static SettingAnswer.Known Known(DialSetting setting, string town, LocalDate date) =>
        Assert.IsType<SettingAnswer.Known>(setting.At(Found(town).Point, date));

    private static Place Found(string town) => Assert.IsType<PlaceAnswer.Found>(Gazetteer.Find(town)).Place;
}
