// astronomy-engine: declination and equation of time of the Sun, geocentric, apparent, of date. Prints its rate.
import * as Astronomy from 'astronomy-engine';
import { rate } from '../timing.mjs';

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
rate('astronomy-engine 2.1.19', count, () => {
  let sum = 0;
  for (const d of days) sum += position(d)[1];
  return sum;
});
