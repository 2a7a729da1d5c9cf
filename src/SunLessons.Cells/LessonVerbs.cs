using NodaTime;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Live;
using SunLessons.Cells.Predictions;
using SunLessons.Cells.Talks;
using SunLessons.Cells.Trials;
using SunLessons.Cells.Worked;
using SunLessons.CivilTime;
using SunLessons.Figures;
using SunLessons.Readings;

namespace SunLessons.Cells;

/// <content>The verbs that make things; <see cref="Say"/> lets cells say them without a name in front.</content>
public sealed partial class Lesson
{
    /// <summary>A number to move between two ends.</summary>
    /// <param name="key">Its name in the learner's record.</param>
    /// <param name="label">Its words.</param>
    /// <param name="from">The lower end.</param>
    /// <param name="to">The upper end.</param>
    /// <param name="step">One press of a key or button; above 0.</param>
    /// <param name="start">Where it stands at first.</param>
    /// <param name="unit">Its unit as written; empty for none.</param>
    /// <param name="after">A prediction that must be recorded before it can be moved.</param>
    /// <param name="say">Says a position in words, for a slider of dates or times.</param>
    /// <exception cref="ArgumentException">The ends, the step or the start do not fit together.</exception>
    public NumberControl Number(string key, string label, double from, double to, double step, double start, string unit = "", Prediction? after = null, Func<double, string>? say = null) =>
        Waiting(Take(new NumberControl(this, key, label, from, to, step, start, unit, say)), after);

    /// <summary>A day of a 365-day year to move, said as a date: 1 is 1 January, 172 is 21 June.</summary>
    public NumberControl Day(string key, string label = "Date", double start = 172, Prediction? after = null) =>
        Number(key, Translated(label), 1, 365, 1, start, after: after, say: day => new Axis(label, Kind: AxisKind.DayOfYear).Say(day));

    /// <summary>A time of day in hours to move, said as a clock time.</summary>
    public NumberControl Hour(string key, string label, double from = 5, double to = 19, double step = 0.25, double start = 12, Prediction? after = null) =>
        Number(key, label, from, to, step, start, after: after, say: hour => new Axis(label, Kind: AxisKind.Clock).Say(hour));

    /// <summary>A date to pick, 1900 to 2100.</summary>
    /// <param name="key">Its name in the learner's record.</param>
    /// <param name="label">Its words.</param>
    /// <param name="start">Where it stands at first; today at the learner's place when it is left out.</param>
    /// <param name="after">A prediction that must be recorded before it can be moved.</param>
    public DateControl Date(string key, string label = "Date", LocalDate? start = null, Prediction? after = null) =>
        Waiting(Take(new DateControl(this, key, Translated(label), start ?? Today)), after);

    /// <summary>What a dial shows, to be typed as hours and minutes.</summary>
    public DialTimeControl DialShows(string key, string label = "The dial shows", DialTime? start = null, Prediction? after = null) =>
        Waiting(Take(new DialTimeControl(this, key, Translated(label), start ?? DialTime.FromHours(12))), after);

    /// <summary>The date at the learner's place now, by its clock.</summary>
    public LocalDate Today => Clock.GetCurrentInstant().InZone(CivilZones.Get(Here.ZoneId).Zone).Date;

    /// <summary>A reading explained to an audience, one correction a press.</summary>
    /// <param name="key">Its name.</param>
    /// <param name="reading">What the reading says about the clock.</param>
    /// <param name="dependsOn">The controls in which the reading was entered, at most 6: nobody watches them while they move.</param>
    public Talk Talk(string key, Func<ClockReading> reading, params Control[] dependsOn) => Take(new Talk(this, key, reading, dependsOn));

    /// <summary>One of several names to choose.</summary>
    /// <exception cref="ArgumentException">Fewer than 2 names, or one twice.</exception>
    public ChoiceControl Choice(string key, string label, IEnumerable<string> options, Prediction? after = null) =>
        Waiting(Take(new ChoiceControl(this, key, label, options.ToArray())), after);

    /// <summary>Something to switch on or off.</summary>
    public SwitchControl Switch(string key, string label, bool start = false, Prediction? after = null) =>
        Waiting(Take(new SwitchControl(this, key, label, start)), after);

