using NodaTime;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Live;
using SunLessons.Cells.Predictions;
using SunLessons.Cells.Talks;
using SunLessons.Cells.Trials;
using SunLessons.Cells.Worked;
using SunLessons.Figures;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.Cells;

/// <summary>
/// What cells of a lesson say, with <c>using static SunLessons.Cells.Say</c>: each verb speaks to the session of this learner,
/// <see cref="Lesson.Current"/>, and is described there.
/// </summary>
public static class Say
{
    /// <inheritdoc cref="Lesson.Language"/>
    public static void Language(string language) => Lesson.Current.Language(language);

    /// <summary>A time or sentence of the library in the language of the lesson: the library itself speaks English.</summary>
    public static string Retold(string text) => Speech.Culture.Retold(text);

    /// <inheritdoc cref="Lesson.Here"/>
    public static Place Here => Lesson.Current.Here;

    /// <inheritdoc cref="Lesson.Number"/>
    public static NumberControl Number(string key, string label, double from, double to, double step, double start, string unit = "", Prediction? after = null, Func<double, string>? say = null) =>
        Lesson.Current.Number(key, label, from, to, step, start, unit, after, say);

    /// <inheritdoc cref="Lesson.Day"/>
    public static NumberControl Day(string key, string label = "Date", double start = 172, Prediction? after = null) => Lesson.Current.Day(key, label, start, after);

    /// <inheritdoc cref="Lesson.Hour"/>
    public static NumberControl Hour(string key, string label, double from = 5, double to = 19, double step = 0.25, double start = 12, Prediction? after = null) =>
        Lesson.Current.Hour(key, label, from, to, step, start, after);

    /// <inheritdoc cref="Lesson.Date"/>
    public static DateControl Date(string key, string label = "Date", LocalDate? start = null, Prediction? after = null) => Lesson.Current.Date(key, label, start, after);

    /// <inheritdoc cref="Lesson.DialShows"/>
    public static DialTimeControl DialShows(string key, string label = "The dial shows", DialTime? start = null, Prediction? after = null) =>
        Lesson.Current.DialShows(key, label, start, after);

    /// <inheritdoc cref="Lesson.Today"/>
    public static LocalDate Today => Lesson.Current.Today;

    /// <inheritdoc cref="Lesson.Talk"/>
    public static Talk Talk(string key, Func<ClockReading> reading, params Control[] dependsOn) => Lesson.Current.Talk(key, reading, dependsOn);

    /// <inheritdoc cref="Lesson.Choice"/>
    public static ChoiceControl Choice(string key, string label, IEnumerable<string> options, Prediction? after = null) => Lesson.Current.Choice(key, label, options, after);

    /// <inheritdoc cref="Lesson.Switch"/>
    public static SwitchControl Switch(string key, string label, bool start = false, Prediction? after = null) => Lesson.Current.Switch(key, label, start, after);

    /// <inheritdoc cref="Lesson.Town"/>
    public static TownControl Town(string key, string label = "Town", string? start = null, Prediction? after = null) => Lesson.Current.Town(key, label, start, after);

    /// <inheritdoc cref="Lesson.PlaceControl"/>
    public static PlaceControl PlaceControl() => Lesson.Current.PlaceControl();

    /// <inheritdoc cref="Lesson.Predict"/>
    public static Prediction Predict(string key, string question, params string[] answers) => Lesson.Current.Predict(key, question, answers);

    /// <inheritdoc cref="Lesson.PredictNumber"/>
    public static Prediction PredictNumber(string key, string question, string unit) => Lesson.Current.PredictNumber(key, question, unit);

    /// <inheritdoc cref="Lesson.PredictSketch"/>
    public static Prediction PredictSketch(string key, string question, string across, IReadOnlyList<string> points, string up, string unit, double from, double to) =>
        Lesson.Current.PredictSketch(key, question, across, points, up, unit, from, to);

    /// <inheritdoc cref="Lesson.Explain"/>
    public static Explanation Explain(string key, string question) => Lesson.Current.Explain(key, question);

    /// <inheritdoc cref="Lesson.Trials"/>
    public static TrialTable Trials(string key, string heading, Func<string> outcome, params Control[] inputs) => Lesson.Current.Trials(key, heading, outcome, inputs);

    /// <inheritdoc cref="Lesson.Worked"/>
    public static WorkedExample Worked(string key, string title, Fade fade, params IReadOnlyList<WorkedLine> lines) => Lesson.Current.Worked(key, title, fade, lines);

    /// <inheritdoc cref="Lesson.WorkedHere"/>
    public static WorkedExample WorkedHere(string key, Func<string> title, Fade fade, Func<IReadOnlyList<WorkedLine>> lines) => Lesson.Current.WorkedHere(key, title, fade, lines);

