using System.Text.Json.Nodes;
using SunLessons.App.Verbs;
using SunLessons.Readings;

namespace SunLessons.App.Printing;

/// <summary>What a dial should show, as JSON.</summary>
public static class ReverseJson
{
    /// <summary>The whole answer.</summary>
    public static JsonObject Of(ReverseAnswer answer) => new()
    {
        ["place"] = JsonText.Place(answer.Place),
        ["clock"] = JsonText.Clock(answer.Clock),
        ["several_in_words"] = answer.Sentence,
        ["shows_nothing_in_words"] = JsonText.List(answer.Dark, sentence => JsonValue.Create(sentence)),
        ["answers"] = JsonText.List(answer.Chains.Zip(answer.Settings), pair => One(pair.First, pair.Second)),
    };

    private static JsonObject One(ReadingChain chain, SetByClock setting)
    {
        var turn = setting as SetByClock.Turn;
        return new JsonObject
        {
            ["should_show_hours"] = chain.Shown.Hours,
            ["set_by_clock"] = new JsonObject
            {
                ["in_words"] = setting.Sentence,
                ["turn_until_dial_shows_hours"] = turn?.TurnUntil.Hours,
                ["reading_moves_minutes_per_degree_clockwise"] = turn?.MinutesPerDegree,
                ["direction_standard_uncertainty_degrees"] = turn?.TwistStandardUncertainty.Degrees,
                ["same_reading_when_turned_degrees"] = turn is null ? null : JsonText.List(turn.OtherTwists, twist => JsonValue.Create(twist.Degrees)),
            },
            ["chain"] = ChainJson.One(chain),
        };
    }
}
