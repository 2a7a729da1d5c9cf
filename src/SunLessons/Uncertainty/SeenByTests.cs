using System.Runtime.CompilerServices;

// The generator and the arithmetic under it have reference outputs of their own, which only a test needs to see.
[assembly: InternalsVisibleTo("SunLessons.Tests")]
