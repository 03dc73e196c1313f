/**
 * Sends one value at a time; while one is out only the newest that follows is kept, so that a slow answer never makes a queue.
 * @param send takes a value and returns a promise.
 */
export function newestOnly(send) {
  let wanted = null;
  let sending = false;

  async function offer(value) {
    wanted = value;
    if (sending) return;
    sending = true;
    try {
      while (wanted) {
        const next = wanted;
        wanted = null;
        await send(next);
      }
    } catch {
      // The page is going away or lost its connection; the connection's own notice says so.
    } finally {
      sending = false;
    }
  }

  offer.forget = () => { wanted = null; };
  return offer;
}
