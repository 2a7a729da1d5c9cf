// Makes earth_series.csv, nutation.csv, delta_t.csv and leap_seconds.csv.
//
//   npm pack astronomia@4.2.0 && tar xzf astronomia-4.2.0.tgz
//   node make-tables.mjs package /usr/share/zoneinfo/leap-seconds.list
//
// First argument: the unpacked package. Second: the leap second list of the time-zone database (Debian package tzdata).
import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'

const [, , packageFolder, leapList] = process.argv
const data = async name => (await import('file://' + resolve(packageFolder, 'data', name))).default
const made = '# made by make-tables.mjs from npm astronomia 4.2.0 (MIT)'

// 1. The Earth's orbit, VSOP87. Longitude and distance from version B (mean ecliptic and equinox of J2000), latitude from version D
// (ecliptic of date: there the slow turning of the ecliptic is taken out already). A term stays if it reaches the cut by the year 2100,
// which is 0.1 thousand years from J2000. 1e-7 rad = 0.02".
const cut = { L: 1e-7, B: 1e-7, R: 1e-6 }
const earthB = await data('vsop87Bearth.js')
const earthD = await data('vsop87Dearth.js')
const rows = [made + ': VSOP87 (Bretagnon and Francou 1988)', 'coordinate,power,amplitude,phase_rad,frequency_rad_per_millennium']
for (const [coordinate, series] of [['L', earthB.L], ['B', earthD.B], ['R', earthB.R]]) {
  for (const [power, terms] of Object.entries(series)) {
    for (const [amplitude, phase, frequency] of terms) {
      if (amplitude * 0.1 ** power >= cut[coordinate]) rows.push([coordinate, power, amplitude, phase, frequency].join(','))
    }
  }
}
writeFileSync('earth_series.csv', rows.join('\n') + '\n')

// 2. Nutation, IAU 1980: the terms of 0.005" and more. The package keeps the table inside its source, 9 numbers to a row.
const source = readFileSync(resolve(packageFolder, 'src', 'nutation.js'), 'utf8')
const table = source.slice(source.indexOf('const tab = ['))
const nutation = [made + ': IAU 1980 nutation (Wahr; Seidelmann 1982), units 0.0001 arcsec', 'd,m,m_moon,f,node,psi_sin,psi_sin_t,eps_cos,eps_cos_t']
for (const [, row] of table.matchAll(/\[([-0-9., ]+)\]/g)) {
  const n = row.split(',').map(Number)
  if (n.length === 9 && (Math.abs(n[5]) >= 50 || Math.abs(n[7]) >= 50)) nutation.push(n.join(','))
}
writeFileSync('nutation.csv', nutation.join('\n') + '\n')

// 3. TT - UT1. Half-yearly 1880 to 1972, then the first month of each quarter.
const deltaT = await data('deltat.js')
const days = (y, m) => (Date.UTC(y, m - 1, 1) - Date.UTC(2000, 0, 1)) / 86400000
const dt = [made + ': TT - UT1 as published by USNO and IERS', 'year,month,days_from_2000_01_01,tt_minus_ut1_s']
deltaT.historic.table.forEach((value, i) => {
  const year = deltaT.historic.first + i / 2
  if (year >= 1880 && year <= 1973) dt.push([Math.floor(year), year % 1 ? 7 : 1, days(Math.floor(year), year % 1 ? 7 : 1), value].join(','))
})
let [year, month] = deltaT.data.firstYM
for (const value of deltaT.data.table) {
  const last = year === deltaT.data.lastYM[0] && month === deltaT.data.lastYM[1]
  if (month % 3 === 1 || last) dt.push([year, month, days(year, month), value].join(','))
  if (++month > 12) { month = 1; year++ }
}
writeFileSync('delta_t.csv', dt.join('\n') + '\n')

// 4. TAI - UTC, whole seconds from 1972 on. The list counts seconds from 1900-01-01.
const leaps = ['# made by make-tables.mjs from the time-zone database\'s leap-seconds.list (public domain)', 'days_from_2000_01_01,tai_minus_utc_s']
for (const line of readFileSync(leapList, 'utf8').split('\n')) {
  const m = /^(\d+)\s+(\d+)/.exec(line)
  if (m) leaps.push(`${(Number(m[1]) - 3155673600) / 86400},${m[2]}`)
}
writeFileSync('leap_seconds.csv', leaps.join('\n') + '\n')
