// While developing nothing is kept, so that every change is seen. The published page uses service-worker.published.js instead.
self.addEventListener('fetch', () => {});
