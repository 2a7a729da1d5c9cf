namespace SunLessons.Logs;

/// <summary>How well planned readings would tell a dial's faults. Immutable.</summary>
public sealed class FaultPrecision
{
    private readonly double[] _faults;
    private readonly double[] _combinations;

    internal FaultPrecision(FaultSearch faults, FaultSearch combinations)
    {
        _faults = [.. Enum.GetValues<Fault>().Select(f => faults.StandardUncertainty((int)f) / (f == Fault.ClockSlow ? 1.0 : FaultModel.MinutesPerDegree))];
        _combinations = [.. Enum.GetValues<Combination>().Select(
            c => combinations.StandardUncertainty((int)c) / (c == Combination.Constant ? 1.0 : FaultModel.MinutesPerDegree))];
    }

    /// <summary>Standard uncertainty of a named fault with the measurements given, degrees or, for the clock, minutes; infinite where it stays open.</summary>
    public double this[Fault which] => _faults[(int)which];

    /// <summary>Standard uncertainty of a combination from the readings alone, degrees or, for the constant, minutes; infinite where it stays open.</summary>
    public double this[Combination which] => _combinations[(int)which];
}
