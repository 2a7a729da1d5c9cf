// Redraws two or more published fans by turns, 20 moves each, so that what else the machine does falls on all of them alike. Beside the time it prints the
// processor time that the worker's thread and the page's spend on a move, which another program's work does not lengthen (Linux).
//   node compare.mjs ROUNDS FOLDER FOLDER ...
import { readFileSync, readdirSync } from "node:fs";
import { loadavg } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { live, moves, part } from "./moves.mjs";

const [rounds, ...folders] = process.argv.slice(2);
const read = file => { try { return readFileSync(file, "utf8"); } catch { return ""; } };
const list = folder => { try { return readdirSync(folder); } catch { return []; } };
const under = pid => list(`/proc/${pid}/task`).flatMap(t => read(`/proc/${pid}/task/${t}/children`).split(" ").filter(Boolean)).flatMap(child => [child, ...under(child)]);
const spent = threads => threads.reduce((sum, thread) => sum + Number(read(`${thread}/schedstat`).split(" ")[0]) / 1e6, 0);
const load = () => console.log(`load ${loadavg().map(l => l.toFixed(1)).join(" ")}`);

const sides = [];
for (const folder of folders) {
  const server = await chromium.launchServer({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"] });
  const browser = await chromium.connect(server.wsEndpoint());
  const page = await browser.newPage();
  await page.goto(pathToFileURL(path.resolve(folder, "99-fan.html")).href);
  await live(page);
  const threads = under(server.process().pid).flatMap(pid => list(`/proc/${pid}/task`).map(t => `/proc/${pid}/task/${t}`));
  const worker = threads.filter(thread => read(`${thread}/comm`).startsWith("Dedicated"));
  const pids = worker.map(thread => thread.split("/")[2]);
  const main = pids.map(pid => `/proc/${pid}/task/${pid}`);
  await moves(page, 0, 20);
  sides.push({ folder, server, browser, page, worker, main, times: [], inWorker: [], inPage: [] });
}
load();
for (let round = 1; round <= Number(rounds); round++) {
  for (const side of sides) {
    const [worker, main] = [spent(side.worker), spent(side.main)];
    side.times.push(...await moves(side.page, round * 20, 20));
    side.inWorker.push((spent(side.worker) - worker) / 20);
    side.inPage.push((spent(side.main) - main) / 20);
  }
}
for (const { folder, server, browser, times, inWorker, inPage } of sides) {
  const figures = [["fastest tenth", part(times, 0.1)], ["median", part(times, 0.5)], ["95 %", part(times, 0.95)], ["processor: worker", part(inWorker, 0.5)], ["page", part(inPage, 0.5)]];
  console.log(`${folder}: ${figures.map(([what, ms]) => `${what} ${ms.toFixed(1)} ms`).join(", ")}, n ${times.length}`);
  await browser.close();
  await server.close();
}
load();
