namespace SunLessons.Uncertainty;

/// <summary>
/// The result of a measurement from its inputs (JCGM 101, 3.5 and 4.1). It is called from several threads at once, so it must not keep anything between calls.
/// </summary>
/// <param name="inputs">The inputs' values, in the order of the quantities.</param>
/// <returns>The result; not-a-number where those inputs have none (the Sun off the plate), which is counted and told.</returns>
public delegate double MeasurementModel(ReadOnlySpan<double> inputs);
