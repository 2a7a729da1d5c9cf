// What only the browser can do for the pages: draw figures, hold the editor, open and close addresses.
// No state of a lesson lives here.

const figures = new WeakMap();

export function sayLanguage(tag) {
  document.documentElement.lang = tag;
}

// The figure is drawn whole once; afterwards only the columns that changed are sent.
export function drawFigure(element, figure) {
  const plotly = globalThis.Plotly;
  if (!plotly || !element) return false;
  const config = Object.assign({ responsive: true, displaylogo: false, displayModeBar: false }, figure.config ?? {});
  plotly.react(element, figure.data, figure.layout, config);
  figures.set(element, true);
  // The style sheet keeps a place until then; now the drawing has a height of its own.
  element.style.minHeight = "0";
  return true;
}

export function changeColumns(element, columns) {
  const plotly = globalThis.Plotly;
  if (!plotly || !figures.has(element)) return false;
  const { traces, layout, ...data } = columns;
  plotly.update(element, data, layout ?? {}, traces);
  return true;
}

export function dropFigure(element) {
  if (globalThis.Plotly && element && figures.has(element)) {
    globalThis.Plotly.purge(element);
    figures.delete(element);
  }
}

// The editor is large; it is fetched when a cell is first edited.
let editorReady;
export function prepareEditor() {
  editorReady ??= (async () => {
    for (const file of ["jsInterop.js", "lib/monaco-editor/min/vs/loader.js", "lib/monaco-editor/min/vs/editor/editor.main.js"]) {
      await new Promise((resolve, reject) => {
        const script = document.createElement("script");
        script.src = "_content/BlazorMonaco/" + file;
        script.onload = resolve;
        script.onerror = () => reject(new Error(script.src));
        document.head.appendChild(script);
      });
    }
    // The file only declares the editor's modules; asking for the main one brings them to life.
    await new Promise((resolve, reject) => globalThis.require(["vs/editor/editor.main"], resolve, reject));
    const faces = getComputedStyle(document.documentElement);
    const colour = name => faces.getPropertyValue(name).trim();
    globalThis.monaco.editor.defineTheme("sunlessons", {
      base: "vs", inherit: false,
      rules: [
        { token: "", foreground: colour("--ink") },
        { token: "comment", foreground: colour("--soft"), fontStyle: "italic" },
        { token: "keyword", foreground: colour("--cool") },
        { token: "string", foreground: colour("--good") },
        { token: "number", foreground: colour("--warm") },
        { token: "type", foreground: colour("--ink"), fontStyle: "bold" },
      ],
      colors: {
        "editor.background": colour("--sheet"),
        "editor.foreground": colour("--ink"),
        "editorLineNumber.foreground": colour("--edge"),
        "editor.lineHighlightBackground": colour("--wash"),
        "editorCursor.foreground": colour("--ink"),
      },
    });
  })();
  return editorReady;
}
