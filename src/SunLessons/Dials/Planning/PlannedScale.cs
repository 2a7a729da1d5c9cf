namespace SunLessons.Dials.Planning;

/// <summary>One scale of a plan and the latitudes it serves.</summary>
/// <param name="Scale">The latitude to draw it for, north positive.</param>
/// <param name="NearEquator">The end of its band nearer to the equator.</param>
/// <param name="NearPole">The end of its band nearer to the pole.</param>
/// <param name="WorstMinutes">The worst error left in the band, minutes without sign.</param>
public readonly record struct PlannedScale(Latitude Scale, Latitude NearEquator, Latitude NearPole, double WorstMinutes);
