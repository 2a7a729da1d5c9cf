namespace SunLessons.Logs;

/// <summary>The six ways in which a flat dial's readings can be wrong.</summary>
public enum Fault
{
    /// <summary>Twist about the plumb line, degrees, clockwise seen from above positive.</summary>
    TwistClockwise,

    /// <summary>The plate's east edge stands higher, degrees.</summary>
    EastEdgeRaised,

    /// <summary>The plate's north edge stands higher, degrees.</summary>
    NorthEdgeRaised,

    /// <summary>The style was set for a latitude further north than the design says, degrees, signed.</summary>
    StyleNorthward,

    /// <summary>The hour lines were drawn for a latitude further north than the design says, degrees, signed.</summary>
    LinesNorthward,

    /// <summary>The clock was slow, or longitude or zone wrong to the same effect, minutes: every reading comes out fast by so much.</summary>
    ClockSlow,
}
