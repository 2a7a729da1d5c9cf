using System.Globalization;

namespace SunLessons.Logs;

/// <summary>A slip in how a log was kept that would explain most of what its readings are off.</summary>
/// <param name="Kind">Which slip.</param>
/// <param name="BeforeMinutes">
/// What the readings that it touches are off now, minutes: the median without sign; for a slip that follows the equation of time the median distance from their middle.
/// </param>
/// <param name="AfterMinutes">The same if it was that slip, minutes.</param>
/// <param name="Lines">The lines of the log that it touches.</param>
public sealed record LogSlip(LogSlipKind Kind, double BeforeMinutes, double AfterMinutes, IReadOnlyList<int> Lines)
{
    /// <summary>One sentence for the owner of the log: what to look into, and what it would explain.</summary>
    public string Sentence
    {
        get
        {
            var (supposed, look) = Kind switch
            {
                LogSlipKind.DaylightTimeForgotten => ("the clock was not put forward for daylight time", "whether it agreed with a time signal then"),
                LogSlipKind.DaylightTimeAddedTwice => ("the clock stood an hour ahead while no daylight time was in force", "whether it was put back"),
                LogSlipKind.ClockInUniversalTime => ("the clock column holds universal time", "which clock was read"),
                LogSlipKind.LongitudeSignLost => ("east and west were exchanged in the place's longitude", "at its sign"),
                LogSlipKind.DateCorrectedAlready => ("the dial column holds readings that were corrected for the date already", "how it was written; it should hold what the dial showed"),
                LogSlipKind.DateCorrectedWrongWay => ("the dial column holds readings that were corrected for the date with the wrong sign", "how it was written; it should hold what the dial showed"),
                LogSlipKind.CorrectedToTheClock => ("the dial column holds the time by the clock", "how it was written; it should hold what the dial showed"),
                _ => ("morning and afternoon were exchanged or hours after noon written 1 to 11", "at these lines; the hours of the day go from 0 to 23"),
            };
            return string.Create(
                CultureInfo.InvariantCulture,
                $"If {supposed}, {(Lines.Count == 1 ? "one reading" : $"{Lines.Count} readings")} (line{(Lines.Count == 1 ? "" : "s")} {Listed()}) would {(LogSlips.SwingsThroughTheYear(Kind) ? "scatter" : "be off")} by {AfterMinutes:0.0} minutes instead of {BeforeMinutes:0.0}: look {look}.");
        }
    }

    private string Listed() => Lines.Count <= 4
        ? string.Join(", ", Lines.Select(CsvTable.Text))
        : $"{CsvTable.Text(Lines[0])} to {CsvTable.Text(Lines[^1])}";
}
