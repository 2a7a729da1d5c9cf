using System.Text.Json.Nodes;
using SunLessons.Figures;

namespace SunLessons.Cells.Hosting;

/// <summary>
/// A host without a page: it keeps every widget and output in memory and lets a caller act as the page would.
/// For tests, and for running a lesson's cells where nobody looks.
/// </summary>
public sealed class InMemoryHost(IFigurePen? pen = null) : IWidgetHost
{
    private readonly Lock _gate = new();
    private readonly List<InMemoryChannel> _channels = [];
    private readonly List<IReadOnlyDictionary<string, JsonNode>> _outputs = [];
    private readonly List<(string Key, JsonNode? Value)> _recorded = [];

    /// <inheritdoc/>
    public IFigurePen? Pen { get; } = pen;

    /// <inheritdoc/>
    public FrontEnd FrontEnd { get; } = new();

    /// <summary>Every widget opened so far, in order: a copy of the list.</summary>
    public IReadOnlyList<InMemoryChannel> Channels
    {
        get
        {
            lock (_gate)
            {
                return [.. _channels];
            }
        }
    }

    /// <summary>Everything displayed so far, in order: a copy of the list.</summary>
    public IReadOnlyList<IReadOnlyDictionary<string, JsonNode>> Outputs
    {
        get
        {
            lock (_gate)
            {
                return [.. _outputs];
            }
        }
    }

    /// <summary>Everything recorded so far, in order: a copy of the list.</summary>
    public IReadOnlyList<(string Key, JsonNode? Value)> Recorded
    {
        get
        {
            lock (_gate)
            {
                return [.. _recorded];
            }
        }
    }

    /// <summary>One part of a thing that is a box of several, such as the field or the button of a check; the newest thing of that name.</summary>
    /// <param name="key">The thing's name.</param>
    /// <param name="role">The part's role, or its model where it has none.</param>
    /// <exception cref="InvalidOperationException">No such thing is shown, or it has no such part.</exception>
    public InMemoryChannel Part(string key, string role)
    {
        var all = Channels;
        var box = all.Last(c => (string?)c.State["_sunlessons_key"] == key && c.State["children"] is JsonArray).State["children"]!.AsArray();
        var children = box.Select(child => (string?)child).ToHashSet();
        return all.First(c => children.Contains("IPY_MODEL_" + c.Id) && ((string?)c.State["_sunlessons_role"] == role || c.Model == role));
    }

    /// <inheritdoc/>
    public IWidgetChannel Open(string model, JsonObject state)
    {
        lock (_gate)
        {
            var channel = new InMemoryChannel($"widget-{_channels.Count + 1}", model, state);
            _channels.Add(channel);
            return channel;
        }
    }

    /// <inheritdoc/>
    public void Display(IWidgetChannel root, string plainText)
    {
        ArgumentNullException.ThrowIfNull(root);
        Display(new Dictionary<string, JsonNode>
        {
            ["application/vnd.jupyter.widget-view+json"] = new JsonObject { ["version_major"] = 2, ["version_minor"] = 0, ["model_id"] = root.Id },
            ["text/plain"] = plainText,
        });
    }

    /// <inheritdoc/>
    public void Display(IReadOnlyDictionary<string, JsonNode> mimeBundle)
    {
        lock (_gate)
        {
            _outputs.Add(mimeBundle);
        }
    }

    /// <inheritdoc/>
    public void Record(string key, JsonNode? value)
    {
        FrontEnd.Remember(key, value);
        lock (_gate)
        {
            _recorded.Add((key, value?.DeepClone()));
        }
    }
}
