namespace SunLessons.Logs;

/// <summary>Slips in how a log was kept that would look like faults of the dial. Each is a supposition to be looked into; none is corrected silently.</summary>
public enum LogSlipKind
{
    /// <summary>The clock was not put forward for daylight time: readings are fast by the daylight time while it is in force.</summary>
    DaylightTimeForgotten,

    /// <summary>The clock was put forward although no daylight time was in force: readings are slow by an hour then.</summary>
    DaylightTimeAddedTwice,

    /// <summary>The clock column holds universal time: readings are fast by the zone's offset.</summary>
    ClockInUniversalTime,

    /// <summary>East and west were exchanged in the place's longitude: readings are fast by eight minutes for each degree that it lies west.</summary>
    LongitudeSignLost,

    /// <summary>The dial column holds readings that were corrected for the date already: readings are slow by the equation of time.</summary>
    DateCorrectedAlready,

    /// <summary>They were corrected for the date with the wrong sign: readings are fast by the equation of time.</summary>
    DateCorrectedWrongWay,

    /// <summary>The dial column holds the time by the clock, all corrections made.</summary>
    CorrectedToTheClock,

    /// <summary>Morning and afternoon were exchanged, or the hours of the afternoon written 1 to 11.</summary>
    MorningForAfternoon,
}
