using SunLessons.Cells.Running;
using SunLessons.Figures;

namespace SunLessons.Cells.Tests.Running;

public sealed class CellUsingsTests
{
    [Fact]
    public void No_two_types_that_cells_see_share_a_name()
    {
        var seen = new[] { typeof(Angle).Assembly, typeof(Figure).Assembly, typeof(Say).Assembly }
            .SelectMany(assembly => assembly.GetExportedTypes())
            .Where(type => !type.IsNested && CellUsings.All.Contains(type.Namespace!))
            .GroupBy(type => type.Name)
            .Where(same => same.Count() > 1)
            .Select(same => string.Join(" and ", same.Select(type => type.FullName)));
        Assert.Empty(seen);
    }

    [Fact]
    public void Cells_find_the_rooms_of_the_library_and_the_verbs_of_lessons_and_nothing_of_the_inside()
    {
        Assert.Contains("SunLessons.Readings", CellUsings.All);
        Assert.Contains("SunLessons.Cells.Say", CellUsings.All);
        Assert.DoesNotContain("SunLessons.Figures.Layout", CellUsings.All);
    }
}