    /// <summary>One of the eight towns to choose, or the learner's own place.</summary>
    /// <param name="key">Its name in the learner's record.</param>
    /// <param name="label">Its words.</param>
    /// <param name="start">The town it stands at first; null for the learner's own place.</param>
    /// <param name="after">A prediction that must be recorded before it can be moved.</param>
    public TownControl Town(string key, string label = "Town", string? start = null, Prediction? after = null) =>
        Waiting(Take(new TownControl(this, key, Translated(label), start)), after);

    /// <summary>A prediction chosen from answers.</summary>
    /// <exception cref="ArgumentException">Fewer than 2 answers, or one twice.</exception>
    public Prediction Predict(string key, string question, params string[] answers) =>
        answers.Length < 2 || answers.Distinct().Count() != answers.Length
            ? throw new ArgumentException($"Prediction '{key}' offers {answers.Length} answers, or one of them twice. Give at least 2 different answers.", nameof(answers))
            : Take(new Prediction(this, key, question, new ChosenField(Host, question, answers)));

    /// <summary>A prediction typed as a number.</summary>
    /// <param name="key">Its name in the learner's record.</param>
    /// <param name="question">The question.</param>
    /// <param name="unit">What is asked for; see <see cref="AnswerParser.Read"/>.</param>
    public Prediction PredictNumber(string key, string question, string unit) => Take(new Prediction(this, key, question, new TypedField(Host, question, AnswerUnit.Of(unit))));

    /// <summary>A prediction sketched as five numbers, with a small figure that follows them.</summary>
    /// <param name="key">Its name in the learner's record.</param>
    /// <param name="question">The question.</param>
    /// <param name="across">What runs from left to right, such as <c>Date</c>.</param>
    /// <param name="points">The five places along it.</param>
    /// <param name="up">What runs from bottom to top, such as <c>Noon by the clock</c>.</param>
    /// <param name="unit">Its unit; see <see cref="AnswerParser.Read"/>.</param>
    /// <param name="from">The lower end of the grid, in <paramref name="unit"/> (hours for a clock time).</param>
    /// <param name="to">The upper end of the grid.</param>
    /// <exception cref="ArgumentException">There are not 5 points, or the grid has no height.</exception>
    public Prediction PredictSketch(string key, string question, string across, IReadOnlyList<string> points, string up, string unit, double from, double to) =>
        Take(new Prediction(this, key, question, new SketchedField(this, key, question, new SketchGrid(across, points, up, unit, from, to))));

    /// <summary>A field for the learner's own words, such as why a prediction and its outcome differ.</summary>
    public Explanation Explain(string key, string question) => Take(new Explanation(this, key, question));

    /// <summary>The learner's own table of an experiment: a button keeps the positions of the controls with what came out.</summary>
    /// <param name="key">Its name in the learner's record.</param>
    /// <param name="heading">What comes out, as the head of its column, such as <c>Step (min)</c>.</param>
    /// <param name="outcome">What came out at the present positions, in a few words.</param>
    /// <param name="inputs">The controls.</param>
    public TrialTable Trials(string key, string heading, Func<string> outcome, params Control[] inputs) => Take(new TrialTable(this, key, heading, outcome, inputs));

    /// <summary>A worked example: a calculation in steps, of which some or all are left to the learner.</summary>
    /// <param name="key">Its name in the learner's record.</param>
    /// <param name="title">What is worked out, such as <c>Vigo, 3 November</c>.</param>
    /// <param name="fade">How much is left to the learner.</param>
    /// <param name="lines">The steps, one of which carries the idea; see <see cref="Say.Line"/>.</param>
    /// <exception cref="ArgumentException">Fewer than 2 steps, or not exactly one that carries the idea.</exception>
    public WorkedExample Worked(string key, string title, Fade fade, params IReadOnlyList<WorkedLine> lines) =>
        Take(new WorkedExample(this, key, () => title, fade, () => lines, follows: false));

    /// <summary>A worked example that follows the learner's place.</summary>
    /// <param name="key">Its name in the learner's record.</param>
    /// <param name="title">What is worked out, naming the place.</param>
    /// <param name="fade">How much is left to the learner.</param>
    /// <param name="lines">The steps for the place; as many everywhere.</param>
    public WorkedExample WorkedHere(string key, Func<string> title, Fade fade, Func<IReadOnlyList<WorkedLine>> lines) =>
        Take(new WorkedExample(this, key, title, fade, lines, follows: true));

