// Draws the standard widget models as the program's own pages draw them: the same elements, names and keys.
const lessonParts = (() => {
  const models = new Map();
  let send = () => {};

  const make = (tag, attributes = {}, ...children) => {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) {
      if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
      else if (value === true) element.setAttribute(name, "");
      else if (value !== false && value !== null && value !== undefined) element.setAttribute(name, value);
    }
    element.append(...children.filter(c => c !== null));
    return element;
  };

  // Only what differs: what is written anew is laid out and painted anew, while the drawing of the same move waits.
  const put = (element, values) => {
    for (const [name, value] of Object.entries(values)) if (String(element[name]) !== String(value)) element[name] = value;
  };

  const spoken = model => model.state._sunlessons_label || model.state.description || "";
  const id = model => "control-" + model.id;
  const change = (model, state) => {
    Object.assign(model.state, state);
    send(model.id, { state });
  };
  const custom = (model, content) => send(model.id, { content });

  const decimals = step => ((step.toFixed(8).replace(/0+$/, "").split(".")[1]) ?? "").length;
  const numeral = number => String(number).replace(".", words("culture.decimal"));
  const written = (value, step) => numeral(Number(value.toFixed(step > 0 ? decimals(step) : 6)));
  const onGrid = (value, low, high, step) => {
    const stepped = step > 0 ? low + Math.round((value - low) / step) * step : value;
    return Math.min(high, Math.max(low, Number(stepped.toFixed(Math.min(15, decimals(step) + 1)))));
  };
  const readNumber = (text, low, high, name) => {
    const plain = text.trim().replace("\u2212", "-").replace(",", ".");
    const allowed = words("number.range", written(low, 0), written(high, 0));
    const value = plain === "" ? NaN : Number(plain);
    if (!Number.isFinite(value)) return { problem: words("number.none", text.trim(), name, allowed, written((low + high) / 2, 0)) };
    if (value < low || value > high) return { problem: words("number.outside", written(value, 0), allowed, name) };
    return { value };
  };

  // Each drawer gives an element and a function that brings it up to date.
  const numberField = (model, low, high, step) => {
    const s = model.state;
    const problem = make("p", { id: id(model) + "-problem", class: "problem", hidden: true });
    const field = make("input", {
      type: "text", inputmode: "decimal", autocomplete: "off", "aria-describedby": problem.id,
      onchange: () => {
        const read = readNumber(field.value, low(), high(), s.description);
        problem.textContent = read.problem ?? "";
        problem.hidden = !read.problem;
        if (read.problem) field.setAttribute("aria-invalid", "true");
        else field.removeAttribute("aria-invalid");
        if (!read.problem) change(model, { value: model.name === "IntSliderModel" ? Math.round(read.value) : read.value });
        model.refresh();
      },
    });
    const refresh = () => {
      put(field, { disabled: !!s.disabled });
      // A refused text stays in the field: nothing that was typed is lost.
      if (problem.hidden) put(field, { value: written(s.value ?? 0, step()) });
    };
    return { field, problem, refresh };
  };

  const slider = model => {
    const s = model.state;
    const low = () => s.min ?? 0, high = () => s.max ?? 100, step = () => s.step ?? 0.1;
    const move = steps => { take(onGrid(s.value + steps * step(), low(), high(), step())); };
    const take = value => { number.problem.hidden = true; change(model, { value: model.name === "IntSliderModel" ? Math.round(value) : value }); model.refresh(); };
    const number = numberField(model, low, high, step);
    number.field.setAttribute("aria-label", words("number.type", spoken(model)));
    const label = make("label", { for: id(model) });
    const range = make("input", { type: "range", id: id(model), oninput: () => take(Number(range.value)) });
    const down = make("button", { type: "button", "aria-label": words("number.down", spoken(model)), onclick: () => move(-1) }, "\u2212");
    const up = make("button", { type: "button", "aria-label": words("number.up", spoken(model)), onclick: () => move(1) }, "+");
    const refresh = () => {
      put(label, { textContent: s.description });
      for (const element of [range, down, up]) put(element, { disabled: !!s.disabled });
      put(range, { min: low(), max: high(), step: step() });
      put(range, { value: s.value });
      const text = s._sunlessons_text || written(s.value, step());
      if (range.getAttribute("aria-valuetext") !== text) range.setAttribute("aria-valuetext", text);
      number.refresh();
    };
    return [make("div", { class: "control" }, label, make("div", { class: "control-row" }, down, range, up, number.field), number.problem), refresh];
  };

  const boundedNumber = model => {
    const s = model.state;
    const number = numberField(model, () => s.min ?? -1e9, () => s.max ?? 1e9, () => s.step ?? 0);
    number.field.id = id(model);
    const label = make("label", { for: id(model) });
    return [make("div", { class: "control" }, label, make("div", { class: "control-row" }, number.field), number.problem),
      () => { label.textContent = s.description; number.refresh(); }];
  };

  const dropdown = model => {
    const s = model.state;
    const label = make("label", { for: id(model) });
    const select = make("select", { id: id(model), onchange: () => select.value !== "" && change(model, { index: Number(select.value) }) });
    return [make("div", { class: "control" }, label, select), () => {
      label.textContent = s.description;
      select.replaceChildren(
        ...(s.index === null || s.index === undefined ? [make("option", { value: "" }, words("choose"))] : []),
        ...(s._options_labels ?? []).map((text, i) => make("option", { value: i }, text)));
      select.value = s.index ?? "";
      select.disabled = !!s.disabled;
    }];
  };

  const radios = model => {
    const s = model.state;
    const legend = make("legend");
    const field = make("fieldset", { "aria-label": spoken(model) }, legend);
    const inputs = (s._options_labels ?? []).map((text, i) => {
      const input = make("input", { type: "radio", name: id(model), value: i, onchange: () => change(model, { index: i }) });
      field.append(make("label", { class: "choice" }, input, make("span", {}, text)));
      return input;
    });
    return [field, () => {
      legend.textContent = s.description;
      field.disabled = !!s.disabled;
      inputs.forEach((input, i) => { input.checked = s.index === i; });
    }];
  };

  const checkbox = model => {
    const s = model.state;
    const input = make("input", { type: "checkbox", onchange: () => change(model, { value: input.checked }) });
    const text = make("span");
    return [make("label", { class: "choice" }, input, text), () => {
      text.textContent = s.description;
      input.checked = !!s.value;
      input.disabled = !!s.disabled;
    }];
  };

  const button = model => {
    const s = model.state;
    const chief = ["record-prediction", "check-answer", "talk-next"].includes(s._sunlessons_role);
    const element = make("button", { type: "button", class: chief ? "chief" : null, "data-role": s._sunlessons_role, onclick: () => custom(model, { event: "click" }) });
    return [element, () => { element.textContent = s.description; element.disabled = !!s.disabled; }];
  };

  const text = model => {
    const s = model.state;
    const label = make("label", { for: id(model) });
    const input = make("input", {
      type: "text", id: id(model), autocomplete: "off", spellcheck: "false", "aria-label": spoken(model),
      oninput: () => change(model, { value: input.value }),
      onkeydown: event => event.key === "Enter" && custom(model, { event: "submit" }),
    });
    return [make("div", { class: "control" }, label, input), () => {
      label.textContent = s.description;
      input.placeholder = s.placeholder ?? "";
      input.disabled = !!s.disabled;
      if (document.activeElement !== input) input.value = s.value ?? "";
    }];
  };

  const date = model => {
    const s = model.state;
    const label = make("label", { for: id(model) });
    const input = make("input", {
      type: "date", id: id(model),
      onchange: () => {
        const [year, month, day] = input.value.split("-").map(Number);
        if (day) change(model, { value: { year, month: month - 1, date: day } });
      },
    });
    // A browser writes dates in its own language; beside it stands the lesson's.
    const inWords = make("span", { id: id(model) + "-words", class: "soft" });
    input.setAttribute("aria-describedby", inWords.id);
    return [make("div", { class: "control" }, label, make("div", { class: "control-row" }, input, inWords)), () => {
      label.textContent = s.description;
      inWords.textContent = s._sunlessons_text ?? "";
      input.disabled = !!s.disabled;
      const v = s.value;
      input.value = v ? `${String(v.year).padStart(4, "0")}-${String(v.month + 1).padStart(2, "0")}-${String(v.date).padStart(2, "0")}` : "";
    }];
  };

  const markup = model => {
    const s = model.state;
    if (s._sunlessons_figure) return figure(model);
    const inner = make("div");
    const element = make("div", { class: "markup" }, inner);
    let shown;
    return [element, () => {
      if (shown !== s.value) { shown = s.value; inner.innerHTML = s.value ?? ""; }
    }];
  };

  const figure = model => {
    const s = model.state;
    const plot = make("div", { class: "figure-plot", role: "img" });
    const problem = make("p", { class: "problem", role: "alert", hidden: true });
    const summary = make("p", { role: "status", "aria-live": "polite" });
    const table = make("div");
    let open = false;
    const ask = () => custom(model, { event: "table" });
    const toggle = make("button", {
      type: "button", class: "quiet", "aria-expanded": "false",
      onclick: () => { open = !open; if (open) ask(); else table.replaceChildren(); tell(); },
    });
    const tell = () => { toggle.textContent = words(open ? "table.hide" : "table.show"); toggle.setAttribute("aria-expanded", open); };
    let saying;
    const say = content => {
      // 300 ms after the last change, so that a screen reader is not talked over while a control moves.
      clearTimeout(saying);
      saying = setTimeout(() => { summary.textContent = content.summary ?? ""; }, 300);
      plot.setAttribute("aria-label", content.alt ?? content.summary ?? "");
    };
    const draw = drawing => { if (drawing?.svg) plot.innerHTML = drawing.svg; };
    draw(s._sunlessons_figure);
    summary.textContent = s._sunlessons_summary ?? "";
    plot.setAttribute("aria-label", s._sunlessons_figure?.alt ?? "");
    tell();
    model.hear = content => {
      if (content.table) { table.innerHTML = content.table; return; }
      draw(content.figure ?? content.columns);
      problem.textContent = content.problem ?? "";
      problem.hidden = !content.problem;
      say(content);
      if (open) ask();
    };
    return [make("div", { class: "figure", "data-figure": s._sunlessons_key }, plot, problem, summary, toggle, table), () => {}];
  };

  const box = model => {
    const s = model.state;
    const element = make("div", {
      class: model.name === "HBoxModel" ? "group-horizontal" : "group-vertical", "data-part": s._sunlessons_role, "data-key": s._sunlessons_key,
    });
    let shown = "";
    return [element, () => {
      const children = s.children ?? [];
      if (shown !== children.join()) {
        shown = children.join();
        element.replaceChildren(...children.map(child => view(child.replace("IPY_MODEL_", ""))));
      }
    }];
  };

  const drawers = {
    FloatSliderModel: slider, IntSliderModel: slider, BoundedFloatTextModel: boundedNumber, DropdownModel: dropdown, RadioButtonsModel: radios,
    CheckboxModel: checkbox, ButtonModel: button, TextModel: text, DatePickerModel: date, HTMLModel: markup, HBoxModel: box, VBoxModel: box,
  };

  const view = key => {
    const model = models.get(key);
    if (!model.element) {
      [model.element, model.refresh] = (drawers[model.name] ?? markup)(model);
      model.refresh();
    }
    return model.element;
  };

  return {
    make,
    numeral,
    view,
    sendBy: way => { send = way; },
    forget: () => models.clear(),
    open: ({ id: key, model, state }) => models.set(key, { id: key, name: model, state, refresh: () => {}, hear: () => {} }),
    update: ({ id: key, state }) => { const model = models.get(key); if (model) { Object.assign(model.state, state); model.refresh(); } },
    custom: ({ id: key, content }) => models.get(key)?.hear(content),
  };
})();
