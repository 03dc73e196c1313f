// The reader's choice of light or dark sheet, applied before the first paint. Without a choice the system's preference holds.
try {
  const chosen = localStorage.getItem('trivet-theme');
  if (chosen === 'light' || chosen === 'dark') document.documentElement.dataset.theme = chosen;
} catch {
  // Storage may be closed to us; the system's preference then holds.
}
