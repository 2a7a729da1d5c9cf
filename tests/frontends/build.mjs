// Bundles the page into one script that needs no network: node build.mjs FOLDER
import { build } from 'esbuild';
import { copyFile, mkdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const target = process.argv[2];
if (!target) {
  console.error('Give the folder to build into: node build.mjs FOLDER');
  process.exit(2);
}

await mkdir(target, { recursive: true });
await build({
  entryPoints: [join(here, 'page.mjs')],
  bundle: true,
  format: 'iife',
  outfile: join(target, 'page.js'),
  // The packages were made for another bundler: they expect these two names from it.
  define: { __webpack_public_path__: '"/static/"', global: 'window' },
  loader: { '.svg': 'dataurl', '.woff': 'dataurl', '.woff2': 'dataurl', '.ttf': 'dataurl', '.eot': 'dataurl' },
  logLevel: 'warning',
});
await copyFile(join(here, 'page.html'), join(target, 'page.html'));
