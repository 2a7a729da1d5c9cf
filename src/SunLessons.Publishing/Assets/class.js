// The teacher's page: reads answer files that learners saved, counts, and keeps nothing. No file leaves this device.
(() => {
  const known = lessonData("class");
  if (!known) return;
  const { make } = lessonParts;
  const result = document.querySelector("#class-result");

  const median = values => {
    const sorted = values.filter(Number.isFinite).sort((a, b) => a - b);
    return sorted.length === 0 ? null : sorted.length % 2 ? sorted[(sorted.length - 1) / 2] : (sorted[sorted.length / 2 - 1] + sorted[sorted.length / 2]) / 2;
  };
  const minutes = ms => ms === null ? "–" : words("class.minutes", lessonParts.numeral((ms / 60000).toFixed(1)));
  const count = values => values.reduce((counts, value) => counts.set(value, (counts.get(value) ?? 0) + 1), new Map());
  const counted = counts => [...counts].sort((a, b) => b[1] - a[1]).map(([name, n]) => `${name} × ${n}`).join("; ") || "–";
  const time = text => text ? Date.parse(text) : NaN;

  const table = (caption, heads, rows) => make("table", { class: "sunlessons-table" },
    make("caption", {}, caption),
    make("thead", {}, make("tr", {}, ...heads.map(head => make("th", { scope: "col" }, head)))),
    make("tbody", {}, ...rows.map(row => make("tr", {}, make("th", { scope: "row" }, row[0]), ...row.slice(1).map(cell => make("td", {}, String(cell)))))));

  const entries = (files, kind) => {
    const all = new Map();
    for (const file of files) {
      for (const [key, value] of Object.entries(file.record)) {
        if (!key.startsWith(kind + ":") || value === null || typeof value !== "object") continue;
        const name = key.slice(kind.length + 1);
        all.set(name, [...(all.get(name) ?? []), value]);
      }
    }
    return all;
  };

  const lessonResult = (id, files) => {
    const lesson = known.lessons[id] ?? { title: id, predictions: {}, checks: {}, slips: {}, said: {} };
    // What a file says of an answer in its own language, in this page's; two slips at once are named one after the other.
    const said = (question, text) => lesson.said[`${question}:${text}`] ?? text;
    const slip = name => lesson.slips[name] ?? known.slips[name];
    const wrong = (question, text) => {
      const slips = text.split("+").map(slip);
      return slips.every(Boolean) ? slips.join(words("class.and")) : said(question, text);
    };
    const section = make("section", { "data-lesson": id }, make("h2", {}, lesson.title), make("p", {}, words("class.files", files.length)));
    const predictions = [...entries(files, "prediction")].map(([key, values]) => [lesson.predictions[key] ?? key, values.length, counted(count(values.map(v => said("prediction:" + key, v.answer))))]);
    if (predictions.length > 0) section.append(table(words("class.predictions"), [words("class.question"), words("class.given"), words("class.answers")], predictions));
    const checks = [...entries(files, "check")].map(([key, values]) => {
      const tried = values.filter(v => (v.tries ?? 0) > 0);
      const right = tried.filter(v => v.state === "right");
      return [
        lesson.checks[key] ?? key,
        tried.length,
        right.length,
        right.filter(v => v.tries === 1).length,
        median(tried.map(v => v.hints ?? 0)) ?? "–",
        minutes(median(right.map(v => time(v.right_at) - time(v.first_at)))),
        counted(count(tried.flatMap(v => v.wrong ?? []).map(text => wrong("check:" + key, text)))),
      ];
    });
    if (checks.length > 0) {
      section.append(table(words("class.checks"), ["class.question", "class.tried", "class.right", "class.first", "class.hints", "class.time", "class.wrong"].map(key => words(key)), checks));
    }
    const spans = files.map(file => {
      const times = Object.values(file.record).flatMap(v => [v?.at, v?.first_at, v?.right_at]).map(time).filter(Number.isFinite);
      return times.length > 1 ? Math.max(...times) - Math.min(...times) : NaN;
    });
    section.append(make("p", {}, words("class.span", minutes(median(spans)))));
    return section;
  };

  const read = async list => {
    const files = [], refused = [];
    for (const file of list) {
      if (!file.name.endsWith(".json")) continue;
      try {
        const answers = JSON.parse(await file.text());
        if (answers.format !== "sunlessons-answers" || typeof answers.record !== "object" || answers.record === null) throw new Error();
        files.push(answers);
      } catch {
        refused.push(make("p", { class: "problem", role: "alert" }, words("class.refused", file.name)));
      }
    }
    const lessons = files.reduce((all, file) => {
      const lesson = known.editions[file.lesson] ?? file.lesson;
      return all.set(lesson, [...(all.get(lesson) ?? []), file]);
    }, new Map());
    const order = Object.keys(known.lessons);
    result.replaceChildren(
      make("p", { role: "status" }, words("class.read", files.length)),
      ...refused,
      ...[...lessons].sort((a, b) => order.indexOf(a[0]) - order.indexOf(b[0])).map(([id, all]) => lessonResult(id, all)));
  };

  for (const input of document.querySelectorAll("#class-folder, #class-files")) input.addEventListener("change", () => read([...input.files]));
})();
