using System.Security.Cryptography;
using System.Text;

namespace SunLessons.Web.Safety;

/// <summary>
/// The secret that the printed address carries: 256 random bits, made at each start and never stored.
/// Whoever can read the terminal may open the pages; a page of another site cannot know it.
/// </summary>
public sealed class PageToken
{
    private readonly byte[] _bytes;

    private PageToken(string text)
    {
        Text = text;
        _bytes = Encoding.UTF8.GetBytes(text);
    }

    /// <summary>The token as it stands in the address: 43 characters of the URL-safe base 64 alphabet.</summary>
    public string Text { get; }

    /// <summary>Makes a fresh token from the system's cryptographic source.</summary>
    public static PageToken Create() =>
        new(Convert.ToBase64String(RandomNumberGenerator.GetBytes(32)).TrimEnd('=').Replace('+', '-').Replace('/', '_'));

    /// <summary>Whether a presented text is the token, compared in constant time.</summary>
    public bool Matches(string? presented) =>
        presented is not null && CryptographicOperations.FixedTimeEquals(_bytes, Encoding.UTF8.GetBytes(presented));
}
