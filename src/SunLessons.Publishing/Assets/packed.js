// Reads back a packed text: two of 91 signs for 13 or 14 bits, then gzip. Used by the page and, as its own text, by the worker.
async function unpackedText(text) {
  const values = new Int16Array(128).fill(-1);
  let count = 0;
  for (let code = 0x21; code < 0x7f; code++) if (code !== 0x22 && code !== 0x5c && code !== 0x3c) values[code] = count++;
  const raw = new Uint8Array(Math.ceil(text.length * 14 / 16));
  let at = 0, queue = 0, bits = 0, first = -1;
  for (let i = 0; i < text.length; i++) {
    const value = values[text.charCodeAt(i)];
    if (first < 0) { first = value; continue; }
    const pair = first + value * 91;
    first = -1;
    queue |= pair << bits;
    bits += (pair & 8191) > 88 ? 13 : 14;
    while (bits > 7) { raw[at++] = queue & 255; queue >>= 8; bits -= 8; }
  }
  if (first >= 0) raw[at++] = (queue | first << bits) & 255;
  const stream = new Blob([raw.subarray(0, at)]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}
