using NodaTime;
using SunLessons.Dials;
using SunLessons.Places;
using SunLessons.Readings;

namespace SunLessons.App.Verbs;

/// <summary>What <c>clock --scales</c> found, before it is printed.</summary>
/// <param name="Place">Where the dial stands.</param>
/// <param name="Instant">The moment for which "now" stands.</param>
/// <param name="Style">To what the style is set.</param>
/// <param name="Ranked">The scales, best first.</param>
public sealed record ScalesAnswer(Place Place, Instant Instant, StyleSet Style, IReadOnlyList<RankedScale> Ranked);
