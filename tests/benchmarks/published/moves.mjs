// Moves the control of an open fan and gives, for each move, the milliseconds from the control's event until the new figure stands in the page.
export const moves = (page, from, count) => page.evaluate(async ([from, count]) => {
  const range = document.querySelector("input[type=range]"), plot = document.querySelector(".figure-plot");
  const times = [];
  for (let i = from; i < from + count; i++) {
    const drawn = new Promise(done => {
      const watch = new MutationObserver(() => { watch.disconnect(); done(performance.now()); });
      watch.observe(plot, { childList: true });
    });
    const moved = performance.now();
    range.value = (i % 80) - 40;
    range.dispatchEvent(new Event("input"));
    times.push(await drawn - moved);
    await new Promise(next => setTimeout(next, 20));
  }
  return times;
}, [from, count]);

export const live = page => page.waitForFunction(() => document.documentElement.dataset.lesson === "live", null, { timeout: 120000 });

const sorted = values => [...values].sort((a, b) => a - b);
export const part = (values, share) => sorted(values)[Math.min(values.length - 1, Math.floor(values.length * share))];
