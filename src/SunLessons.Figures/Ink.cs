namespace SunLessons.Figures;

/// <summary>
/// The four colours of lines on white. Contrast against white, by the formula of WCAG 2.2: black 21, blue 5.2, vermilion 3.9, green 3.4,
/// all above the 3 that lines need. The three hues are those of Okabe and Ito (2008), told apart with every usual colour vision.
/// </summary>
public enum Ink
{
    /// <summary>#000000.</summary>
    Black,

    /// <summary>#0072B2.</summary>
    Blue,

    /// <summary>#D55E00.</summary>
    Vermilion,

    /// <summary>#009E73.</summary>
    Green,
}

/// <summary>Inks as text.</summary>
public static class InkText
{
    /// <summary>The colour as <c>#RRGGBB</c>.</summary>
    public static string Hex(this Ink ink) => ink switch
    {
        Ink.Blue => "#0072B2",
        Ink.Vermilion => "#D55E00",
        Ink.Green => "#009E73",
        _ => "#000000",
    };
}
