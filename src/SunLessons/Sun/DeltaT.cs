using NodaTime;

namespace SunLessons.Sun;

/// <summary>
/// From civil time to the Earth's turning (UT1) and to even time (TT), with the uncertainty of each.
/// </summary>
/// <remarks>
/// <list type="bullet">
/// <item>1880 to 1971: radio and telegraph clocks kept universal time, so the instant is taken as UT1, good to 0.1 s (time signals were
/// adjusted to it by steps of 0.1 s at most from 1960 on; common practice, no source); TT − UT1 is interpolated in a half-yearly table.</item>
/// <item>1972 to May 2023: TT − UTC is 32.184 s plus TAI − UTC (leap seconds); TT − UT1 is interpolated in a quarterly table as published by
/// USNO and IERS; their difference is UT1 − UTC. Between the quarters a straight line misses the monthly values by 0.021 s at worst.</item>
/// <item>Later: TT − UT1 goes on from the last value with the long-term slowing, 32.5 s per century squared (Morrison, Stephenson, Hohenkerk and
/// Zawilski 2021), from today's rate of nought; TT − UTC stays 69.184 s (no leap second is announced to June 2027, and from 2035 on none is to come:
/// 27th CGPM 2022, resolution 4); their difference is UT1 − UTC. Until 2035 the law (ITU-R TF.460-6) keeps UT1 within 0.9 s of UTC, an even
/// distribution of that width, so its standard uncertainty is never taken as more than 0.52 s; afterwards it is that of TT − UT1.</item>
/// </list>
/// Uncertainty of the extrapolation: 365.25 N √(N Q / 3) / 1000 seconds after N years with Q = 0.058 ms²/a (Huber 2000, as quoted by Espenak
/// and Meeus, Five Millennium Canon of Solar Eclipses, 2006; formula from memory), and 0.1 s at the start. Before 1880 TT − UT1 is −5.4 s with 5 s of uncertainty: no Sun is computed there.
/// </remarks>
public static class DeltaT
{
    internal static readonly Instant Noon2000 = Instant.FromUtc(2000, 1, 1, 12, 0);

    // TT - TAI, exact by definition (IAU 1991).
    private const double TtMinusTaiSeconds = 32.184;

    private static readonly (double Days, double Seconds)[] Table =
        [.. EmbeddedTable.Rows("delta_t.csv").Select(r => (EmbeddedTable.Number(r[2]), EmbeddedTable.Number(r[3])))];

    private static readonly (double Days, double Seconds)[] LeapSeconds =
        [.. EmbeddedTable.Rows("leap_seconds.csv").Select(r => (EmbeddedTable.Number(r[0]), EmbeddedTable.Number(r[1])))];

    /// <summary>The times at a civil instant.</summary>
    public static TimeScales At(Instant instant)
    {
        // The tables count days from 2000 January 1, 0h UTC.
        var days = (instant - Noon2000).TotalDays + 0.5;
        if (days < Table[0].Days)
        {
            return new TimeScales(Table[0].Seconds, 5.0, 0.0, 0.1);
        }

        var (lastDays, lastSeconds) = Table[^1];
        if (days >= lastDays)
        {
            return Extrapolated(days, (days - lastDays) / 365.25, lastSeconds);
        }

        var deltaT = Interpolated(days);
        return days < LeapSeconds[0].Days
            ? new TimeScales(deltaT, 0.1, 0.0, 0.1)
            : new TimeScales(deltaT, 0.02, TtMinusTaiSeconds + TaiMinusUtc(days) - deltaT, 0.02);
    }

    /// <summary>Which of the three ways is taken at a civil instant, in one sentence without figures, for a person who checks a result.</summary>
    public static string ModelAt(Instant instant)
    {
        var days = (instant - Noon2000).TotalDays + 0.5;
        return days >= Table[^1].Days
            ? "TT - UT1, the lag of the turning Earth, goes on from the last published value with the slowing of many centuries, and TT - UTC as if no leap second came; their difference gives UT1."
            : days < LeapSeconds[0].Days
                ? "Before 1972 civil time is taken as UT1, the turning of the Earth; TT - UT1, its lag, comes from a half-yearly table."
                : "TT - UTC is known from the leap seconds, and TT - UT1, the lag of the turning Earth, from the quarterly table of USNO and IERS; their difference gives UT1.";
    }

    private static TimeScales Extrapolated(double days, double years, double lastSeconds)
    {
        // Half the acceleration times the years squared; 32.5 s per century squared is itself that half.
        var deltaT = lastSeconds + 32.5 * Math.Pow(years / 100.0, 2.0);
        var uncertainty = 0.1 + 365.25 * years * Math.Sqrt(years * 0.058 / 3.0) / 1000.0;

        // 0.9 s to either side, evenly: 0.9 / square root of 3.
        var lawChanges = (Instant.FromUtc(2035, 1, 1, 0, 0) - Noon2000).TotalDays;
        var ut1 = days < lawChanges ? Math.Min(uncertainty, 0.9 / Math.Sqrt(3.0)) : uncertainty;
        return new TimeScales(deltaT, uncertainty, TtMinusTaiSeconds + TaiMinusUtc(days) - deltaT, ut1);
    }

    private static double Interpolated(double days)
    {
        int low = 0, high = Table.Length - 1;
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = Table[middle].Days <= days ? (middle, high) : (low, middle);
        }

        var (d0, s0) = Table[low];
        var (d1, s1) = Table[high];
        return s0 + (s1 - s0) * (days - d0) / (d1 - d0);
    }

    private static double TaiMinusUtc(double days)
    {
        var i = LeapSeconds.Length - 1;
        while (i > 0 && LeapSeconds[i].Days > days)
        {
            i--;
        }

        return LeapSeconds[i].Seconds;
    }
}

/// <summary>The time scales at one civil instant, all in seconds.</summary>
/// <param name="TtMinusUt1Seconds">TT − UT1.</param>
/// <param name="TtMinusUt1UncertaintySeconds">Its standard uncertainty.</param>
/// <param name="Ut1MinusUtcSeconds">UT1 − UTC.</param>
/// <param name="Ut1UncertaintySeconds">Its standard uncertainty.</param>
public readonly record struct TimeScales(
    double TtMinusUt1Seconds, double TtMinusUt1UncertaintySeconds, double Ut1MinusUtcSeconds, double Ut1UncertaintySeconds);
