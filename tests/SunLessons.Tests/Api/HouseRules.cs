using System.Reflection;

namespace SunLessons.Tests.Api;

/// <summary>The house rules of the library, over all that is public: units in names and docs, types of meaning, immutability, no system time.</summary>
public class HouseRules
{
    private static readonly string[] UnitsInNames =
    [
        "Degrees", "Radians", "ArcSeconds", "Minutes", "Seconds", "Hour", "Days", "Year", "Meters", "Nanotesla", "Hectopascals", "Celsius", "Au", "JulianDate", "NodusHeights",
    ];

    // Numbers without a unit, each by its nature: a ratio, a direction's part, a probability, a coefficient, a factor.
    private static readonly string[] PureNumbers =
    [
        "Angle.Sin", "Angle.Cos", "Angle.Tan", "Angle.op_Multiply", "Angle.op_Division",
        "LocalDirection.East", "LocalDirection.North", "LocalDirection.Up", "LocalDirection.FromVector",
        "OrbitShape.Eccentricity", "OrbitShape.Of(eccentricity)",
        "FaceDial.StyleTooHighFraction", "FittedReading.Weight", "FittedReading(Weight)",
        "(probability)", "(correlations)", "CoverageInterval.Probability", "LeastSquaresFit.Correlation",
        "Budget.CoverageFactor", "Quantity.DegreesOfFreedom", "Budget.EffectiveDegreesOfFreedom", "LeastSquares.Linear(design)",
    ];

    // Types whose numbers are all in one unit that the type says: lengths of a drawing in its own measure, or whatever unit its quantity has.
    private static readonly Dictionary<string, string> UnitOfType = new()
    {
        ["AnalemmaticDial"] = "halves of the ellipse's length",
        ["PlatePoint"] = "half lengths of the dial's ellipse",
        ["CylinderDial"] = "lengths of the gnomon",
        ["FacePoint"] = "heights of the nodus",
        ["ThickStyle"] = "bar of even width",
        ["Budget"] = "uncertainty budget",
        ["BudgetLine"] = "an input and what it does to the result",
        ["CoverageInterval"] = "holds the quantity",
        ["FirstOrderCheck"] = "First order and Monte Carlo",
        ["LeastSquares"] = "least squares",
        ["LeastSquaresFit"] = "least squares",
        ["MeasurementModel"] = "result of a measurement",
        ["MonteCarlo"] = "distribution of a measured result",
        ["Quantity"] = "One input of a measurement",
        ["FaultPrecision"] = "how well planned readings would tell",
    };

    // "unit" is both a quantity's own unit and "without unit".
    private static readonly string[] UnitsInDocs =
    [
        "degrees", "radians", "arcseconds", "minutes", "seconds", "hour", "days", "year", "metres", "nanotesla", "nT", "hPa", "°C", "astronomical unit", "Julian date",
        "nodus height", "gnomon length", "heights of the style", "distances of its hole", "halves of", "half lengths",
        "unit", "probability", "coefficient", "sine", "tangent", "a number", "by what part",
    ];

    [Fact]
    public void Every_public_number_has_its_unit_in_its_name_or_in_its_types()
    {
        var nameless = Numbers()
            .Where(n => !UnitsInNames.Any(unit => n.Name.Contains(unit, StringComparison.OrdinalIgnoreCase) || (n.Owner.Name == "DecimalYears" && unit == "Year")))
            .Where(n => !PureNumbers.Any(pure => n.Path.Contains(pure, StringComparison.Ordinal)))
            .Where(n => !UnitOfType.ContainsKey(n.Owner.Name))
            .Where(n => n.Owner.GetProperty("Unit") is null)
            .Where(n => !(n.Name is "reach" or "RightOfStyle" or "HoleHeight"))
            .Select(n => n.Path)
            .ToList();
        Assert.True(nameless.Count == 0, "Give these a unit in the name, such as heightMeters: " + string.Join(", ", nameless));
    }

