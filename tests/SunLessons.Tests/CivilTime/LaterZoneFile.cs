using System.Text;
using NodaTime;

namespace SunLessons.Tests.CivilTime;

/// <summary>
/// An invented later time-zone database: NodaTime's own, field by field, with another version and with Spain's clocks fixed to UTC all year.
/// The format is NodaTime's NZD: four bytes 0, then fields of an id, a length in groups of seven bits and so many bytes.
/// </summary>
internal static class LaterZoneFile
{
    private const int ZoneField = 1;
    private const int VersionField = 2;

    public static byte[] Make(string version = "2027a", string? without = null)
    {
        var fields = Fields(BuiltIn());
        var pool = Strings(fields.Single(f => f.Id == 0).Data);
        var made = new List<byte>(new byte[4]);
        foreach (var (id, data) in fields)
        {
            var zone = id == ZoneField ? pool[Count(data, 0).Value] : null;
            if (without is not null && zone == without)
            {
                continue;
            }

            // A fixed zone is: its id in the pool, the kind 1, the offset in half hours from -24 h.
            var changed = id == VersionField ? [(byte)version.Length, .. Encoding.UTF8.GetBytes(version)]
                : zone == "Europe/Madrid" ? [.. data[..Count(data, 0).Next], 1, 48]
                : data;
            made.Add((byte)id);
            made.AddRange(Groups(changed.Length));
            made.AddRange(changed);
        }

        return [.. made];
    }

    public static byte[] BuiltIn()
    {
        using var stream = typeof(DateTimeZone).Assembly.GetManifestResourceStream("NodaTime.TimeZones.Tzdb.nzd")!;
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }

    private static List<(int Id, byte[] Data)> Fields(byte[] file)
    {
        Assert.Equal(new byte[4], file[..4]);
        var fields = new List<(int, byte[])>();
        for (var at = 4; at < file.Length;)
        {
            var id = file[at];
            var (length, next) = Count(file, at + 1);
            fields.Add((id, file[next..(next + length)]));
            at = next + length;
        }

        return fields;
    }

    private static List<string> Strings(byte[] data)
    {
        var strings = new List<string>();
        var (count, at) = Count(data, 0);
        for (var i = 0; i < count; i++)
        {
            var (length, next) = Count(data, at);
            strings.Add(Encoding.UTF8.GetString(data, next, length));
            at = next + length;
        }

        return strings;
    }

    private static (int Value, int Next) Count(byte[] data, int at)
    {
        var value = 0;
        for (var shift = 0; ; shift += 7, at++)
        {
            value |= (data[at] & 0x7F) << shift;
            if ((data[at] & 0x80) == 0)
            {
                return (value, at + 1);
            }
        }
    }

    private static IEnumerable<byte> Groups(int value)
    {
        for (; value > 0x7F; value >>= 7)
        {
            yield return (byte)(value & 0x7F | 0x80);
        }

        yield return (byte)value;
    }
}
