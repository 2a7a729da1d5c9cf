namespace SunLessons.Cells.Parts;

/// <summary>
/// Enter in a text field. Front ends of the standard say "submit" first and send the text after it, when it has changed at all
/// (@jupyter-widgets/controls 5.0.13, TextView): so the text is waited for, though not for long.
/// </summary>
internal sealed class EnterKey(Action submitted)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(250);
    private int _waits;

    public void Pressed()
    {
        if (Interlocked.Exchange(ref _waits, 1) == 0)
        {
            _ = GiveUpWaitingAsync();
        }
    }

    public void TextCame()
    {
        if (Interlocked.Exchange(ref _waits, 0) == 1)
        {
            submitted();
        }
    }

    private async Task GiveUpWaitingAsync()
    {
        await Task.Delay(Patience).ConfigureAwait(false);
        TextCame();
    }
}