    /// <summary>One step of a worked example.</summary>
    /// <inheritdoc cref="WorkedLine(string, Func{Way, double}, double, string, string, IReadOnlyList{Slip}, bool, bool)"/>
    public static WorkedLine Line(string words, Func<Way, double> formula, double tolerance, string unit, string why, IReadOnlyList<Slip>? slips = null, bool idea = false, bool signed = false) =>
        new(words, formula, tolerance, unit, why, slips ?? [], idea, signed);

    /// <inheritdoc cref="Lesson.LiveFigure"/>
    public static LiveFigure LiveFigure(string key, Func<Figure> figure, params Control[] dependsOn) => Lesson.Current.LiveFigure(key, figure, dependsOn);

    /// <inheritdoc cref="Lesson.LiveText"/>
    public static LiveText LiveText(string key, Func<string> text, params Control[] dependsOn) => Lesson.Current.LiveText(key, text, dependsOn);

    /// <inheritdoc cref="Lesson.Steps(string, string, Func{IEnumerable{StepRow}}, Control[])"/>
    public static StepsTable Steps(string key, string caption, Func<IEnumerable<StepRow>> rows, params Control[] dependsOn) => Lesson.Current.Steps(key, caption, rows, dependsOn);

    /// <inheritdoc cref="Lesson.Steps(string, string, Func{ReadingChain}, Control[])"/>
    public static StepsTable Steps(string key, string caption, Func<ReadingChain> chain, params Control[] dependsOn) => Lesson.Current.Steps(key, caption, chain, dependsOn);

    /// <inheritdoc cref="Lesson.Steps(string, string, Func{ClockReading}, Control[])"/>
    public static StepsTable Steps(string key, string caption, Func<ClockReading> reading, params Control[] dependsOn) => Lesson.Current.Steps(key, caption, reading, dependsOn);

    /// <inheritdoc cref="StepRow.Of"/>
    public static StepRow Step(string name, ReadingCorrection amount, string cause, string running, string uncertainty = "") => StepRow.Of(name, amount, cause, running, uncertainty);

    /// <inheritdoc cref="Lesson.NumberCheck"/>
    public static NumberCheck NumberCheck(string key, string question, Func<Way, double> formula, double tolerance, string unit, IEnumerable<Slip> slips, IReadOnlyList<string> hints, string solution) =>
        Lesson.Current.NumberCheck(key, question, formula, tolerance, unit, slips, hints, solution);

    /// <inheritdoc cref="Lesson.NumberCheckHere"/>
    public static NumberCheck NumberCheckHere(string key, Func<string> question, Func<Way, double> formula, double tolerance, string unit, IEnumerable<Slip> slips, IReadOnlyList<string> hints, Func<string> solution) =>
        Lesson.Current.NumberCheckHere(key, question, formula, tolerance, unit, slips, hints, solution);

    /// <summary>A usual slip that a question expects.</summary>
    /// <param name="kind">Which one: a name of <see cref="UsualSlips"/>, such as <c>WestTakenAsPlus</c>, or one made by <see cref="OwnSlip"/>.</param>
    /// <param name="reply">Two or three sentences that lead back.</param>
    public static Slip Slip(SlipKind kind, string reply) => new(kind, reply);

    /// <summary>A slip that only this lesson knows.</summary>
    /// <param name="id">Short and lasting, such as <c>wrong-edge</c>.</param>
    /// <param name="name">What went wrong in a few words.</param>
    public static SlipKind OwnSlip(string id, string name) => new(id, name);

    /// <inheritdoc cref="Lesson.ChoiceCheck"/>
    public static ChoiceCheck ChoiceCheck(string key, string question, IEnumerable<AnswerOption> options, IReadOnlyList<string> hints, string solution) =>
        Lesson.Current.ChoiceCheck(key, question, options, hints, solution);

    /// <summary>A right answer to choose, with the reason why it holds.</summary>
    public static AnswerOption Right(string text, string reply) => new(text, reply, CheckState.Right);

    /// <summary>An answer to choose that is nearly right, with what is missing.</summary>
    public static AnswerOption Nearly(string text, string reply) => new(text, reply, CheckState.Nearly);

    /// <summary>A wrong answer to choose, with what speaks against it.</summary>
    public static AnswerOption Wrong(string text, string reply) => new(text, reply, CheckState.NotYet);

    /// <inheritdoc cref="Lesson.Value(string, double, string)"/>
    public static double Value(string name, double number, string pattern) => Lesson.Current.Value(name, number, pattern);

    /// <inheritdoc cref="Lesson.Value(string, string)"/>
    public static string Value(string name, string words) => Lesson.Current.Value(name, words);

    /// <inheritdoc cref="Lesson.Show"/>
    public static void Show(params object?[] things) => Lesson.Current.Show(things);
}
