namespace SunLessons.Tests.Api;

/// <summary>The public API beside its reviewed text.</summary>
public class PublicApiSnapshot
{
    [Fact]
    public void The_public_api_is_the_one_that_was_reviewed()
    {
        var file = Checkout.Path("tests", "SunLessons.Tests", "Api", "public-api.txt");
        var (kept, now) = (File.ReadAllText(file).ReplaceLineEndings("\n"), PublicApi.Text());
        if (kept != now)
        {
            // Beside the tests' own program, never over the reviewed file.
            var received = Path.Combine(AppContext.BaseDirectory, "public-api.received.txt");
            File.WriteAllText(received, now);
            var (old, fresh) = (kept.Split('\n'), now.Split('\n'));
            Assert.Fail(
                $"The public API changed. Gone: {string.Join(" | ", old.Except(fresh).Take(5))}. New: {string.Join(" | ", fresh.Except(old).Take(5))}. "
                + $"If that is meant, copy {received} over {file}.");
        }
    }
}
