// astronomy-engine: declination and equation of time of the Sun, geocentric, apparent, of date. Prints its rate.
import * as Astronomy from 'astronomy-engine';

function position(ut) {
  const time = new Astronomy.AstroTime(ut);
  const ofDate = Astronomy.RotateVector(Astronomy.Rotation_EQJ_EQD(time), Astronomy.GeoVector(Astronomy.Body.Sun, time, true));
  const place = Astronomy.EquatorFromVector(ofDate);
  // Hours: sidereal time less right ascension less mean solar time from noon (days from J2000 begin at noon).
  let equation = Astronomy.SiderealTime(time) - place.ra - 24 * (ut - Math.floor(ut));
  equation -= 24 * Math.round(equation / 24);
  return [place.dec, equation * 3600];
}

const [dec, eot] = position(2461347.5 - 2451545);
console.log(`check, the same instant: astronomy-engine ${dec.toFixed(5)} degrees, ${eot.toFixed(3)} s`);
const count = 100000;
const days = Float64Array.from({ length: count }, (_, i) => -36524.5 + 73000 * ((i * 0.6180339887498949) % 1));
let sum = 0;
const rates = { clock: [], cpu: [] };
for (let run = 0; run < 6; run++) {
  const cpu = process.cpuUsage(), start = performance.now();
  for (const d of days) sum += position(d)[1];
  const used = process.cpuUsage(cpu);
  if (run > 0) { rates.clock.push(count / (performance.now() - start) / 1e3); rates.cpu.push(count / (used.user + used.system)); }
}
for (const list of Object.values(rates)) list.sort((a, b) => a - b);
if (!Number.isFinite(sum)) throw new Error('not a number');
console.log(`astronomy-engine 2.1.19 on node ${process.version}: ${rates.cpu[2].toFixed(3)} million a second of processor time (median of 5; best ${rates.cpu[4].toFixed(3)}), ${rates.clock[2].toFixed(3)} by the clock`);
