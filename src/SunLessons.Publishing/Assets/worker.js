// Runs in a worker of its own: the C# runtime, the lesson's cells, and on request the compiler. A cell that never ends hangs this worker, never the page.
function lessonWorker() {
  let player, compiler, runtime;
  let work = Promise.resolve();

  // What a moved control makes C# say waits until its first drawing is there, or until C# has nothing more to do, so that the page is woken once and is not
  // busy with the control when the drawing comes. Null where nothing waits: what a cell says while it runs goes at once.
  let waiting = null;
  const tell = message => waiting ? waiting.push(message) : self.postMessage([message]);
  const draw = (text, view) => {
    const drawing = view.slice();
    self.postMessage([...waiting?.splice(0) ?? [], { text, drawing }], [drawing.buffer]);
  };
  const release = () => {
    const said = waiting;
    waiting = null;
    if (said?.length) self.postMessage(said);
  };

  function receive({ id, message }) {
    waiting ??= [];
    player.Receive(id, JSON.stringify(message));
    // C# put what it has to do behind this message; this comes behind that.
    setTimeout(release, 0);
  }

  // Scripts of the runtime ask for their own address, which in a page from a disk is none that they can use; the packer wrote another in.
  async function begin({ pack, hello }) {
    const scripts = {};
    for (const name of Object.keys(pack).filter(n => n.endsWith(".js"))) {
      scripts[name] = URL.createObjectURL(new Blob([await unpackedText(pack[name])], { type: "text/javascript" }));
    }
    const { dotnet } = await import(scripts["dotnet.js"]);
    runtime = await dotnet.withResourceLoader((type, name) => type === "dotnetjs"
      ? scripts[name]
      : unpackedText(pack[name]).then(bytes => new Response(bytes, { headers: { "content-type": "application/wasm" } }))).create();
    runtime.setModuleImports("page", { tell, draw });
    player = (await runtime.getAssemblyExports("SunLessons.Player.dll")).SunLessons.Player.LessonPlayer;
    player.Begin(JSON.stringify(hello));
    tell({ kind: "begun" });
  }

  async function run({ cell, assembly, number, markup }) {
    tell({ kind: "running", cell });
    tell({ kind: "ran", cell, problem: await player.RunAsync(cell, assembly, number, markup) });
  }

  // The runtime's own assemblies are what cells may name; the compiler reads them from the same packs.
  async function bringCompiler({ pack, more, cells }) {
    const assemblies = {};
    for (const [name, packed] of Object.entries({ ...pack, ...more })) {
      if (name.endsWith(".dll")) assemblies[name] = await unpackedText(packed);
    }
    for (const name of Object.keys(more).filter(n => n.endsWith(".dll"))) player.Load(assemblies[name]);
    compiler = (await runtime.getAssemblyExports("SunLessons.Player.dll")).SunLessons.Player.LessonCompiler;
    for (const bytes of Object.values(assemblies)) compiler.Refer(bytes);
    for (const { cell, source } of cells) compiler.Adopt(source, cell);
    tell({ kind: "compiler" });
  }

  async function change({ cell, source, markup }) {
    tell({ kind: "running", cell });
    const build = JSON.parse(compiler.Build(source, cell));
    if (build.problems.length > 0) {
      tell({ kind: "ran", cell, problems: build.problems });
      return;
    }
    const assembly = Uint8Array.from(atob(build.assembly), c => c.charCodeAt(0));
    tell({ kind: "ran", cell, problem: await player.RunAsync(cell, assembly, build.number, markup) });
  }

  const place = ({ text }) => tell({ kind: "place", ...JSON.parse(player.ReadPlace(text.name, text.latitude, text.longitude, text.zone)) });

  const ordered = { begin, run, bringCompiler, change };
  // A listener, not "onmessage": by that the runtime would take itself for a helper thread and wait for ever.
  self.addEventListener("message", ({ data }) => {
    if (data.do === "receive") return receive(data);
    release();
    if (data.do === "place") place(data);
    else work = work.then(() => ordered[data.do](data)).catch(error => tell({ kind: "failed", sentence: String(error?.message ?? error) }));
  });
}
