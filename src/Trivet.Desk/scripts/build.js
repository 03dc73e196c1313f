// Bundles the desk's scripts and style sheet into ../wwwroot/dist. Everything the page needs is in there: no network at run time.
import { build } from 'esbuild';
import { rm } from 'node:fs/promises';

const outdir = '../wwwroot/dist';
await rm(outdir, { recursive: true, force: true });

const common = {
  bundle: true,
  minify: true,
  legalComments: 'external',
  target: ['es2022', 'chrome111', 'firefox113', 'safari16.4'],
  logLevel: 'warning',
  outdir,
};

// The 3-D drawing is large and fetched only when it is opened.
await build({ ...common, entryPoints: ['src/desk.js', 'src/scene.js'], format: 'esm', external: ['./scene.js'] });
// Runs before the first paint, so it is a classic script.
await build({ ...common, entryPoints: ['src/theme.js'], format: 'iife' });
await build({
  ...common,
  entryPoints: ['styles/desk.css'],
  loader: { '.woff2': 'file', '.woff': 'empty' },
  assetNames: '[name]',
});
