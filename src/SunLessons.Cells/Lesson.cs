using System.Globalization;
using System.Text.Json.Nodes;
using NodaTime;
using SunLessons.Cells.Checks;
using SunLessons.Cells.Controls;
using SunLessons.Cells.Hosting;
using SunLessons.Cells.Live;
using SunLessons.Cells.Predictions;
using SunLessons.Cells.Trials;
using SunLessons.Cells.Worked;
using SunLessons.Places;

namespace SunLessons.Cells;

/// <summary>
/// One learner's session with one lesson: the place, the record, everything shown, and the verbs that cells say. The host makes one and sets
/// <see cref="Current"/>; nothing of a learner's progress is static.
/// </summary>
public sealed partial class Lesson
{
    private static readonly AsyncLocal<Lesson?> OfThisFlow = new();
    private static Lesson? _ofAll;
    private readonly Lock _gate = new();
    private readonly Dictionary<string, Shown> _shown = [];
    private Place _here;
    private bool _placeIsKnown;
    private volatile LanguageCulture? _culture;

    /// <summary>Begins a session.</summary>
    /// <param name="host">Where the cells run.</param>
    /// <param name="clock">Tells when a prediction is recorded.</param>
    public Lesson(IWidgetHost host, IClock clock)
    {
        ArgumentNullException.ThrowIfNull(host);
        ArgumentNullException.ThrowIfNull(clock);
        (Host, Clock) = (host, clock);
        _here = PlaceOf(host.FrontEnd.Place) ?? PlaceOf(PagePlaceOrNull(host.FrontEnd.Recorded("place"))) ?? Gazetteer.Towns.First(t => t.Name == "Vigo");
        _placeIsKnown = host.FrontEnd.Place is not null;
        host.FrontEnd.PlaceChanged += OnPagePlace;
        host.FrontEnd.Opened += OnOpened;
    }

    /// <summary>The session that cells speak to.</summary>
    /// <exception cref="InvalidOperationException">No host has begun one.</exception>
    public static Lesson Current => OfThisFlow.Value ?? Volatile.Read(ref _ofAll)
        ?? throw new InvalidOperationException("No lesson has begun here. Run this cell in a SunLessons kernel, or set Lesson.Current with Lesson.Begin.");

    /// <summary>Where the learner is: as the page says, or as chosen in the place control; Vigo until then.</summary>
    public Place Here
    {
        get
        {
            lock (_gate)
            {
                return _here;
            }
        }
    }

    /// <summary>Completes when everything that a moved control touched has been computed.</summary>
    public Task Settled => Worker.Settled;

    internal event Action? PlaceMoved;

    internal IWidgetHost Host { get; }

    internal IClock Clock { get; }

    internal LiveWorker Worker { get; } = new();

    /// <summary>Begins a session and lets all cells of this process speak to it.</summary>
    /// <param name="host">Where the cells run.</param>
    /// <param name="clock">Tells when a prediction is recorded.</param>
    public static Lesson Begin(IWidgetHost host, IClock clock)
    {
        var lesson = new Lesson(host, clock);
        Volatile.Write(ref _ofAll, lesson);
        return lesson;
    }

    /// <summary>Lets cells of the present flow of calls, and of nothing else, speak to this session, in its language.</summary>
    public void BecomeCurrent()
    {
        OfThisFlow.Value = this;
        if (_culture is { } culture)
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    /// <summary>
    /// The language in which this lesson is written: buttons, replies, numbers and dates follow from here on, for the present flow of calls and, where this is
    /// the lesson of the whole process, for all of it. Said in a lesson's first cell, before anything is shown.
    /// </summary>
    /// <param name="language">Its two letters, such as <c>es</c>.</param>
    /// <exception cref="ArgumentException">The program has no words in that language.</exception>
    public void Language(string language)
    {
        ArgumentNullException.ThrowIfNull(language);
        if (!WordTable.Languages.Contains(language))
        {
            throw new ArgumentException($"There are no words in the language '{language}'. Write one of {string.Join(", ", WordTable.Languages)}.", nameof(language));
        }

        CultureInfo.CurrentCulture = _culture = LanguageCulture.Of(language);
        if (ReferenceEquals(this, Volatile.Read(ref _ofAll)))
        {
            // One process, one lesson: a kernel, or the worker of a published page.
            CultureInfo.DefaultThreadCurrentCulture = _culture;
        }
    }

    /// <summary>Moves the learner: every live figure follows. Nothing happens when it is the same place.</summary>
    public void MoveTo(Place place)
    {
        ArgumentNullException.ThrowIfNull(place);
        lock (_gate)
        {
            if (place == _here)
            {
                return;
            }

            _here = place;
        }

        Host.Record("place", new PagePlace(place.Name, place.Point, place.ZoneId).ToJson());
        PlaceMoved?.Invoke();
    }

    /// <summary>What the learner did before under a name; null for nothing.</summary>
    internal JsonNode? Recorded(string key) => Host.FrontEnd.Recorded(key);

    /// <summary>Takes something new; what a former run of the cell made under the same name hands over to it and falls silent.</summary>
    internal T Take<T>(T shown)
        where T : Shown
    {
        var kind = shown switch
        {
            Control => "control",
            Prediction => "prediction",
            Check => "check",
            Explanation => "explanation",
            WorkedExample => "worked",
            TrialTable => "trials",
            _ => "live",
        };
        Shown? before;
        lock (_gate)
        {
            _shown.TryGetValue($"{kind}:{shown.Key}", out before);
            _shown[$"{kind}:{shown.Key}"] = shown;
        }

        before?.Retire();
        switch (before, shown)
        {
            case (Control old, Control young):
                old.FollowedBy(young);
                break;
            case (Prediction old, Prediction young):
                old.FollowedBy(young);
                break;
        }

        return shown;
    }

    private static Place? PlaceOf(PagePlace? place) => place is null
        ? null
        : Gazetteer.Towns.FirstOrDefault(t => t.Name == place.Name && t.Point.Latitude == place.Point.Latitude && t.Point.Longitude == place.Point.Longitude && t.ZoneId == place.ZoneId)
            ?? new Place(place.Name, place.Point, place.ZoneId);

    private static PagePlace? PagePlaceOrNull(JsonNode? kept)
    {
        try
        {
            return PagePlace.FromJson(kept);
        }
        catch (ArgumentOutOfRangeException)
        {
            // A record edited by hand: the lesson begins where it would without one.
            return null;
        }
    }

    private void OnPagePlace()
    {
        if (PlaceOf(Host.FrontEnd.Place) is not { } place)
        {
            return;
        }

        lock (_gate)
        {
            _placeIsKnown = true;
            if (place == _here)
            {
                return;
            }

            _here = place;
        }

        PlaceMoved?.Invoke();
    }

    private void OnOpened()
    {
        // The session begins before any page speaks: a page that keeps records but tells no place brings the one chosen last time.
        if (Host.FrontEnd.Place is null && PlaceOf(PagePlaceOrNull(Recorded("place"))) is { } kept)
        {
            MoveTo(kept);
        }

        Shown[] all;
        lock (_gate)
        {
            all = [.. _shown.Values];
        }

        foreach (var shown in all)
        {
            shown.TellAgain();
        }
    }
}
