// npm's geomagnetism: the field of WMM2025 at a place, all parts. Prints its answer for one place and its rate.
import geomagnetism from 'geomagnetism';
import { rate } from '../timing.mjs';

const model = geomagnetism.model(new Date(Date.UTC(2026, 6, 2, 12)));
const check = model.point([42.24, -8.72, 0]);
console.log(`check, Vigo, 2026.5: geomagnetism ${check.decl.toFixed(4)} degrees, H ${check.h.toFixed(1)} nT`);
const count = 100000;
const places = Array.from({ length: count }, (_, i) => [-89 + 178 * ((i * 0.6180339887498949) % 1), -180 + 360 * ((i * 0.7548776662466927) % 1), 0]);
rate('geomagnetism 0.2.0, WMM2025, one date', count, () => {
  let sum = 0;
  for (const place of places) sum += model.point(place).decl;
  return sum;
});
