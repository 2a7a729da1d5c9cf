using SunLessons.Notebooks;
using SunLessons.Places;
using SunLessons.Publishing.Lessons;
using SunLessons.Publishing.Pages;
using SunLessons.Publishing.Paper;
using SunLessons.Publishing.Players;
using SunLessons.Readings;
using SunLessons.Scripts;
using SunLessons.Words;

namespace SunLessons.Publishing;

/// <summary>
/// Writes lessons as pages that need no server, no kernel and no installation: the lesson's cells and the library compiled to run in the page.
/// </summary>
/// <param name="program">The folder of the running program.</param>
/// <param name="say">Is told what takes long.</param>
public sealed class Publisher(string program, Action<string> say)
{
    /// <summary>Publishes every lesson of a folder, with its sheets; beside them a page to explain a reading with, and the teacher's page, in every language of the lessons.</summary>
    /// <param name="shelf">The lessons.</param>
    /// <param name="target">The folder that the pages go to; made when it is not there.</param>
    /// <param name="singleFile">Whether each lesson becomes one file that holds everything.</param>
    /// <returns>The files that were written, relative to the target.</returns>
    /// <exception cref="PublishProblemException">A lesson cannot be published; nothing was written then.</exception>
    public async Task<IReadOnlyList<string>> PublishAsync(LessonShelf shelf, string target, bool singleFile)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        var problems = shelf.Problems();
        var lessons = shelf.Lessons();
        if (problems.Count > 0 || lessons.Count == 0)
        {
            throw new PublishProblemException(problems.Count > 0 ? string.Join('\n', problems) : $"There are no lessons in {shelf.Root}; name a folder that holds one folder a lesson.");
        }

        var player = await PlayerFolder.FindAsync(program, say);
        var references = CellReferences.FromFolder(Path.Combine(player, "refs"));
        var languages = shelf.Languages().Select(WordTable.In).ToArray();

        // Each lesson in its languages, English first.
        var lessonPages = new List<List<LessonPage>>();
        foreach (var lesson in lessons)
        {
            var pages = new List<LessonPage>();
            foreach (var edition in shelf.Translations(lesson).Prepend(lesson))
            {
                say(edition.Title);
                pages.Add(await PageAsync(edition, edition.ReadNotebook(), references, Vigo, WordTable.In(edition.Language)));
            }

            lessonPages.Add(pages);
        }

        var talks = new List<LessonPage>();
        foreach (var language in languages)
        {
            talks.Add(await PageAsync(TalkPage.Lesson(language), TalkPage.Notebook(language), references, Vigo, language));
        }

        var files = new PageFiles(target);
        PageFrame FrameIn(WordTable language) => singleFile ? new SingleFrame(language, player) : new FolderFrame(language);
        var style = new PaperStyle(inside: singleFile);
        style.AddTo(files);
        foreach (var pages in lessonPages)
        {
            foreach (var page in pages)
            {
                files.Add(page.FileName, page.Html(FrameIn(page.Words), pages.Where(other => other != page)));
                new Sheets(style, page.Words).AddTo(files, page);
            }
        }

        foreach (var talk in talks)
        {
            files.Add(talk.FileName, talk.Html(FrameIn(talk.Words), talks.Where(other => other != talk)));
        }

        foreach (var language in languages)
        {
            files.Add(ClassPage.FileIn(language), ClassPage.Html(FrameIn(language), lessonPages, language, languages));
        }

        if (!singleFile)
        {
            foreach (var language in languages)
            {
                // A lesson that is not translated stands in the list in English.
                var listed = lessonPages.Select(pages => pages.Find(page => page.Words == language) ?? pages[0]).ToArray();
                files.Add(IndexPage.FileIn(language), IndexPage.Html(FrameIn(language), listed, language, languages));
            }

            SharedFiles.AddTo(files, player, IndexPage.FileIn(languages[0]), languages[0]);
        }

        return files.Write();
    }

    /// <summary>Publishes the page of one dial, for a phone beside it.</summary>
    /// <param name="place">Where the dial stands.</param>
    /// <param name="dial">The dial.</param>
    /// <param name="target">The folder that the page goes to; made when it is not there.</param>
    /// <param name="singleFile">Whether it becomes one file that holds everything.</param>
    /// <param name="language">The language of the page, by its two letters; English for one that the program has no words in.</param>
    /// <returns>The files that were written, relative to the target.</returns>
    /// <exception cref="PublishProblemException">The page cannot be made; nothing was written then.</exception>
    public async Task<IReadOnlyList<string>> PublishDialAsync(Place place, DialProfile dial, string target, bool singleFile, string language = WordTable.First)
    {
        ArgumentNullException.ThrowIfNull(place);
        ArgumentNullException.ThrowIfNull(dial);
        var player = await PlayerFolder.FindAsync(program, say);
        var words = WordTable.In(language);
        var made = await PageAsync(DialPage.Lesson(words), DialPage.Notebook(words, place.Name, dial), CellReferences.FromFolder(Path.Combine(player, "refs")), place, words);
        var page = made with { IsOfPlace = true };
        var files = new PageFiles(target);
        files.Add(page.FileName, page.Html(singleFile ? new SingleFrame(words, player) : new FolderFrame(words, hasIndex: false)));
        if (!singleFile)
        {
            SharedFiles.AddTo(files, player, page.FileName, words);
        }

        return files.Write();
    }

    private static Place Vigo { get; } = Gazetteer.Towns.First(town => town.Name == "Vigo");

    private static async Task<LessonPage> PageAsync(Lesson lesson, Notebook notebook, CellReferences references, Place place, WordTable words)
    {
        var cells = LessonBuild.Of(lesson.Folder, notebook, references);
        var asleep = await LessonRun.OfAsync(lesson.Folder, cells, place, predicted: false, words.Language);
        // Without a prediction nothing is locked, and a second run would show the same.
        var awake = asleep.Predicts ? await LessonRun.OfAsync(lesson.Folder, cells, place, predicted: true, words.Language) : asleep;
        return new LessonPage(lesson, notebook, cells, asleep, awake, words) { Place = place };
    }
}
