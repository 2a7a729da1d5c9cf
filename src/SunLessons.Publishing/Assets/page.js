// A published lesson: starts the worker, keeps the learner's record in this browser, puts outputs in their places. No address is asked for anything
// but the files that lie beside the page.
const lessonData = id => JSON.parse(document.getElementById(id)?.textContent ?? "null");
const lessonWords = lessonData("lesson-words") ?? {};
const words = (key, ...values) => values.reduce((text, value, i) => text.replaceAll(`{${i}}`, value), lessonWords[key] ?? key);

// Packs announce themselves, whether they stand in the page or come as files.
const lessonPacks = {};
function sunlessonsPack(name, files) {
  lessonPacks[name] = files;
  document.dispatchEvent(new Event("pack-" + name));
}

// On a web host the pages are kept for times without a network; a page from a disk is there anyway.
if (location.protocol.startsWith("http") && document.documentElement.dataset.offline) {
  navigator.serviceWorker?.register(document.documentElement.dataset.offline).catch(() => {});
  document.head.append(lessonParts.make("link", { rel: "manifest", href: "lessons.webmanifest" }));
}

(() => {
  const lesson = lessonData("lesson");
  if (!lesson) return;
  const find = (selector, from = document) => from.querySelector(selector);
  const { make } = lessonParts;
  const status = find("#lesson-status"), again = find("#lesson-again");
  const section = cell => find(`section[data-cell="${cell}"]`);
  const output = cell => find(".cell-output", section(cell));

  // What the learner did, kept where the browser keeps things for this page.
  const keep = (() => {
    const name = "sunlessons:" + lesson.id;
    let memory = {};
    const read = key => { try { return JSON.parse(localStorage.getItem(key)) ?? {}; } catch { return {}; } };
    const write = (key, value) => {
      try { localStorage.setItem(key, JSON.stringify(value)); }
      catch { status.textContent = words("page.notkept"); }
    };
    memory = { record: {}, edits: {}, ...read(name) };
    return {
      get record() { return memory.record; },
      get edits() { return memory.edits; },
      get place() { const place = read("sunlessons:place"); return place.name ? place : null; },
      set place(value) { write("sunlessons:place", value); },
      note(key, value) {
        if (value === null) delete memory.record[key];
        else memory.record[key] = value;
        write(name, memory);
      },
      edit(cell, source) {
        if (source === null) delete memory.edits[cell];
        else memory.edits[cell] = source;
        write(name, memory);
      },
      forget() { memory = { record: {}, edits: {} }; write(name, memory); },
    };
  })();

  const pack = async name => {
    if (!lessonPacks[name] && lessonData("pack-" + name)) lessonPacks[name] = lessonData("pack-" + name);
    if (!lessonPacks[name]) {
      await new Promise((resolve, reject) => {
        document.addEventListener("pack-" + name, resolve, { once: true });
        if (find(`script[src$="${name}.js"]`)) return;
        document.head.append(make("script", { src: `${lesson.shared}${name}.js`, onerror: () => reject(new Error(words("page.missing", `${name}.js`))) }));
      });
    }
    return lessonPacks[name];
  };

  let worker, waiting;
  const post = message => worker.postMessage(message);
  lessonParts.sendBy((id, message) => post({ do: "receive", id, message }));

  // The compiled cells travel as one compressed text; each knows where it lies.
  const assemblies = async () => {
    const all = await unpackedText(lesson.assemblies);
    return lesson.cells.map(({ cell, number, from, length, markup }) => ({ cell, number, markup: markup ?? "", assembly: all.slice(from, from + length) }));
  };

  async function start() {
    status.textContent = words("page.waking");
    again.hidden = true;
    lessonParts.forget();
    worker?.terminate();
    compiling = null;
    worker = new Worker(URL.createObjectURL(new Blob([`${unpackedText}\n(${lessonWorker})()`], { type: "text/javascript" })));
    worker.onmessage = ({ data }) => data.map(told).forEach(message => hear[message.kind]?.(message));
    worker.onerror = event => fail(event.message);
    post({ do: "begin", pack: await pack("player"), hello: { draws_figures: true, place: (lesson.ofPlace ? null : keep.place) ?? lesson.place, record: keep.record, language: document.documentElement.lang } });
    for (const cell of await assemblies()) post({ do: "run", ...cell });
  }

  // What C# tells comes as its own text, a drawing in bytes beside it; what the worker itself tells does not.
  const utf8 = new TextDecoder();
  const told = said => {
    if (typeof said === "string") return JSON.parse(said);
    if (!said.drawing) return said;
    const message = JSON.parse(said.text);
    (message.content.figure ?? message.content.columns).svg = utf8.decode(said.drawing);
    return message;
  };

  const fail = sentence => {
    clearTimeout(waiting);
    status.textContent = words("page.failed", sentence);
    again.hidden = false;
  };

  const fresh = new Set();
  const show = (cell, ...elements) => {
    if (fresh.delete(cell)) output(cell).replaceChildren();
    output(cell).append(...elements);
  };

  const hear = {
    open: lessonParts.open,
    update: lessonParts.update,
    custom: lessonParts.custom,
    running({ cell }) {
      fresh.add(cell);
      // A cell that takes long can be stopped: the lesson then begins again with everything that was answered.
      waiting = setTimeout(() => { status.textContent = words("page.running"); again.textContent = words("page.stop"); again.hidden = false; }, 2000);
    },
    ran({ cell, problem, problems }) {
      clearTimeout(waiting);
      if (problems) {
        fresh.delete(cell);
        output(cell).replaceChildren(...problems.map(p => make("p", { class: "failure", role: "alert" }, words("cell.problem", p.line, p.column, p.sentence))));
      } else if (problem) {
        show(cell, make("p", { class: "failure", role: "alert" }, problem));
      }
      fresh.delete(cell);
      section(cell).dataset.state = problem || problems ? "failed" : "ran";
      if (cell === lesson.cells.at(-1).cell || document.documentElement.dataset.lesson === "live") live();
    },
    display({ cell, widget, data }) {
      const value = data?.["application/vnd.sunlessons.value+json"];
      if (value) {
        for (const quoted of document.querySelectorAll(`.value[data-value="${value.name}"]`)) quoted.textContent = value.text;
        return;
      }
      if (widget) { show(cell, lessonParts.view(widget)); return; }
      const rich = data["image/svg+xml"] ?? data["text/html"];
      if (rich) {
        const element = make("div");
        element.innerHTML = rich;
        show(cell, element);
      } else {
        show(cell, make("pre", { class: "plain" }, data["text/plain"] ?? ""));
      }
    },
    stream({ cell, text }) { show(cell, make("pre", { class: "stream" }, text)); },
    record({ key, value }) { keep.note(key, value); },
    place(answer) { placeRead(answer); },
    compiler() { compiling?.ready(); },
    failed({ sentence }) { fail(sentence); },
  };

  const live = () => {
    document.documentElement.dataset.lesson = "live";
    status.textContent = words("page.live");
    again.textContent = words("page.again");
    again.hidden = false;
  };

  // Changing a cell: the compiler comes with the first one.
  let compiling = null;
  const compiler = () => {
    if (!compiling) {
      compiling = {};
      compiling.done = new Promise(resolve => { compiling.ready = resolve; });
      (async () => {
        const cells = lesson.cells.map(({ cell, script }) => ({ cell, source: script ?? find("code", section(cell)).textContent }));
        post({ do: "bringCompiler", pack: await pack("player"), more: await pack("compiler"), cells });
      })().catch(error => fail(error.message));
    }
    return compiling.done;
  };

  for (const tools of document.querySelectorAll(".cell-tools")) {
    const cell = tools.closest("section").dataset.cell;
    const text = find(".cell-text", section(cell));
    const own = find("code", text).textContent;
    const toggle = find("button", tools);
    const changeIt = make("button", { type: "button", onclick: () => { edit(); editor.focus(); fetchCompiler(); } }, words("cell.change"));
    const run = make("button", { type: "button", onclick: () => rerun() }, words("cell.run"));
    const restore = make("button", { type: "button", onclick: () => { keep.edit(cell, null); editor.value = own; tell(); } }, words("cell.restore"));
    const note = make("span", { role: "status" });
    const editor = make("textarea", {
      spellcheck: "false", autocomplete: "off", autocapitalize: "off", "aria-label": words("cell.label"),
      oninput: () => { keep.edit(cell, editor.value === own ? null : editor.value); tell(); },
      onkeydown: event => { if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) { event.preventDefault(); rerun(); } },
    });
    let editing = false, ran = own;
    const tell = () => {
      const source = keep.edits[cell] ?? own;
      note.textContent = source === ran ? "" : words("cell.stale");
      restore.hidden = source === own;
    };
    const edit = () => {
      editing = true;
      editor.value = keep.edits[cell] ?? own;
      editor.rows = Math.min(24, Math.max(4, editor.value.split("\n").length + 1));
      find("pre", text).hidden = true;
      text.append(editor);
      changeIt.replaceWith(run, restore);
      tell();
    };
    const fetchCompiler = async () => {
      note.textContent = words("cell.compiler");
      await compiler();
      tell();
    };
    const rerun = async () => {
      await fetchCompiler();
      ran = editor.value;
      tell();
      post({ do: "change", cell, source: ran, markup: "" });
    };
    toggle.addEventListener("click", () => {
      text.hidden = !text.hidden;
      toggle.setAttribute("aria-expanded", !text.hidden);
      toggle.textContent = words(text.hidden ? "cell.show" : "cell.hide");
      if (!text.hidden && !editing) tools.append(changeIt, note);
      if (keep.edits[cell] && !editing) edit();
    });
    if (section(cell).dataset.role === "own-dial" || keep.edits[cell]) toggle.click();
  }

  // The place.
  const panel = find(".place"), form = find(".place-form"), open = find("#place-open");
  let placeRead = () => {};
  if (panel) {
    const field = name => find("#place-" + name);
    // Six decimals of a degree are 0.1 m.
    const [north, south, east, west] = words("place.sides").split(" ");
    const angle = (degrees, plus, minus) => `${lessonParts.numeral(Number(Math.abs(degrees).toFixed(6)))}° ${degrees < 0 ? minus : plus}`;
    const latitude = place => angle(place.latitude_degrees, north, south), longitude = place => angle(place.longitude_degrees, east, west);
    const fill = place => {
      field("name").value = place.name;
      field("latitude").value = latitude(place);
      field("longitude").value = longitude(place);
      field("zone").value = place.zone;
    };
    const line = place => { find("#place-line").textContent = words("place.line", place.name, `${latitude(place)} ${longitude(place)}`, place.zone, lesson.zoneRules); };
    open.hidden = false;
    open.addEventListener("click", () => {
      form.hidden = !form.hidden;
      open.setAttribute("aria-expanded", !form.hidden);
      open.textContent = words(form.hidden ? "place.change" : "place.close");
    });
    const towns = lesson.towns;
    field("town").addEventListener("change", () => {
      const town = towns.find(t => t.name === field("town").value);
      if (town) fill(town);
    });
    form.addEventListener("submit", event => {
      event.preventDefault();
      post({ do: "place", text: Object.fromEntries(["name", "latitude", "longitude", "zone"].map(n => [n, field(n).value])) });
    });
    const problems = make("div");
    form.append(problems);
    placeRead = ({ place, problems: all }) => {
      problems.replaceChildren(...(all ?? []).map(p => make("p", { class: "problem", role: "alert" }, p)));
      if (!place) return;
      keep.place = place;
      line(place);
      post({ do: "receive", id: "", message: { place } });
      form.hidden = true;
      open.setAttribute("aria-expanded", false);
      open.textContent = words("place.change");
    };
    fill(keep.place ?? lesson.place);
    if (keep.place) line(keep.place);
  }

  // Before an audience: a key a correction.
  const talk = find("section[data-cell=talk]");
  if (talk) {
    const press = role => find(`[data-part=talk] button[data-role=${role}]`, talk)?.click();
    document.addEventListener("keydown", event => {
      if (event.target.closest("input, textarea, select, button, a")) return;
      if (["ArrowRight", "PageDown", " "].includes(event.key)) press("talk-next");
      else if (["ArrowLeft", "PageUp"].includes(event.key)) press("talk-back");
      else return;
      event.preventDefault();
    });
    talk.append(make("button", { type: "button", class: "quiet", onclick: () => document.fullscreenElement ? document.exitFullscreen() : talk.requestFullscreen() }, words("talk.full")));
  }

  again.addEventListener("click", () => start().catch(error => fail(error.message)));

  find("#answers-save")?.addEventListener("click", () => {
    const answers = { format: "sunlessons-answers", version: 1, lesson: lesson.id, title: lesson.title, language: document.documentElement.lang, place: (lesson.ofPlace ? null : keep.place) ?? lesson.place, record: keep.record };
    const link = make("a", { href: URL.createObjectURL(new Blob([JSON.stringify(answers, null, 1)], { type: "application/json" })), download: `${lesson.id}-answers.json` });
    link.click();
    URL.revokeObjectURL(link.href);
  });
  find("#answers-forget")?.addEventListener("click", () => {
    if (confirm(words("page.forget"))) {
      keep.forget();
      location.reload();
    }
  });

  start().catch(error => fail(error.message));
})();
