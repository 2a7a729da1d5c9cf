using System.Text.Json.Nodes;

namespace SunLessons.Cells.Hosting;

/// <summary>
/// What the page told us about itself: whether it draws figures, where the learner stands, what the learner did before.
/// The host feeds it; cells read it. A front end that says nothing leaves it as it is made: it draws nothing itself, has no place and no record.
/// Safe to use from any thread.
/// </summary>
public sealed class FrontEnd
{
    private readonly Lock _gate = new();
    private bool _drawsFigures;
    private PagePlace? _place;
    private JsonObject _record = [];

    /// <summary>Whether the page draws figures from figure JSON; otherwise it gets a finished drawing.</summary>
    public bool DrawsFigures
    {
        get
        {
            lock (_gate)
            {
                return _drawsFigures;
            }
        }
    }

    /// <summary>Where the learner stands; null when no page told us.</summary>
    public PagePlace? Place
    {
        get
        {
            lock (_gate)
            {
                return _place;
            }
        }
    }

    /// <summary>Raised after <see cref="Place"/> became another place.</summary>
    public event Action? PlaceChanged;

    /// <summary>Raised after a page said hello, for the first time or after being loaded again.</summary>
    public event Action? Opened;

    /// <summary>What the learner did before, by key: a copy. Empty when no page told us.</summary>
    public JsonObject Record
    {
        get
        {
            lock (_gate)
            {
                return (JsonObject)_record.DeepClone();
            }
        }
    }

    /// <summary>Looks up one entry of the record: a copy, or null.</summary>
    public JsonNode? Recorded(string key)
    {
        lock (_gate)
        {
            return _record[key]?.DeepClone();
        }
    }

    /// <summary>
    /// Takes the page's opening words: <c>{"draws_figures":true,"place":{...},"record":{...}}</c>. Every member may be missing.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The place lies outside its ranges; nothing is taken then.</exception>
    public void Open(JsonObject hello)
    {
        ArgumentNullException.ThrowIfNull(hello);
        var place = PagePlace.FromJson(hello["place"]);
        bool moved;
        lock (_gate)
        {
            _drawsFigures = hello["draws_figures"] is JsonValue draws && draws.TryGetValue<bool>(out var yes) && yes;
            _record = hello["record"] is JsonObject record ? (JsonObject)record.DeepClone() : _record;
            moved = place is not null && place != _place;
            _place = place ?? _place;
        }

        Opened?.Invoke();
        if (moved)
        {
            PlaceChanged?.Invoke();
        }
    }

    /// <summary>Takes a later message of the page: <c>{"place":{...}}</c>. Anything else in it is passed over.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The place lies outside its ranges; the old one stays.</exception>
    public void Receive(JsonObject message)
    {
        ArgumentNullException.ThrowIfNull(message);
        if (PagePlace.FromJson(message["place"]) is { } place)
        {
            MoveTo(place);
        }
    }

    /// <summary>Moves the learner to another place; nothing happens when it is the same one.</summary>
    public void MoveTo(PagePlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        lock (_gate)
        {
            if (place == _place)
            {
                return;
            }

            _place = place;
        }

        PlaceChanged?.Invoke();
    }

    /// <summary>
    /// Keeps an entry, so that a cell run again finds it. The host calls this in <see cref="IWidgetHost.Record"/> before it tells the page.
    /// </summary>
    public void Remember(string key, JsonNode? value)
    {
        lock (_gate)
        {
            if (value is null)
            {
                _record.Remove(key);
            }
            else
            {
                _record[key] = value.DeepClone();
            }
        }
    }
}
