using System.Collections.Immutable;

namespace SunLessons.Figures;

/// <summary>
/// One named run of points in a figure. Immutable; two series are equal when names, looks and all numbers are.
/// A value that is not a number (NaN) breaks a line there: it is a gap, not a result.
/// </summary>
/// <param name="Name">What it is, as a learner would say it; also the direct label unless <see cref="Label"/> says otherwise.</param>
/// <param name="X">Positions along the horizontal axis, in the axis' unit.</param>
/// <param name="Y">Values along the vertical axis, in the axis' unit; as many as <paramref name="X"/>.</param>
/// <param name="Kind">How it is drawn.</param>
public sealed record Series(string Name, ImmutableArray<double> X, ImmutableArray<double> Y, SeriesKind Kind = SeriesKind.Line)
{
    /// <summary>The colour; null takes the next of the palette by the order in the figure.</summary>
    public Ink? Ink { get; init; }

    /// <summary>The dashes; null takes the next by the order in the figure.</summary>
    public LineStyle? Line { get; init; }

    /// <summary>The marker; null takes the next by the order in the figure.</summary>
    public MarkerShape? Marker { get; init; }

    /// <summary>The words beside the line; null takes <see cref="Name"/>, an empty text writes none.</summary>
    public string? Label { get; init; }

    /// <summary>Whether it is drawn thicker: the part that moved, the place the learner chose.</summary>
    public bool Strong { get; init; }

    /// <summary>How many points it has.</summary>
    public int Count => X.Length;

    /// <summary>The words beside the line, empty for none.</summary>
    public string DirectLabel => Label ?? Name;

    /// <summary>Makes a series from two lists of the same length.</summary>
    /// <exception cref="ArgumentException">The lists have different lengths.</exception>
    public static Series Of(string name, IEnumerable<double> x, IEnumerable<double> y, SeriesKind kind = SeriesKind.Line)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        var xs = x.ToImmutableArray();
        var ys = y.ToImmutableArray();
        return xs.Length == ys.Length
            ? new Series(name, xs, ys, kind)
            : throw new ArgumentException($"Series '{name}' has {xs.Length} positions but {ys.Length} values. Give one value for each position.", nameof(y));
    }

    /// <summary>Whether both have the same name, looks and numbers; gaps are equal to gaps.</summary>
    public bool Equals(Series? other) =>
        other is not null && SameLooks(other) && X.AsSpan().SequenceEqual(other.X.AsSpan()) && Y.AsSpan().SequenceEqual(other.Y.AsSpan());

    /// <summary>Whether both differ in nothing but their numbers, so that only columns have to be sent to a page.</summary>
    public bool SameLooks(Series other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Name == other.Name && Kind == other.Kind && Ink == other.Ink && Line == other.Line && Marker == other.Marker
            && DirectLabel == other.DirectLabel && Strong == other.Strong;
    }

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, Kind, X.Length, X.Length > 0 ? X[^1] : 0.0, Y.Length > 0 ? Y[^1] : 0.0);
}
