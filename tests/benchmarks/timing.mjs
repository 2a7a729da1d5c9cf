// Times a run: once for warmth, then five times; prints millions of things a second as Timing.cs does.
export function rate(name, count, run) {
  const rates = { clock: [], cpu: [] };
  for (let i = 0; i < 6; i++) {
    const cpu = process.cpuUsage(), start = performance.now();
    if (!Number.isFinite(run())) throw new Error('not a number');
    const used = process.cpuUsage(cpu);
    if (i > 0) {
      rates.clock.push(count / (performance.now() - start) / 1e3);
      rates.cpu.push(count / (used.user + used.system));
    }
  }
  for (const list of Object.values(rates)) list.sort((a, b) => a - b);
  console.log(`${name} on node ${process.version}: ${rates.cpu[2].toFixed(3)} million a second of processor time (median of 5; best ${rates.cpu[4].toFixed(3)}), ${rates.clock[2].toFixed(3)} by the clock`);
}
