using SunLessons.Cells.Checks;

namespace SunLessons.Cells;

/// <summary>
/// The slips that people make with dials, clocks and compasses, as far as lessons have met them; cells write their names alone. The names
/// are what a learner reads. A lesson that knows another one makes it with <see cref="Say.OwnSlip"/>.
/// </summary>
public static class UsualSlips
{
    /// <summary>Length over height in place of height over length.</summary>
    public static SlipKind TangentUpsideDown { get; } = new("W1", "the tangent upside down");

    /// <summary>Sine in place of cosine, or the other way round.</summary>
    public static SlipKind SineForCosine { get; } = new("W2", "sine and cosine exchanged");

    /// <summary>Degrees given to a function that wants radians.</summary>
    public static SlipKind DegreesAsRadians { get; } = new("W3", "degrees taken for radians");

    /// <summary>The complement of the latitude in its place.</summary>
    public static SlipKind NinetyMinusLatitude { get; } = new("W4", "90 degrees less the latitude taken for the latitude");

    /// <summary>The longitude as a number without its side.</summary>
    public static SlipKind LongitudeSignLost { get; } = new("W5", "the sign of the longitude lost");

    /// <summary>West counted as plus.</summary>
    public static SlipKind WestTakenAsPlus { get; } = new("W6", "west taken as plus");

    /// <summary>5:45 used as 5.</summary>
    public static SlipKind PartHourDropped { get; } = new("W7", "the part of an hour in the zone dropped");

    /// <summary>5:45 used as 6.</summary>
    public static SlipKind ZoneRounded { get; } = new("W7b", "the zone rounded to a whole hour");

    /// <summary>Daylight time is kept, and its hour was left out.</summary>
    public static SlipKind DaylightHourForgotten { get; } = new("W8", "the hour of daylight time forgotten");

    /// <summary>The hour of daylight time was added twice.</summary>
    public static SlipKind DaylightHourTwice { get; } = new("W8b", "the hour of daylight time counted twice");

    /// <summary>The equation of time added where it has to be taken away, or the other way round.</summary>
    public static SlipKind DateStepWrongWay { get; } = new("W9", "the date step with the wrong sign");

    /// <summary>The equation of time left out.</summary>
    public static SlipKind DateStepLeftOut { get; } = new("W10", "the date step left out");

    /// <summary>The compass offset left out.</summary>
    public static SlipKind NeedleTakenForNorth { get; } = new("W11", "the needle taken for true north");

    /// <summary>The compass offset added where it has to be taken away, or the other way round.</summary>
    public static SlipKind OffsetWrongWay { get; } = new("W12", "the compass offset with the wrong sign");

    /// <summary>June taken for December.</summary>
    public static SlipKind SeasonsExchanged { get; } = new("W13", "the seasons exchanged");

    /// <summary>The hour angle of the morning taken for that of the afternoon.</summary>
    public static SlipKind MorningForAfternoon { get; } = new("W14", "morning and afternoon exchanged");

    /// <summary>One minute for a degree in place of four.</summary>
    public static SlipKind DegreesAsMinutes { get; } = new("W15", "degrees left as degrees");

    /// <summary>Fifteen minutes for a degree in place of four.</summary>
    public static SlipKind DegreesAsHours { get; } = new("W15b", "15 used for each degree");

    /// <summary>Uncertainties added without squaring.</summary>
    public static SlipKind PlainSum { get; } = new("W16", "a plain sum in the place of squares");

    /// <summary>A dial's time taken for a clock's, or the other way round.</summary>
    public static SlipKind SolarAndClockExchanged { get; } = new("W17", "the dial's time and the clock's time exchanged");

    /// <summary>The direction of a shadow taken for that of the Sun.</summary>
    public static SlipKind ShadowForSun { get; } = new("W18", "the shadow's direction taken for the Sun's");

    /// <summary>The latitude as a number without its side.</summary>
    public static SlipKind LatitudeSignLost { get; } = new("W19", "the sign of the latitude lost");

    /// <summary>Four minutes for each degree by which a dial is turned.</summary>
    public static SlipKind FourMinutesADegree { get; } = new("W20", "4 minutes taken for each degree");

    /// <summary>The step for the longitude left out.</summary>
    public static SlipKind LongitudeStepLeftOut { get; } = new("W21", "the longitude step left out");

    /// <summary>Hour lines at equal angles.</summary>
    public static SlipKind EqualSpacing { get; } = new("W22", "equal spacing");

    /// <summary>A step added where it has to be taken away, or the other way round.</summary>
    public static SlipKind StepWrongWay { get; } = new("W23", "plus and minus exchanged");

    /// <summary>5:45 used as 5.45.</summary>
    public static SlipKind MinutesAsDecimals { get; } = new("W24", "minutes read as decimals of an hour");

    /// <summary>An hour added where no daylight time is kept.</summary>
    public static SlipKind DaylightHourWithoutCause { get; } = new("W25", "an hour added where no daylight time is kept");

    /// <summary>A whole angle or amount used where the difference of two counts.</summary>
    public static SlipKind WholeForDifference { get; } = new("W26", "the whole taken for the difference");

    /// <summary>One end of a range given for its width.</summary>
    public static SlipKind OneEndOnly { get; } = new("W27", "one end only");

    /// <summary>Two amounts added where one has to be taken from the other.</summary>
    public static SlipKind SumForDifference { get; } = new("W28", "the sum taken for the difference");

    /// <summary>Two amounts taken from each other where they have to be added.</summary>
    public static SlipKind DifferenceForSum { get; } = new("W29", "the difference taken for the sum");

    /// <summary>A yearly change left out.</summary>
    public static SlipKind ChangeLeftOut { get; } = new("W30", "the change over the years left out");

    /// <summary>A number of degrees given for a length.</summary>
    public static SlipKind DegreesAsLength { get; } = new("W31", "degrees taken for millimetres");

    /// <summary>The error of another hour or day of the same dial.</summary>
    public static SlipKind AnotherMoment { get; } = new("W32", "the number of another moment");

    /// <summary>The sine of an angle where its tangent is needed, or the other way round.</summary>
    public static SlipKind SineForTangent { get; } = new("W33", "sine and tangent exchanged");

    /// <summary>Seconds given for minutes, or the other way round.</summary>
    public static SlipKind MinutesForSeconds { get; } = new("W34", "minutes and seconds exchanged");
}
