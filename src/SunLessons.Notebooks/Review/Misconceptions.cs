using System.Text.Json;

namespace SunLessons.Notebooks.Review;

/// <summary>The ideas that the lessons set out to change, from the table misconceptions.json beside this file.</summary>
public static class Misconceptions
{
    private static readonly JsonSerializerOptions Names = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    /// <summary>All of them, by number from 1.</summary>
    public static IReadOnlyList<Misconception> All { get; } = Read();

    /// <summary>The one of that number, or null.</summary>
    public static Misconception? Find(int number) => All.FirstOrDefault(one => one.Number == number);

    private static IReadOnlyList<Misconception> Read()
    {
        using Stream stream = typeof(Misconceptions).Assembly.GetManifestResourceStream("SunLessons.Notebooks.Review.misconceptions.json")!;
        return JsonSerializer.Deserialize<Table>(stream, Names)!.Misconceptions;
    }

    private sealed record Table(IReadOnlyList<Misconception> Misconceptions);
}
