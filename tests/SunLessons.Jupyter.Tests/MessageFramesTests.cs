using System.Text;
using System.Text.Json.Nodes;
using SunLessons.Jupyter.Messages;

namespace SunLessons.Jupyter.Tests;

public sealed class MessageFramesTests
{
    // The key that authorities/jupyter_client/make.py signs with.
    private const string Key = "a-key-for-tests-only";

    public static TheoryData<string, string[]> Signed()
    {
        using var reader = new StreamReader(typeof(MessageFramesTests).Assembly.GetManifestResourceStream("signed_messages.csv")!);
        var rows = new TheoryData<string, string[]>();
        foreach (var line in reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2))
        {
            var cells = line.Split(',');
            rows.Add(cells[0], cells[1..]);
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Signed))]
    public void What_the_reference_client_signed_is_accepted(string type, string[] hex)
    {
        var frames = hex.Select(Convert.FromHexString).ToArray();
        Assert.True(new MessageFrames(Key).TryDecode(frames, out var message, out var reason), reason);
        Assert.Equal(type, message.Type);
        Assert.Equal("client", Encoding.UTF8.GetString(Assert.Single(message.Identities)));
        Assert.Equal("session-1", message.Header.Text("session"));
    }

    [Fact]
    public void Letters_beyond_ASCII_arrive_as_they_were()
    {
        var hex = Signed().Select(r => r.Data).Single(r => r.Item2[6].Contains("6365", StringComparison.Ordinal) == false && r.Item1 == "execute_request" && Encoding.UTF8.GetString(Convert.FromHexString(r.Item2[6])).Contains("var", StringComparison.Ordinal)).Item2;
        Assert.True(new MessageFrames(Key).TryDecode([.. hex.Select(Convert.FromHexString)], out var message, out _));
        Assert.Equal("var \u03b4 = \"\u00e9\U0001F31E\";", message.Content.Text("code"));
    }

    [Theory]
    [MemberData(nameof(Signed))]
    public void One_flipped_bit_in_any_signed_part_is_refused(string type, string[] hex)
    {
        Assert.NotEmpty(type);
        // Parts 2 to 6: signature, header, parent, metadata, content.
        for (var part = 2; part < 7; part++)
        {
            var frames = hex.Select(Convert.FromHexString).ToArray();
            frames[part][frames[part].Length / 2] ^= 1;
            Assert.False(new MessageFrames(Key).TryDecode(frames, out _, out var reason));
            Assert.Equal("A message with a wrong signature was dropped: its key is not the one of this kernel's connection file.", reason);
        }
    }

    [Fact]
    public void A_message_survives_the_way_there_and_back()
    {
        var frames = new MessageFrames(Key);
        var sent = new KernelMessage(
            ["first"u8.ToArray(), "second"u8.ToArray()],
            new MessageHeaders("t").Create("comm_msg"),
            new JsonObject { ["msg_id"] = "p" },
            new JsonObject { ["version"] = "2.1.0" },
            new JsonObject { ["text"] = "5° < φ \U0001F31E" },
            [[1, 2, 3], []]);
        Assert.True(frames.TryDecode(frames.Encode(sent), out var got, out var reason), reason);
        Assert.Equal(["first", "second"], got.Identities.Select(i => Encoding.UTF8.GetString(i)));
        Assert.Equal(sent.Content.ToJsonString(), got.Content.ToJsonString());
        Assert.Equal("p", got.ParentId);
        Assert.Equal([[1, 2, 3], []], got.Buffers);
    }

    [Fact]
    public void Without_a_key_there_is_no_signature_and_a_signed_message_is_refused()
    {
        var plain = new MessageFrames("");
        var message = new KernelMessage([], new MessageHeaders("t").Create("x"), [], [], [], []);
        Assert.True(plain.TryDecode(plain.Encode(message), out _, out _));
        Assert.False(plain.TryDecode(new MessageFrames("k").Encode(message), out _, out _));
        Assert.False(new MessageFrames("k").TryDecode(plain.Encode(message), out _, out _));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(5)]
    public void Too_few_frames_are_refused(int count)
    {
        var frames = new List<byte[]> { "<IDS|MSG>"u8.ToArray() };
        frames.AddRange(Enumerable.Repeat("{}"u8.ToArray(), count));
        Assert.False(new MessageFrames("").TryDecode(frames[..count], out _, out var reason));
        Assert.EndsWith("delimiter, signature and four parts are needed.", reason);
    }

    [Fact]
    public void A_part_that_is_no_object_is_refused()
    {
        byte[][] frames = ["<IDS|MSG>"u8.ToArray(), [], "{}"u8.ToArray(), "{}"u8.ToArray(), "[1]"u8.ToArray(), "{}"u8.ToArray()];
        Assert.False(new MessageFrames("").TryDecode(frames, out _, out var reason));
        Assert.Equal("A message was dropped: one of its four parts is no JSON object.", reason);
    }

    [Theory]
    [InlineData("", 0, 0)]
    [InlineData("abc", 2, 2)]
    [InlineData("\U0001F31Eab", 3, 2)]
    [InlineData("a\U0001F31E", 3, 2)]
    [InlineData("abc", 99, 3)]
    public void Places_are_counted_in_code_points(string text, int utf16, int points)
    {
        Assert.Equal(points, CodePoints.FromUtf16(text, utf16));
        Assert.Equal(Math.Min(utf16, text.Length), CodePoints.ToUtf16(text, points));
    }

    [Fact]
    public void A_place_inside_a_pair_counts_as_the_place_before_it() =>
        Assert.Equal(1, CodePoints.FromUtf16("a\U0001F31Eb", 2));
}
