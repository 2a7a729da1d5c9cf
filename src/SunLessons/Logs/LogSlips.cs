namespace SunLessons.Logs;

/// <summary>Looks for slips in how a log was kept, before its readings are taken for faults of the dial.</summary>
/// <remarks>
/// Each kind of slip says how far off it would put each reading. A slip that steps is named where the readings that it touches are off by more than ten minutes now (median) and
/// by less than a quarter of that with the slip taken off. One that follows the equation of time, and so swings through the year, is named where the scatter of all
/// readings about their middle is more than four minutes and would be less than half of that; a constant fault of the dial does not enter there. A dial's own faults neither make nor hide
/// such a slip (the tests try twists up to 10 degrees). Two kinds that explain the same readings are both named.
/// </remarks>
public static class LogSlips
{
    private const double LeastStepMinutes = 10.0;
    private const double MostLeftOfStep = 0.25;
    private const double LeastScatterMinutes = 4.0;
    private const double MostLeftOfScatter = 0.5;

    /// <summary>The slips that would explain the readings, the one that explains most minutes first; empty for a log that is off by no more than a dial's faults.</summary>
    public static IReadOnlyList<LogSlip> Find(LogResiduals log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return
        [
            .. Enum.GetValues<LogSlipKind>()
                .Select(kind => Supposed(kind, log))
                .OfType<LogSlip>()
                .OrderByDescending(slip => slip.BeforeMinutes - slip.AfterMinutes),
        ];
    }

    private static LogSlip? Supposed(LogSlipKind kind, LogResiduals log)
    {
        var all = log.Readings.Select(reading => (Reading: reading, Off: OffBy(kind, reading, log.Place))).Where(pair => pair.Off is not null).ToList();
        if (SwingsThroughTheYear(kind))
        {
            var scatter = Scatter(all.Select(pair => pair.Reading.Minutes));
            var left = Scatter(all.Select(pair => pair.Reading.Minutes - pair.Off!.Value));
            return scatter > LeastScatterMinutes && left < MostLeftOfScatter * scatter ? Named(scatter, left, all) : null;
        }

        var touched = all.Where(pair => Math.Abs(pair.Off!.Value) >= LeastStepMinutes

            // Morning for afternoon is a slip of single readings, not of the book.
            && (kind != LogSlipKind.MorningForAfternoon || Math.Abs(pair.Reading.Minutes) > 360.0)).ToList();
        if (touched.Count == 0)
        {
            return null;
        }

        var before = Median(touched.Select(pair => Math.Abs(pair.Reading.Minutes)));
        var after = Median(touched.Select(pair => Math.Abs(Math.IEEERemainder(pair.Reading.Minutes - pair.Off!.Value, 1440.0))));
        return before > LeastStepMinutes && after < MostLeftOfStep * before ? Named(before, after, touched) : null;

        LogSlip Named(double now, double then, List<(LogResidual Reading, double? Off)> readings) =>
            new(kind, now, then, [.. readings.Select(pair => pair.Reading.Observation.Line)]);
    }

    internal static bool SwingsThroughTheYear(LogSlipKind kind) => kind is LogSlipKind.DateCorrectedAlready or LogSlipKind.DateCorrectedWrongWay;

    /// <summary>The median distance from the median.</summary>
    private static double Scatter(IEnumerable<double> values)
    {
        var list = values.ToList();
        if (list.Count == 0)
        {
            return 0.0;
        }

        var middle = Median(list);
        return Median(list.Select(value => Math.Abs(value - middle)));
    }

    /// <summary>By how many minutes a reading would be fast through the slip alone; null where it would not touch it.</summary>
    private static double? OffBy(LogSlipKind kind, LogResidual reading, GeoPoint place) => kind switch
    {
        LogSlipKind.DaylightTimeForgotten => reading.Rule.IsDaylightTime ? reading.Rule.DaylightMinutes : null,
        LogSlipKind.DaylightTimeAddedTwice => reading.Rule.IsDaylightTime ? null : -60.0,
        LogSlipKind.ClockInUniversalTime => reading.Rule.WallOffset.Seconds / 60.0,
        LogSlipKind.LongitudeSignLost => -8.0 * place.Longitude.Degrees,
        LogSlipKind.DateCorrectedAlready => -reading.EquationOfTime.Minutes,
        LogSlipKind.DateCorrectedWrongWay => reading.EquationOfTime.Minutes,
        LogSlipKind.CorrectedToTheClock => reading.Observation.Clock.NanosecondOfDay / 6e10 - 720.0 - reading.HourAngle.Angle.TimeMinutes,
        _ => 720.0,
    };

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2.0;
    }
}
