// Keeps the whole page on the device. The list of files with their hashes is made when publishing; a file that does not have its
// hash is refused by the browser, so the page on the device is whole or it is the one before.
self.importScripts('./service-worker-assets.js');

const name = `trivet-floor-${self.assetsManifest.version}`;
// Other forms of the same files, which the server chooses by itself, and the worker, which the browser keeps.
const leftOut = /\.(br|gz|map|pdb)$|^service-worker/;
const files = self.assetsManifest.assets.filter(asset => !leftOut.test(asset.url));
const urls = new Set(files.map(asset => new URL(asset.url, self.location).href));
const start = new URL('index.html', self.location).href;

self.addEventListener('install', event => event.waitUntil((async () => {
  const cache = await caches.open(name);
  await cache.addAll(files.map(asset => new Request(asset.url, { integrity: asset.hash, cache: 'no-cache' })));
})()));

// The first worker takes the open page over, so that it works offline without loading it again. A newer one waits until the person says so.
self.addEventListener('activate', event => event.waitUntil((async () => {
  for (const key of await caches.keys())
    if (key.startsWith('trivet-floor-') && key !== name) await caches.delete(key);
  await self.clients.claim();
})()));

self.addEventListener('message', event => {
  if (event.data === 'take over') self.skipWaiting();
});

self.addEventListener('fetch', event => {
  if (event.request.method !== 'GET') return;
  const url = event.request.mode === 'navigate' ? start : event.request.url.split(/[?#]/)[0];
  // A bundle at the desk and all else that is not the page itself goes to the network.
  if (urls.has(url)) event.respondWith(caches.open(name).then(cache => cache.match(url)).then(kept => kept ?? fetch(event.request)));
});
