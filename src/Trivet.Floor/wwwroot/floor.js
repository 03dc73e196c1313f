// What only a script can do: listen to the network and the service worker, and hand over a file.
let waiting = null, kept = false;

export async function watch(page) {
  const tell = () => page.invokeMethodAsync('Tell', navigator.onLine, isSecureContext, !!navigator.serviceWorker?.controller, kept, !!waiting, -new Date().getTimezoneOffset());
  addEventListener('online', tell);
  addEventListener('offline', tell);
  // Asks the browser not to clear readings when it runs short of room. A person may be asked, so nothing waits for the answer.
  navigator.storage?.persist?.().then(yes => { kept = yes; tell(); }, () => {});
  // Asked at the same time, it may be told the older state later.
  const before = await navigator.storage?.persisted?.() ?? false;
  kept = kept || before;
  await tell();
  if (!navigator.serviceWorker) return;

  navigator.serviceWorker.addEventListener('controllerchange', tell);
  const registration = await navigator.serviceWorker.ready;
  const look = () => {
    // Without a page it has served, a worker that waits is the first one: nothing newer.
    waiting = navigator.serviceWorker.controller ? registration.waiting : null;
    tell();
  };
  registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
  look();
}

export function takeNewer() {
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting?.postMessage('take over');
}

export function saveFile(name, text) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}

export function toTop() {
  scrollTo(0, 0);
  document.querySelector('h1')?.focus({ preventScroll: true });
}

// What the person reads, the best first.
export const spoken = () => [...(navigator.languages ?? [navigator.language])];
export const language = tag => { document.documentElement.lang = tag; };
export const focusOn = id => document.getElementById(id)?.focus();
