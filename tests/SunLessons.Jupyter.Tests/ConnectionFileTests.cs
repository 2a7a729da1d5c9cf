namespace SunLessons.Jupyter.Tests;

public sealed class ConnectionFileTests
{
    [Fact]
    public void A_new_connection_is_on_loopback_with_five_ports_and_a_key_of_256_bits()
    {
        var connection = ConnectionFile.CreateNew();
        Assert.Equal("127.0.0.1", connection.Address);
        Assert.Equal(5, new[] { connection.ShellPort, connection.IoPubPort, connection.StdinPort, connection.ControlPort, connection.HeartbeatPort }.Distinct().Count());
        Assert.Equal(32, Convert.FromHexString(connection.Key).Length);
        Assert.NotEqual(connection.Key, ConnectionFile.CreateNew().Key);
    }

    [Fact]
    public void What_was_written_is_read_again()
    {
        var connection = ConnectionFile.CreateNew();
        Assert.Equal(connection, ConnectionFile.Parse(connection.ToJson(), "it"));
    }

    [Fact]
    public void The_file_and_its_folder_are_closed_to_others()
    {
        var path = ConnectionFile.CreateNew().WritePrivate();
        try
        {
            if (OperatingSystem.IsWindows())
            {
                // There the folder's access list closes it: it must lie in the user's own data.
                Assert.StartsWith(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), path);
                return;
            }

            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(Path.GetDirectoryName(path)!));
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void A_private_file_is_never_written_over_another()
    {
        var path = ConnectionFile.CreateNew().WritePrivate();
        Assert.Throws<IOException>(() => PrivateFiles.WriteNew(path, "x"));
        File.Delete(path);
    }

    [Theory]
    [InlineData("{\"ip\":\"0.0.0.0\"", "f asks to listen on \"0.0.0.0\"; a kernel runs code for whoever reaches it, so only a loopback address is served. Write \"ip\": \"127.0.0.1\".")]
    [InlineData("{\"ip\":\"192.0.2.7\"", "f asks to listen on \"192.0.2.7\"; a kernel runs code for whoever reaches it, so only a loopback address is served. Write \"ip\": \"127.0.0.1\".")]
    [InlineData("{\"transport\":\"ipc\"", "f asks for transport \"ipc\"; only \"tcp\" on a loopback address is served. Write \"transport\": \"tcp\".")]
    [InlineData("{\"signature_scheme\":\"hmac-md5\"", "f asks for signatures by \"hmac-md5\"; only \"hmac-sha256\" is served. Write \"signature_scheme\": \"hmac-sha256\".")]
    [InlineData("{\"shell_port\":70000", "f has 70000 for \"shell_port\"; a port from 1 to 65535 is needed. Let the program that starts the kernel choose it.")]
    [InlineData("{\"key\":5", "f has 5 for \"key\"; a text in quotation marks is needed there.")]
    public void A_wrong_file_says_what_is_wrong_in_one_sentence(string start, string sentence)
    {
        var rest = string.Join(',', new[] { "shell_port", "iopub_port", "stdin_port", "control_port", "hb_port" }
            .Where(n => !start.Contains(n, StringComparison.Ordinal)).Select((n, i) => $"\"{n}\":{40000 + i}"));
        var error = Assert.Throws<FormatException>(() => ConnectionFile.Parse($"{start},{rest}}}", "f"));
        Assert.Equal(sentence, error.Message);
    }

    [Fact]
    public void A_file_that_is_no_JSON_says_so() =>
        Assert.StartsWith("f is no connection file:", Assert.Throws<FormatException>(() => ConnectionFile.Parse("hello", "f")).Message);
}
