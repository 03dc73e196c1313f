// The page is kept on the device by its service worker; without one (an old browser, an address that is not secure) it still works online.
if ('serviceWorker' in navigator) navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' }).catch(() => {});
