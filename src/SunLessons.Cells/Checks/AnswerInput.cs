namespace SunLessons.Cells.Checks;

/// <summary>What a learner typed, read: a value, or one kind sentence that says what to write instead.</summary>
/// <param name="Value">The value in the unit asked for (a clock time in hours, a latitude or longitude in degrees north or east); null when it could not be read.</param>
/// <param name="Problem">Why not; null when it could.</param>
public readonly record struct AnswerInput(double? Value, string? Problem)
{
    internal static AnswerInput Of(double value) => new(value + 0.0, null);

    internal static AnswerInput Not(string problem) => new(null, problem);
}