    /// <summary>A figure that follows controls and place.</summary>
    /// <param name="key">Its name.</param>
    /// <param name="figure">Makes it; asks the controls for their values.</param>
    /// <param name="dependsOn">The controls that change it, at most 3.</param>
    public LiveFigure LiveFigure(string key, Func<Figure> figure, params Control[] dependsOn) => Take(new LiveFigure(this, key, figure, dependsOn));

    /// <summary>A sentence that follows controls and place.</summary>
    public LiveText LiveText(string key, Func<string> text, params Control[] dependsOn) => Take(new LiveText(this, key, text, dependsOn));

    /// <summary>A chain of corrections that follows controls and place, as a table.</summary>
    public StepsTable Steps(string key, string caption, Func<IEnumerable<StepRow>> rows, params Control[] dependsOn) =>
        Take(new StepsTable(this, key, caption, () => new StepsAnswer("", [rows().ToArray()]), dependsOn));

    /// <summary>The library's own chain from a reading to the clock, as a table that follows controls and place.</summary>
    public StepsTable Steps(string key, string caption, Func<ReadingChain> chain, params Control[] dependsOn) =>
        Steps(key, caption, () => ChainRows.Of(chain()), dependsOn);

    /// <summary>
    /// What a reading says about the clock, as a table that follows controls and place: where several times fit, all of them; where none does, why.
    /// </summary>
    public StepsTable Steps(string key, string caption, Func<ClockReading> reading, params Control[] dependsOn) =>
        Take(new StepsTable(this, key, caption, () => ChainRows.Of(reading()), dependsOn));

    /// <summary>A question with a number for an answer.</summary>
    /// <param name="key">Its name in the learner's record.</param>
    /// <param name="question">The question.</param>
    /// <param name="formula">
    /// Computes the number with the library, in <paramref name="unit"/> (hours for a clock time): the right one, and the one of each slip
    /// where it asks <see cref="Way.Made"/>.
    /// </param>
    /// <param name="tolerance">How near an answer must come, in <paramref name="unit"/> (minutes for a clock time); above 0.</param>
    /// <param name="unit">What is asked for; see <see cref="AnswerParser.Read"/>.</param>
    /// <param name="slips">The usual slips, 3 to 6 of them.</param>
    /// <param name="hints">Three hints, each going further.</param>
    /// <param name="solution">The worked solution.</param>
    /// <exception cref="ArgumentException">Two slips, or a slip and the answer, lie within the tolerance of each other: the sentence names them.</exception>
    public NumberCheck NumberCheck(string key, string question, Func<Way, double> formula, double tolerance, string unit, IEnumerable<Slip> slips, IReadOnlyList<string> hints, string solution) =>
        Take(new NumberCheck(this, key, () => question, formula, follows: false, tolerance, unit, slips.ToArray(), hints, () => solution));

    /// <summary>
    /// A question whose answer follows the learner's place. Where two slips lead to the same number, neither is named alone.
    /// </summary>
    /// <param name="key">Its name in the learner's record.</param>
    /// <param name="question">Asks, naming the place.</param>
    /// <param name="formula">Computes the answer and the slips for the place; see <see cref="NumberCheck"/>.</param>
    /// <param name="tolerance">How near an answer must come; above 0.</param>
    /// <param name="unit">What is asked for; see <see cref="AnswerParser.Read"/>.</param>
    /// <param name="slips">The usual slips, 3 to 6 of them.</param>
    /// <param name="hints">Three hints, each going further.</param>
    /// <param name="solution">Works it out for the place.</param>
    public NumberCheck NumberCheckHere(string key, Func<string> question, Func<Way, double> formula, double tolerance, string unit, IEnumerable<Slip> slips, IReadOnlyList<string> hints, Func<string> solution) =>
        Take(new NumberCheck(this, key, question, formula, follows: true, tolerance, unit, slips.ToArray(), hints, solution));

    /// <summary>A question with answers to choose from.</summary>
    /// <exception cref="ArgumentException">Fewer than 2 answers, none right, or one without a reply.</exception>
    public ChoiceCheck ChoiceCheck(string key, string question, IEnumerable<AnswerOption> options, IReadOnlyList<string> hints, string solution) =>
        Take(new ChoiceCheck(this, key, question, options.ToArray(), hints, solution));

    /// <summary>The control of the learner's place, for a lesson that wants it in a certain spot.</summary>
    public PlaceControl PlaceControl() => _placeControl ??= Take(new PlaceControl(this));

    private static T Waiting<T>(T control, Prediction? after)
        where T : Control
    {
        after?.Unlocks(control);
        return control;
    }
}
