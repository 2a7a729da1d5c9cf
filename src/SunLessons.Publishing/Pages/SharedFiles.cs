using System.Text.Json.Nodes;
using SunLessons.Words;

namespace SunLessons.Publishing.Pages;

/// <summary>What all pages of a folder share, and what keeps them for times without a network.</summary>
internal static class SharedFiles
{
    /// <summary>Adds them; the last thing to be added, because the offline worker lists all others.</summary>
    /// <param name="files">The files so far.</param>
    /// <param name="player">The folder of the packed player.</param>
    /// <param name="start">The page that an installed copy opens.</param>
    /// <param name="words">The language.</param>
    public static void AddTo(PageFiles files, string player, string start, WordTable words)
    {
        files.Add("shared/page.js", PageFrame.PageScript);
        foreach (var name in (string[])["sunlessons.css", "page.css", "icon.svg"])
        {
            files.Add("shared/" + name, Asset.Text(name));
        }

        files.Add("shared/fonts/stix-two-math.woff2", Asset.Bytes("stix-two-math.woff2"));
        files.Add("shared/fonts/stix-two-math.OFL.txt", Asset.Text("stix-two-math.OFL.txt"));
        files.Add("shared/player.js", File.ReadAllText(Path.Combine(player, "player.js")));
        files.Add("shared/compiler.js", File.ReadAllText(Path.Combine(player, "compiler.js")));
        files.Add("lessons.webmanifest", new JsonObject
        {
            ["name"] = words["page.home.title"],
            ["short_name"] = "SunLessons",
            ["start_url"] = start,
            ["display"] = "browser",
            ["icons"] = new JsonArray(new JsonObject { ["src"] = "shared/icon.svg", ["type"] = "image/svg+xml", ["sizes"] = "any" }),
        }.ToJsonString());
        files.AddOfflineWorker("offline.js");
    }
}
