// Makes delta_t_monthly.csv:  npm pack astronomia@4.2.0 && tar xzf astronomia-4.2.0.tgz && node make-delta-t-monthly.mjs package
import { writeFileSync } from 'node:fs'
import { resolve } from 'node:path'

const { default: deltaT } = await import('file://' + resolve(process.argv[2], 'data', 'deltat.js'))
let [year, month] = deltaT.data.firstYM
const rows = [
  '# made by make-delta-t-monthly.mjs: TT - UT1 on the first of each month, US Naval Observatory, carried by npm astronomia 4.2.0 (MIT)',
  'year,month,tt_minus_ut1_s'
]
for (const value of deltaT.data.table) {
  rows.push([year, month, value].join(','))
  if (++month > 12) { month = 1; year++ }
}
writeFileSync('delta_t_monthly.csv', rows.join('\n') + '\n')
