using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace SunLessons.Notebooks.Review;

/// <summary>
/// Where a lesson meets the ideas of <see cref="Misconceptions"/>: cells carry "ideas" in their metadata, number to the words that stand in
/// the cell. An idea that is met at all is offered by a prediction, offered again as a wrong answer, and refuted in the text. Questions
/// from before may bring back an idea of an earlier lesson alone.
/// </summary>
public static class IdeaMarks
{
    /// <summary>The numbers of the ideas that a lesson offers in a prediction, in a wrong answer, or refutes.</summary>
    public static IReadOnlySet<int> In(Notebook lesson, IdeaPart part) =>
        lesson.Cells.Where(cell => PartOf(cell) == part).SelectMany(cell => Marks(cell).Select(mark => mark.Number)).ToHashSet();

    /// <summary>What is wrong with the marks themselves.</summary>
    internal static IEnumerable<ReviewRemark> Review(Notebook lesson)
    {
        foreach (NotebookCell cell in lesson.Cells)
        {
            foreach ((int number, string name, string words) in Marks(cell))
            {
                if (Misconceptions.Find(number) is null)
                {
                    yield return new(cell.Id, "ideas", $"The cell marks the idea \"{name}\", and the table of misconceptions has 1 to {Misconceptions.All.Count}; write one of these numbers.");
                }
                else if (PartOf(cell) is not { } part)
                {
                    yield return new(cell.Id, "ideas", $"The cell marks the idea {number}, and only cells with the role prediction, recall, check or refutation do; take the mark away or mend the role.");
                }
                else if (words.Length == 0 || !Stands(cell, part, words))
                {
                    yield return new(cell.Id, "ideas", $"The words \"{words}\" of the idea {number} do not stand in the cell{(part == IdeaPart.WrongAnswer ? " as the beginning of a Wrong(\"...\")" : "")}; write in \"ideas\" the words as they stand there.");
                }
            }
        }
    }

    /// <summary>The ideas that are met in one part of the lesson and not in the others.</summary>
    internal static IEnumerable<ReviewRemark> Missing(Notebook lesson)
    {
        int[] met = [.. lesson.Cells.Where(cell => cell.Role != "recall" && PartOf(cell) is not null).SelectMany(cell => Marks(cell).Select(mark => mark.Number)).Distinct().Order()];
        foreach ((IdeaPart part, string role, string what) in new[]
        {
            (IdeaPart.Prediction, "prediction", "No prediction offers"),
            (IdeaPart.WrongAnswer, "check", "No wrong answer of a check is"),
            (IdeaPart.Refutation, "refutation", "No text refutes"),
        })
        {
            IReadOnlySet<int> there = In(lesson, part);
            foreach (Misconception idea in met.Where(number => !there.Contains(number)).Select(Misconceptions.Find).OfType<Misconception>())
            {
                string id = lesson.Cells.LastOrDefault(cell => cell.Role == role)?.Id ?? "";
                yield return new(id, "ideas", $"{what} the idea {idea.Number} (\"{idea.Belief}\"), which the lesson meets elsewhere; write it there, and \"ideas\": {{\"{idea.Number}\": \"its words\"}} into the metadata of the cell.");
            }
        }
    }

    private static IEnumerable<(int Number, string Name, string Words)> Marks(NotebookCell cell) => cell.Metadata["sunlessons"]?["ideas"] is JsonObject ideas
        ? ideas.Select(idea => (int.TryParse(idea.Key, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : 0, idea.Key, idea.Value?.ToString() ?? ""))
        : [];

    private static IdeaPart? PartOf(NotebookCell cell) => cell.Role switch
    {
        "prediction" => IdeaPart.Prediction,
        "recall" or "check" => IdeaPart.WrongAnswer,
        "refutation" => IdeaPart.Refutation,
        _ => null,
    };

    private static bool Stands(NotebookCell cell, IdeaPart part, string words)
    {
        string inCode = words.Replace("\"", "\\\"", StringComparison.Ordinal);
        return part switch
        {
            IdeaPart.WrongAnswer => Regex.IsMatch(cell.Source, @"(?<!\w)Wrong\(\s*\$?""" + Regex.Escape(inCode)),
            IdeaPart.Prediction => cell.Source.Contains(words, StringComparison.Ordinal) || cell.Source.Contains(inCode, StringComparison.Ordinal),
            _ => cell.Source.Contains(words, StringComparison.Ordinal),
        };
    }
}
