using NodaTime;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.App.Verbs;

/// <summary>What <c>clock --reverse</c> found, before it is printed.</summary>
/// <param name="Place">Where the dial stands.</param>
/// <param name="Profile">What is known of it.</param>
/// <param name="Clock">What the clock shows.</param>
/// <param name="Chains">What the dial should show, each with the way to the clock; two where the clock shows that time twice.</param>
/// <param name="Dark">Why the dial shows nothing at one of two times; usually empty.</param>
/// <param name="Sentence">When the clock shows that time twice, the sentence that names both; else null.</param>
/// <param name="Settings">How to set the dial by the clock, one for each chain.</param>
public sealed record ReverseAnswer(
    Place Place,
    DialProfile Profile,
    LocalDateTime Clock,
    IReadOnlyList<ReadingChain> Chains,
    IReadOnlyList<string> Dark,
    string? Sentence,
    IReadOnlyList<SetByClock> Settings);
