using SunLessons.Cells.Controls;
using SunLessons.Cells.Live;
using SunLessons.Cells.Parts;
using SunLessons.Figures;
using SunLessons.Readings;

namespace SunLessons.Cells.Talks;

/// <summary>
/// A reading explained to an audience: one correction a press, with its cause, its amount and the clock so far in large letters, and beside it a figure
/// that grows with them.
/// </summary>
public sealed class Talk : LiveThing
{
    private readonly Lock _gate = new();
    private readonly Func<ClockReading> _reading;
    private readonly Part _card;
    private readonly Part _back;
    private readonly Part _next;
    private readonly LiveFigure _figure;
    private IReadOnlyList<TalkCard> _cards = [];
    private int _at;

    internal Talk(Lesson lesson, string key, Func<ClockReading> reading, IReadOnlyList<Control> dependsOn)
        : base(lesson, key, dependsOn, mostControls: 6)
    {
        _reading = reading;
        Make();
        _card = Build.Html(Host, Card(), "talk-card");
        _back = Build.Button(Host, Worded($"Back"), "talk-back", () => Step(-1));
        _next = Build.Button(Host, Worded($"Next correction"), "talk-next", () => Step(1));
        _figure = lesson.LiveFigure(key + "-figure", Draw);
        Settle();
    }

    /// <summary>Which card is shown: 0 is what the dial shows, the last is the clock.</summary>
    public int At
    {
        get
        {
            lock (_gate)
            {
                return _at;
            }
        }
    }

    /// <summary>The cards, first to last.</summary>
    public IReadOnlyList<TalkCard> Cards
    {
        get
        {
            lock (_gate)
            {
                return _cards;
            }
        }
    }

    /// <inheritdoc/>
    public override string PlainText => string.Join('\n', Cards.Select(card => $"{card.Name}: {card.Amount} {card.Cause} {card.Clock}"));

    internal override Part MakeRoot() => Build.Box(Host, "talk", [_card, Build.Box(Host, "talk-keys", [_back, _next], row: true), _figure.Root], Key);

    internal override void Retire()
    {
        base.Retire();
        foreach (var part in new[] { _card, _back, _next })
        {
            part.Retire();
        }
    }

    private protected override void Compute()
    {
        Make();
        Settle();
        _figure.Touch();
    }

    // A reading that fits several times or none is talked about as that: nothing is chosen.
    private static IReadOnlyList<TalkCard> CardsOf(ClockReading reading) => reading switch
    {
        ClockReading.One one => [.. TalkCard.Of(one.Chain)],
        ClockReading.Several several => [TalkCard.Only(Translated(several.Sentence))],
        ClockReading.None none => [TalkCard.Only(Translated(none.Sentence))],
        _ => throw new InvalidOperationException("a reading of an unknown kind"),
    };

    private void Make()
    {
        IReadOnlyList<TalkCard> cards;
        try
        {
            cards = CardsOf(_reading());
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            cards = [TalkCard.Only(PlainSentence.Of(error))];
        }

        lock (_gate)
        {
            (_cards, _at) = (cards, 0);
        }
    }

    private void Step(int by)
    {
        lock (_gate)
        {
            _at = Math.Clamp(_at + by, 0, _cards.Count - 1);
        }

        Settle();
        _figure.Touch();
    }

    private void Settle()
    {
        _card.Set(("value", Card()));
        _back.Set(("disabled", At == 0));
        _next.Set(("disabled", At == Cards.Count - 1));
    }

    private string Card()
    {
        var card = Cards[At];
        string Line(string name, string text) => text.Length == 0 ? "" : $"<p class=\"talk-{name}\">{Html.E(text)}</p>";
        return $"<div role=\"status\">{Line("name", card.Name)}{Line("amount", card.Amount)}{Line("cause", card.Cause)}{Line("clock", card.Clock)}</div>";
    }

    // Each correction as a bar from the time before it to the time after it.
    private Figure Draw()
    {
        IReadOnlyList<TalkCard> cards;
        lock (_gate)
        {
            cards = [.. _cards.Take(_at + 1)];
        }

        var all = Cards;
        if (all.Count < 2)
        {
            return Figure.Titled(Worded($"From the dial to the clock")).Says(all[0].Cause);
        }

        var figure = Figure.Titled(Worded($"From the dial to the clock")).AcrossNames(Worded($"Step"), [.. all.Select(card => card.ShortName)])
            // The whole way from the beginning, so that nothing jumps when the next correction comes.
            .UpClock(Worded($"Clock"), all.Min(card => card.Hours) - 0.25, all.Max(card => card.Hours) + 0.25);
        for (var i = 1; i < cards.Count; i++)
        {
            double from = cards[i - 1].Hours, to = cards[i].Hours;
            figure = figure.Shape(cards[i].ShortName, [i - 0.3, i + 0.3, i + 0.3, i - 0.3, i - 0.3], [from, from, to, to, from]);
        }

        return figure.Points(Worded($"time so far"), [.. cards.Select((_, i) => (double)i)], [.. cards.Select(card => card.Hours)], label: "")
            .Says($"{cards[^1].Name}: {cards[^1].Clock}.");
    }
}
