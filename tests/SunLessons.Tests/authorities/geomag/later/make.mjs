// Makes an invented later model in the format of WMM.COF and asks npm's geomagnetism 0.2.0, which reads that format itself, for its field.
// Run: npm install geomagnetism@0.2.0 in a folder of your own, then: node make.mjs FOLDER (writes later_2030.cof and later_2030.csv beside itself)
import { createRequire } from 'node:module';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const require = createRequire(process.argv[2] + '/package.json');
const root = require.resolve('geomagnetism').replace(/index\.js$/, '');
const wmm = require(root + 'data/wmm-2025.json');
const parse = require(root + 'lib/parsers/cof.js');
const Model = require(root + 'lib/model.js');

// WMM2025 carried to 2030.0, and in addition 60 nT of h(1,1) and 9 nT of g(2,1): a field that no forecast of 2025 has.
let text = '    2030.0            WMM-2030     12/13/2029\n';
for (let n = 1; n <= 12; n++) {
  for (let m = 0; m <= n; m++) {
    const i = n * (n + 1) / 2 + m;
    const [g, h, dg, dh] = ['main_field_coeff_g', 'main_field_coeff_h', 'secular_var_coeff_g', 'secular_var_coeff_h'].map(name => wmm[name][i] ?? 0);
    const later = [g + 5 * dg + (n === 2 && m === 1 ? 9 : 0), h + 5 * dh + (n === 1 && m === 1 ? 60 : 0), dg, dh];
    text += ` ${String(n).padStart(2)} ${String(m).padStart(2)} ` + later.map(x => x.toFixed(1).padStart(10)).join('') + '\n';
  }
}
text += ('9'.repeat(48) + '\n').repeat(2);
const here = fileURLToPath(new URL('.', import.meta.url));
writeFileSync(here + 'later_2030.cof', text);

const model = new Model(parse(text));
let csv = '# made by make.mjs from later_2030.cof by npm geomagnetism 0.2.0\nlatitude_degrees,longitude_degrees,decimal_year,declination_degrees,horizontal_nanotesla\n';
for (const [lat, lon] of [[69.65, 18.96], [47.56, -52.71], [42.24, -8.72], [27.72, 85.32], [-1.29, 36.82], [-12.46, 130.84], [-45.87, 170.5], [-54.8, -68.3]]) {
  for (const year of [2030, 2032]) {
    const at = model.getTimedModel(new Date(Date.UTC(year, 0, 1))).point([lat, lon, 0]);
    csv += `${lat},${lon},${year},${at.decl.toFixed(7)},${at.h.toFixed(4)}\n`;
  }
}
writeFileSync(here + 'later_2030.csv', csv);
