using System.Text.Json.Nodes;
using SunLessons.Cells.Running;
using SunLessons.Kernel.Session;

namespace SunLessons.Kernel.Verbs;

/// <summary>What a cell says to show something before its last line. The names are those that notebook users know from other languages.</summary>
public static class Showing
{
    /// <summary>The session whose cells call; set once by the kernel.</summary>
    internal static KernelSession? Session { get; set; }

    /// <summary>Shows a value as an output of the running cell.</summary>
    /// <param name="value">Any value; a figure is drawn, <see cref="HTML"/> is rendered.</param>
    /// <returns>A handle by which the same output can be changed later.</returns>
    public static DisplayHandle display(object? value)
    {
        var shown = new DisplayHandle(Guid.NewGuid().ToString("N"));
        if (Session is { } session)
        {
            session.Display(session.Values.Bundle(value), displayId: shown.Id);
        }

        return shown;
    }

    /// <summary>Text that is HTML: shown as such when it is a cell's last expression or given to <see cref="display"/>.</summary>
    /// <param name="html">The HTML.</param>
    public static MarkupValue HTML(string html) => new("text/html", html);

    /// <summary>Text that is SVG: shown as a picture.</summary>
    /// <param name="svg">The SVG, from &lt;svg to its end.</param>
    public static MarkupValue SVG(string svg) => new("image/svg+xml", svg);

    /// <summary>Takes away what the running cell has shown so far.</summary>
    /// <param name="wait">True: only when the next output comes, so that nothing flickers.</param>
    public static void clear_output(bool wait = false) => Session?.ClearOutput(wait);
}

/// <summary>An output that was shown by <see cref="Showing.display"/>.</summary>
/// <param name="Id">Its name in the protocol ("display_id").</param>
public sealed record DisplayHandle(string Id)
{
    /// <summary>Puts another value in the output's place, wherever it was shown.</summary>
    /// <param name="value">The new value.</param>
    public void Update(object? value)
    {
        if (Showing.Session is { } session)
        {
            session.Display(session.Values.Bundle(value), displayId: Id, update: true);
        }
    }
}

/// <summary>Text with a media type of its own.</summary>
/// <param name="MediaType">As "text/html".</param>
/// <param name="Text">The text.</param>
public sealed record MarkupValue(string MediaType, string Text)
{
    internal JsonObject Bundle() => new() { [MediaType] = Text, ["text/plain"] = MarkupCell.PlainText(Text) };

    /// <inheritdoc/>
    public override string ToString() => MarkupCell.PlainText(Text);
}
