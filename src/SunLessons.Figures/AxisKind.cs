namespace SunLessons.Figures;

/// <summary>How the numbers of an axis are read.</summary>
public enum AxisKind
{
    /// <summary>Plain numbers in the axis' unit.</summary>
    Number,

    /// <summary>Hours of a day, written as clock times: 9.5 is 09:30.</summary>
    Clock,

    /// <summary>Days of a 365-day year, written as dates: 1 is 1 January, 172 is 21 June.</summary>
    DayOfYear,

    /// <summary>Degrees from north through east, ticked at multiples of 15, 30, 45 or 90.</summary>
    Bearing,

    /// <summary>Named places along the axis: 0 is the first name.</summary>
    Names,
}
