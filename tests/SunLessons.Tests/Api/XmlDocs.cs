using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace SunLessons.Tests.Api;

/// <summary>The documentation that is packed with the library.</summary>
internal static partial class XmlDocs
{
    private static readonly Dictionary<string, XElement> Members = XDocument.Load(Path.ChangeExtension(PublicMembers.Library.Location, ".xml"))
        .Descendants("member").ToDictionary(e => e.Attribute("name")!.Value);

    /// <summary>Summary, remarks and returns of a type or member, in plain words; empty where there is none.</summary>
    public static string Of(MemberInfo member) =>
        string.Join(' ', Element(member)?.Elements().Where(e => e.Name.LocalName is "summary" or "remarks" or "returns").Select(Words) ?? []);

    /// <summary>What is said of a parameter; for a record's property that of its parameter.</summary>
    public static string OfParameter(MemberInfo member, string name) =>
        Element(member)?.Elements("param").FirstOrDefault(e => e.Attribute("name")!.Value == name) is { } param ? Words(param) : "";

    private static XElement? Element(MemberInfo member) => Members.GetValueOrDefault(member switch
    {
        Type type => "T:" + Id(type),
        PropertyInfo p => "P:" + Id(p.DeclaringType!) + "." + p.Name + Parameters(p.GetIndexParameters()),
        FieldInfo f => "F:" + Id(f.DeclaringType!) + "." + f.Name,
        MethodBase m => "M:" + Id(m.DeclaringType!) + "." + m.Name.Replace('.', '#') + Parameters(m.GetParameters()),
        _ => "",
    });

    private static string Parameters(ParameterInfo[] parameters) => parameters.Length == 0 ? "" : "(" + string.Join(",", parameters.Select(p => Id(p.ParameterType))) + ")";

    private static string Id(Type type)
    {
        if (type.IsByRef)
        {
            return Id(type.GetElementType()!) + "@";
        }

        if (type.IsArray)
        {
            return Id(type.GetElementType()!) + (type.GetArrayRank() == 1 ? "[]" : "[0:,0:]");
        }

        if (type.IsGenericType)
        {
            var name = type.GetGenericTypeDefinition().FullName!;
            return name[..name.IndexOf('`', StringComparison.Ordinal)] + "{" + string.Join(",", type.GetGenericArguments().Select(Id)) + "}";
        }

        return (type.FullName ?? type.Name).Replace('+', '.');
    }

    private static string Words(XElement element)
    {
        // A reference counts as the last word of what it names.
        var copy = new XElement(element);
        foreach (var see in copy.Descendants().Where(e => e.Name.LocalName is "see" or "paramref").ToList())
        {
            see.ReplaceWith(" " + ((string?)see.Attribute("cref") ?? (string?)see.Attribute("name") ?? "").Split('(')[0].Split('.')[^1] + " ");
        }

        return Space().Replace(string.Concat(copy.DescendantNodes().OfType<XText>().Select(t => t.Value + " ")), " ").Trim();
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
