// Publishes the lessons and a fan of hour lines, opens them from the disk in Chromium, and prints sizes and times with the load of the machine.
//   npm ci && node measure.mjs [RUNS]
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { live, moves, part } from "./moves.mjs";

const here = path.dirname(fileURLToPath(import.meta.url));
const root = path.resolve(here, "../../..");
const app = path.join(root, "src/SunLessons.App/bin/Release/net10.0/SunLessons.App.dll");
const runs = Number(process.argv[2] ?? 7);
const out = mkdtempSync(path.join(tmpdir(), "sunlessons-measure-"));
const say = (what, values, unit) => console.log(`${what.padEnd(58)} median ${part(values, 0.5).toFixed(1)} ${unit}, 95 % ${part(values, 0.95).toFixed(1)}, n ${values.length}`);

try {
  execFileSync("dotnet", ["exec", app, "publish", path.join(root, "lessons"), path.join(out, "lessons")], { stdio: "inherit" });
  execFileSync("dotnet", ["exec", app, "publish", path.join(here, "lessons"), path.join(out, "fan")], { stdio: "inherit" });
  console.log(`load ${loadavg().map(l => l.toFixed(1)).join(" ")}`);
  const size = file => statSync(path.join(out, "lessons", file)).size / 1e6;
  console.log(`player ${size("shared/player.js").toFixed(2)} MB, compiler ${size("shared/compiler.js").toFixed(2)} MB, lesson 6 ${(size("06-your-own-noon.html") * 1000).toFixed(0)} kB`);

  const open = async (file, use) => {
    const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"] });
    const page = await browser.newPage();
    const began = Date.now();
    await page.goto(pathToFileURL(path.join(out, file)).href);
    try { return await use(page, began); } finally { await browser.close(); }
  };

  const figures = [], wholes = [];
  for (let i = 0; i < runs; i++) {
    await open("fan/99-fan.html", async (page, began) => {
      await page.waitForFunction(() => document.querySelector(".figure[data-figure] svg"), null, { timeout: 120000 });
      figures.push(Date.now() - began);
    });
    await open("lessons/06-your-own-noon.html", async (page, began) => { await live(page); wholes.push(Date.now() - began); });
  }
  say("from the disk to the first live figure", figures, "ms");
  say("from the disk to the whole of lesson 6 live", wholes, "ms");

  const redrawn = await open("fan/99-fan.html", async page => {
    await live(page);
    return (await moves(page, 0, 220)).slice(20);
  });
  say("control to redrawn figure, 24 lines of 50 points", redrawn, "ms");

  const edits = [];
  for (let i = 0; i < Math.min(3, runs); i++) {
    await open("fan/99-fan.html", async page => {
      await live(page);
      await page.getByText("Show the C#").click();
      await page.getByText("Change it").click();
      const editor = page.locator("textarea");
      await editor.fill("Console.WriteLine(6 * 7);");
      const began = Date.now();
      await editor.press("Control+Enter");
      await page.waitForFunction(() => document.querySelector(".cell-output").textContent.includes("42"), null, { timeout: 120000 });
      edits.push(Date.now() - began);
    });
  }
  say("first changed cell, from its key to its output", edits, "ms");
  console.log(`load ${loadavg().map(l => l.toFixed(1)).join(" ")}`);
} finally {
  rmSync(out, { recursive: true, force: true });
}
