using NodaTime;
using SunLessons.Cells.Hosting;
using SunLessons.Kernel.Rehearsing;

namespace SunLessons.Notebooks.Tests;

/// <summary>Lessons run from the top in this process; each test has one to itself.</summary>
internal static class Rehearsals
{
    public static readonly PagePlace Vigo = PagePlace.FromDegrees("Vigo", 42.24, -8.72, "Europe/Madrid");

    public static async Task<Rehearsal> OfAsync(Notebook lesson) => await Rehearsal.RunAsync(
        lesson.Cells.Where(cell => cell.Type == CellType.Code).Select(cell => (cell.Id, cell.Language ?? "csharp", cell.Source)),
        Vigo,
        SystemClock.Instance);

    public static Task<Rehearsal> OfAsync(string id) => OfAsync(LessonsTests.Shelf.Find(id).ReadNotebook());
}
