// What this browser keeps for the page, in IndexedDB: it survives reloading, closing and being offline. Every write is on disk before it
// counts ("strict"). Texts go over as JSON that the page itself reads.
const strict = { durability: 'strict' };
let opened = null;

function open() {
  return opened ??= new Promise((done, failed) => {
    const request = indexedDB.open('trivet-floor', 1);
    request.onupgradeneeded = () => {
      const db = request.result;
      db.createObjectStore('things');
      db.createObjectStore('chain', { keyPath: 'sequence' });
      db.createObjectStore('others', { keyPath: 'receipt' });
      db.createObjectStore('photographs', { keyPath: 'hash' });
    };
    request.onsuccess = () => done(request.result);
    request.onerror = () => { opened = null; failed(request.error); };
    request.onblocked = () => failed(new Error('blocked'));
  });
}

// One transaction; resolves when it is complete, with the result of the last request.
async function run(stores, mode, work) {
  const db = await open();
  return new Promise((done, failed) => {
    const transaction = db.transaction(stores, mode, strict);
    let result;
    transaction.oncomplete = () => done(result?.result);
    transaction.onabort = transaction.onerror = () => failed(transaction.error ?? new Error('aborted'));
    result = work(...stores.map(s => transaction.objectStore(s)));
  });
}

export const get = key => run(['things'], 'readonly', things => things.get(key)).then(text => text ?? null);

// Empty when it is kept, else the name of the error.
export const put = (key, text) => run(['things'], 'readwrite', things => things.put(text, key)).then(() => '', e => e.name);

export const chain = () => run(['chain'], 'readonly', chain => chain.getAll()).then(JSON.stringify);

// Adds one entry; a sequence that is taken already (by a second window) is refused by the store itself.
export const add = entry => run(['chain'], 'readwrite', chain => chain.add(JSON.parse(entry))).then(() => '', e => e.name);

export const lay = entries => run(['chain'], 'readwrite', chain => { for (const e of JSON.parse(entries)) chain.put(e); }).then(() => '', e => e.name);

export const others = () => run(['others'], 'readonly', others => others.getAll()).then(JSON.stringify);

// Other devices' entries together with the number of the last receipt they go up to: both or neither.
export const addOthers = (entries, head) => run(['others', 'things'], 'readwrite', (others, things) => {
  for (const e of JSON.parse(entries)) others.put(e);
  things.put(head, 'head');
}).then(() => '', e => e.name);

// A photograph is drawn anew, so that nothing but the picture itself stays: no place, no device, no name. Below it, and taking nothing of it,
// a line is burnt in that says what it shows.
const longest = 1600, largest = 4 * 1024 * 1024;

function burnIn(context, line, width, top, band) {
  context.fillStyle = '#000';
  context.fillRect(0, top, width, band);
  const write = size => { context.font = `600 ${size}px ${getComputedStyle(document.body).fontFamily}`; };
  write(band * 0.6);
  const room = width - band, needed = context.measureText(line).width;
  if (needed > room && room > 0) write(band * 0.6 * room / needed);
  context.fillStyle = '#fff';
  context.textBaseline = 'middle';
  context.fillText(line, band / 2, top + band / 2);
}

// Leaves out what an encoder adds of its own: application segments (0xE0 to 0xEF) and comments (0xFE), all before the first scan (ITU-T T.81, annex B,
// from memory). The desk takes none that tells more than its picture.
function pixelsOnly(bytes) {
  const all = new Uint8Array(bytes), kept = [all.subarray(0, 2)];
  let at = 2;
  for (; at + 4 <= all.length && all[at] === 0xFF && all[at + 1] !== 0xDA;) {
    const next = at + 2 + (all[at + 2] << 8 | all[at + 3]), marker = all[at + 1];
    if (!(marker >= 0xE0 && marker <= 0xEF || marker === 0xFE)) kept.push(all.subarray(at, next));
    at = next;
  }
  return new Blob([...kept, all.subarray(at)]).arrayBuffer();
}

export async function keepPhotograph(input, line) {
  const file = input?.files?.[0];
  if (!file) return '';
  try {
    const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const scale = Math.min(1, longest / Math.max(bitmap.width, bitmap.height));
    const canvas = document.createElement('canvas');
    const width = Math.max(1, Math.round(bitmap.width * scale)), height = Math.max(1, Math.round(bitmap.height * scale));
    const band = Math.max(18, Math.round(height / 28));
    canvas.width = width;
    canvas.height = height + band;
    const context = canvas.getContext('2d');
    context.drawImage(bitmap, 0, 0, width, height);
    bitmap.close();
    burnIn(context, line, width, height, band);
    const blob = await new Promise(done => canvas.toBlob(done, 'image/jpeg', 0.85));
    if (!blob || blob.size > largest) return 'EncodingError';
    const bytes = await pixelsOnly(await blob.arrayBuffer());
    const hash = [...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))].map(b => b.toString(16).padStart(2, '0')).join('');
    await run(['photographs'], 'readwrite', photographs => photographs.put({ hash, bytes, sent: false }));
    become.set(hash, 'waiting');
    return hash;
  } catch (e) {
    return e.name ?? 'Error';
  } finally {
    input.value = '';
  }
}

// What has become of each photograph, so that its bytes are read only to be sent: waiting, sent, or refused, which holds until the page is loaded anew.
const become = new Map();

async function learn() {
  for (const hash of await run(['photographs'], 'readonly', p => p.getAllKeys()))
    if (!become.has(hash)) become.set(hash, (await run(['photographs'], 'readonly', p => p.get(hash))).sent ? 'sent' : 'waiting');
}

const count = what => [...become.values()].filter(b => b === what).length;

// The number of them that the desk has not received.
export const photographsWaiting = () => learn().then(() => count('waiting'), () => 0);

// Sends what has not been received; gives how many still wait, and how many the desk does not take.
export async function sendPhotographs(address, token) {
  await learn();
  for (const hash of [...become.keys()].filter(h => become.get(h) === 'waiting')) {
    const photograph = await run(['photographs'], 'readonly', p => p.get(hash));
    const answer = await fetch(address + hash, {
      method: 'PUT', body: photograph.bytes, headers: { 'Content-Type': 'image/jpeg', RequestVerificationToken: token },
    }).catch(() => null);
    // Only what the desk says of its own counts: no page that something in between gave.
    if (answer?.status === 204) {
      await run(['photographs'], 'readwrite', p => p.put({ ...photograph, sent: true }));
      become.set(hash, 'sent');
    } else if (answer?.status === 413 || answer?.status === 422) become.set(hash, 'refused');
  }
  return [count('waiting'), count('refused')];
}

// A kept photograph to look at; null where it is not on this device.
export async function photograph(hash) {
  const kept = await run(['photographs'], 'readonly', p => p.get(hash));
  if (!kept) return null;
  let text = '';
  for (const b of new Uint8Array(kept.bytes)) text += String.fromCharCode(b);
  return 'data:image/jpeg;base64,' + btoa(text);
}
