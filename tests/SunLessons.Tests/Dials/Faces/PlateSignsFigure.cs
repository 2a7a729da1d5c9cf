using System.Globalization;
using System.Xml.Linq;
using SunLessons.Dials;
using SunLessons.Dials.Faces;

namespace SunLessons.Tests.Dials.Faces;

/// <summary>The figure that states the signs of inclination and declination shows what the library does with them.</summary>
public class PlateSignsFigure
{
    private static readonly XDocument Figure = XDocument.Load(Checkout.Path("src", "SunLessons", "Dials", "Faces", "plate-signs.svg"));

    [Fact]
    public void The_drawn_arrows_are_the_outward_normal_of_the_face_that_it_names()
    {
        var (edgeOn, above) = (Arrow("normal-edge-on"), Arrow("normal-from-above"));
        var face = Face.FromDegrees(Number(edgeOn.Line, "data-inclination-degrees"), Number(above.Line, "data-declination-degrees"));
        var normal = FaceAxes.Of(face).Normal;

        // Edge-on the page's right is the way the face looks and its top is up; from above its top is north and its right is east. 0.1 degrees: the drawing's decimals.
        var level = Math.Sqrt(normal.X * normal.X + normal.Y * normal.Y);
        Assert.Equal(Math.Atan2(level, normal.Z) * 180 / Math.PI, edgeOn.ClockwiseFromTop, 0.1);
        Assert.Equal(Math.Atan2(normal.X, normal.Y) * 180 / Math.PI, edgeOn.AroundZero(above.ClockwiseFromTop), 0.1);
        Assert.Equal(0.0, Arrow("up").ClockwiseFromTop, 0.1);
        foreach (var (name, azimuth) in new[] { ("north", 0.0), ("east", 90.0), ("south", 180.0), ("west", -90.0) })
        {
            Assert.Equal(azimuth, edgeOn.AroundZero(Arrow(name).ClockwiseFromTop), 0.1);
        }

        // And a Sun that stands along the arrow shines square on the face.
        var looks = LocalDirection.FromAzimuthAltitude(face.Declination.LooksTowards, Altitude.FromDegrees(90 - face.Inclination.Degrees));
        var at = Assert.IsType<NodusShadow.At>(FaceLayout.Of(face, Latitude.FromDegrees(42.24)).ShadowOfNodus(looks));
        Assert.Equal(0.0, at.Point.DistanceTo(default), 1e-12);
    }

    [Fact]
    public void It_says_in_words_what_it_shows()
    {
        var text = string.Join('\n', Figure.Descendants().Where(e => e.Name.LocalName is "text" or "desc").Select(e => e.Value));
        Assert.Contains("inclination, 0° to 180°", text, StringComparison.Ordinal);
        Assert.Contains("declination, from south, west positive: here +40°", text, StringComparison.Ordinal);
        Assert.Contains("outward normal", text, StringComparison.Ordinal);
    }

    private static (XElement Line, double ClockwiseFromTop, Func<double, double> AroundZero) Arrow(string id)
    {
        var line = Figure.Descendants().Single(e => (string?)e.Attribute("id") == id);
        var (dx, dy) = (Number(line, "x2") - Number(line, "x1"), Number(line, "y2") - Number(line, "y1"));
        return (line, Math.Atan2(dx, -dy) * 180 / Math.PI, degrees => Math.Abs(degrees + 180) < 0.05 ? 180 : degrees);
    }

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
