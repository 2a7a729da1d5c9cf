namespace SunLessons.Cells.Parts;

/// <summary>Makes of an error the one sentence that a learner reads.</summary>
internal static class PlainSentence
{
    public static string Of(Exception error)
    {
        var text = error.Message;

        // .NET adds the parameter and the value on their own; the sentence before them is complete.
        foreach (var tail in new[] { " (Parameter '", "\r\nActual value", "\nActual value" })
        {
            var at = text.IndexOf(tail, StringComparison.Ordinal);
            if (at >= 0)
            {
                text = text[..at];
            }
        }

        text = text.ReplaceLineEndings(" ").Trim();
        return error is ArgumentException ? Translated(text) : Worded($"This cannot be worked out for these values: {text}");
    }
}
