// Saves a drawing as it stands: as SVG with the colours of paper, or as PNG at twice the size of the screen.

const paper = { ground: '#ffffff' };

export function saveSvg(button) {
  const svg = drawingOf(button);
  if (svg) hand(new Blob([textOf(svg)], { type: 'image/svg+xml' }), `${button.dataset.name}.svg`);
}

export async function savePng(button) {
  const svg = drawingOf(button);
  if (!svg) return;
  const box = svg.viewBox.baseVal;
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(box.width * 2);
  canvas.height = Math.round(box.height * 2);
  const picture = new Image();
  picture.src = URL.createObjectURL(new Blob([textOf(svg)], { type: 'image/svg+xml' }));
  try {
    await picture.decode();
    const pen = canvas.getContext('2d');
    pen.fillStyle = paper.ground;
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise((done) => canvas.toBlob(done, 'image/png'));
    if (blob) hand(blob, `${button.dataset.name}.png`);
  } finally {
    URL.revokeObjectURL(picture.src);
  }
}

const drawingOf = (button) => button.closest('figure')?.querySelector('svg svg svg');

function textOf(svg) {
  const copy = svg.cloneNode(true);
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', svg.viewBox.baseVal.width);
  copy.setAttribute('height', svg.viewBox.baseVal.height);
  for (const part of copy.querySelectorAll('[tabindex]')) part.removeAttribute('tabindex');
  return new XMLSerializer().serializeToString(copy);
}

function hand(blob, name) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
