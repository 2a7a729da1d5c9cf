using System.Reflection;

namespace SunLessons.Figures;

/// <summary>The plotly.js that draws figures in a page, out of the resources of the Plotly.NET assembly: no outside address is asked.</summary>
public static class PlotlyScript
{
    /// <summary>The version of the script, as its resource is named: 2.28.0.</summary>
    public static string Version => Name("plotly-", ".min.js")["Plotly.NET.plotly-".Length..^".min.js".Length];

    /// <summary>Opens the script: JavaScript, UTF-8, 3.6 MB. The caller closes it.</summary>
    public static Stream Open() => Assembly.GetManifestResourceStream(Name("plotly-", ".min.js"))!;

    /// <summary>Opens the script's licence text (MIT), which must go wherever the script goes. The caller closes it.</summary>
    public static Stream OpenLicence() => Assembly.GetManifestResourceStream(Name("LICENSE", ""))!;

    private static Assembly Assembly => typeof(Plotly.NET.Trace).Assembly;

    private static string Name(string contains, string ending) =>
        Array.Find(Assembly.GetManifestResourceNames(), n => n.Contains(contains, StringComparison.OrdinalIgnoreCase) && n.EndsWith(ending, StringComparison.Ordinal))
        ?? throw new InvalidOperationException($"Plotly.NET {Assembly.GetName().Version} carries no resource named like '{contains}'; this project is made for 6.0.0.");
}