    [Fact]
    public void A_type_that_gives_its_numbers_a_unit_says_so_in_its_doc()
    {
        foreach (var (name, words) in UnitOfType)
        {
            var type = Assert.Single(PublicMembers.Types, t => t.Name == name);
            Assert.Contains(words, XmlDocs.Of(type), StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void Every_public_numbers_doc_says_its_unit_or_its_nature()
    {
        var silent = Numbers()
            .Where(n => !UnitsInDocs.Any(unit => n.Doc.Contains(unit, StringComparison.OrdinalIgnoreCase)))
            .Where(n => !UnitsInNames.Any(unit => n.Name.Contains(unit, StringComparison.OrdinalIgnoreCase)))
            .Select(n => $"{n.Path}: \"{n.Doc}\"")
            .ToList();
        Assert.True(silent.Count == 0, string.Join("\n", silent));
    }

    // The compiler asks for a doc; here it must be a sentence of some length, not the name again.
    [Fact]
    public void Every_public_type_and_member_is_documented_in_a_sentence()
    {
        var bare = new List<string>();
        foreach (var type in PublicMembers.Types)
        {
            if (XmlDocs.Of(type).Length < 10)
            {
                bare.Add(type.Name);
            }

            foreach (MemberInfo member in PublicMembers.Methods(type).Cast<MemberInfo>().Concat(PublicMembers.Properties(type)))
            {
                var doc = XmlDocs.Of(member);
                if (doc.Length < 8 && !IsInherited(member) && XmlDocs.OfParameter(type, member.Name).Length < 8)
                {
                    bare.Add($"{type.Name}.{member.Name}: \"{doc}\"");
                }
            }
        }

        Assert.True(bare.Count == 0, string.Join("\n", bare));
    }

    // What can be left out, which sign is positive, which value is the default: a hover over the type must say it.
    [Fact]
    public void A_type_of_meaning_says_sign_range_and_default_in_its_first_words()
    {
        var meanings = PublicMembers.Types.Where(type => type is { IsValueType: true, IsEnum: false, Namespace: "SunLessons" }).ToList();
        Assert.True(meanings.Count >= 10, string.Join(' ', meanings.Select(t => t.Name)));
        foreach (var type in meanings.Where(t => t.Name is not "GeoPoint"))
        {
            var doc = XmlDocs.Of(type);
            Assert.True(doc.Contains("default value", StringComparison.OrdinalIgnoreCase), $"{type.Name} does not say its default value.");
            Assert.True(
                new[] { "positive", "POSITIVE", "Positive", "negative", "from TRUE north", "0 up to", "Zero" }.Any(word => doc.Contains(word, StringComparison.Ordinal)),
                $"{type.Name} says no sign or range.");
        }
    }

    [Fact]
    public void Models_state_their_measured_accuracy()
    {
        string[] models =
        [
            "SolarEphemeris", "SunTable", "SunInSky", "SunDay", "TwilightEvents", "GeomagneticModel", "ForwardModel", "FaceLayout", "FaceModel", "AnalemmaticDial", "AltitudeHours",
            "MonteCarlo", "LeastSquares", "InstrumentAge", "ScalePlanner", "ScaleError",
        ];
        foreach (var name in models)
        {
            var doc = XmlDocs.Of(Assert.Single(PublicMembers.Types, t => t.Name == name));
            Assert.True(doc.Contains("Measured", StringComparison.Ordinal) || doc.Contains("agrees within", StringComparison.Ordinal), $"{name} states no measured accuracy.");
        }
    }

    [Fact]
    public void Angles_are_made_by_unit_and_no_meaning_turns_into_another_by_itself()
    {
        Assert.Empty(PublicMembers.Constructors(typeof(Angle)));
        foreach (var type in PublicMembers.Types)
        {
            Assert.DoesNotContain(PublicMembers.Methods(type), m => m.Name is "op_Implicit" or "op_Explicit");

            // A meaning made of one number is made by a word with its unit, never by a constructor.
            Assert.DoesNotContain(PublicMembers.Constructors(type), c => c.GetParameters() is [{ ParameterType: var only }] && only == typeof(double));
        }
    }

    [Fact]
    public void Civil_time_is_nodatimes()
    {
        Type[] refused = [typeof(DateTime), typeof(DateTimeOffset), typeof(TimeSpan), typeof(DateOnly), typeof(TimeOnly), typeof(TimeZoneInfo)];
        foreach (var type in PublicMembers.Types)
        {
            var used = PublicMembers.Properties(type).Select(p => p.PropertyType)
                .Concat(PublicMembers.Methods(type).SelectMany(m => m.GetParameters().Select(p => p.ParameterType).Append(m.ReturnType)))
                .Concat(PublicMembers.Constructors(type).SelectMany(c => c.GetParameters()).Select(p => p.ParameterType))
                .Select(t => Nullable.GetUnderlyingType(t) ?? t);
            Assert.DoesNotContain(used, refused.Contains);
        }
    }

    // Safe between threads because nothing can change: no settable property but at creation, no field that may be written again, no array or list handed out.
    [Fact]
    public void Public_types_are_immutable()
    {
        // Chosen once at a program's start, each read and written whole; and a list that is made again for another database.
        string[] chosenAtStart = ["MagneticModels._inUse", "TimeZoneRules._inUse", "Gazetteer._listing"];
        var faults = new List<string>();
        foreach (var type in PublicMembers.Types.Where(t => !t.IsEnum && !typeof(Delegate).IsAssignableFrom(t)))
        {
            const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
            faults.AddRange(type.GetFields(All)
                .Where(f => !f.IsLiteral && !f.IsInitOnly && !chosenAtStart.Contains($"{type.Name}.{f.Name}"))
                .Select(f => $"{type.Name}.{f.Name} can be written again"));
            faults.AddRange(PublicMembers.Properties(type)
                .Where(p => p.SetMethod is { IsPublic: true } set && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(System.Runtime.CompilerServices.IsExternalInit)))
                .Select(p => $"{type.Name}.{p.Name} can be set"));
            faults.AddRange(PublicMembers.Properties(type).Where(p => IsMutable(p.PropertyType)).Select(p => $"{type.Name}.{p.Name} hands out {p.PropertyType.Name}"));
            faults.AddRange(PublicMembers.Methods(type).Where(m => IsMutable(m.ReturnType)).Select(m => $"{type.Name}.{m.Name} hands out {m.ReturnType.Name}"));
            if (type is { IsClass: true, IsSealed: false, IsAbstract: false })
            {
                faults.Add($"{type.Name} can be derived from");
            }
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
    }

    private static bool IsMutable(Type type) => type.IsArray
        || (type.IsGenericType && (type.GetGenericTypeDefinition() == typeof(List<>) || type.GetGenericTypeDefinition() == typeof(Dictionary<,>) || type.GetGenericTypeDefinition() == typeof(IList<>)));

    private static bool IsInherited(MemberInfo member) =>
        member is MethodInfo method && (method.GetBaseDefinition() != method || method.Name is "CompareTo" or "ToString")
        || member is PropertyInfo property && property.GetMethod!.GetBaseDefinition() != property.GetMethod;

    private static bool IsNumber(Type type) => (Nullable.GetUnderlyingType(type) ?? type) is var plain
        && (plain == typeof(double) || plain == typeof(float) || plain == typeof(double[,]) || plain == typeof(IReadOnlyList<double>) || plain == typeof(ReadOnlySpan<double>));

    private static IEnumerable<(Type Owner, string Name, string Path, string Doc)> Numbers()
    {
        foreach (var type in PublicMembers.Types)
        {
            foreach (var p in PublicMembers.Properties(type).Where(p => IsNumber(p.PropertyType)))
            {
                yield return (type, p.Name, $"{type.Name}.{p.Name}", XmlDocs.Of(p) + " " + XmlDocs.OfParameter(type, p.Name));
            }

            foreach (var f in PublicMembers.Fields(type).Where(f => IsNumber(f.FieldType)))
            {
                yield return (type, f.Name, $"{type.Name}.{f.Name}", XmlDocs.Of(f));
            }

            foreach (var m in PublicMembers.Methods(type))
            {
                if (IsNumber(m.ReturnType))
                {
                    yield return (type, m.Name, $"{type.Name}.{m.Name}", XmlDocs.Of(m));
                }

                foreach (var a in m.GetParameters().Where(a => IsNumber(a.ParameterType)))
                {
                    yield return (type, a.Name!, $"{type.Name}.{m.Name}({a.Name})", XmlDocs.OfParameter(m, a.Name!) + " " + XmlDocs.Of(m));
                }
            }

            foreach (var a in PublicMembers.Constructors(type).SelectMany(c => c.GetParameters().Select(a => (Constructor: c, Parameter: a))).Where(a => IsNumber(a.Parameter.ParameterType)))
            {
                yield return (type, a.Parameter.Name!, $"{type.Name}({a.Parameter.Name})", XmlDocs.OfParameter(a.Constructor, a.Parameter.Name!) + " " + XmlDocs.OfParameter(type, a.Parameter.Name!));
            }
        }
    }
}
