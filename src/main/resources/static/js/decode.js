/** Finds codes in pictures with ZXing-C++ as WebAssembly, which this server serves itself. */
import { prepareZXingModule, readBarcodes } from './vendor/zxing-wasm/es/reader/index.js';

const LINEAR = ['Code39', 'Code128'];
const FORMATS = [...LINEAR, 'DataMatrix', 'QRCode'];
/** How many rows of a picture are averaged for a linear code that is blurred or noisy. */
const SQUASH = 4;
/** Turns of the picture in degrees: a linear code is read a third of a right angle off at most. */
const TURNS = [0, 30, -30, 60];
const LARGEST = 1600;

prepareZXingModule({
  overrides: { locateFile: file => new URL(`./vendor/zxing-wasm/${file}`, import.meta.url).href },
  fireImmediately: true,
});

/**
 * @param source picture or video frame @param turn which of the turns to try, counted on from one frame to the next
 * @returns {Promise<{ text: string, format: string }[]>} the codes found, each once
 */
export async function decode(source, turn = 0) {
  const angle = TURNS[turn % TURNS.length] * Math.PI / 180;
  const codes = await read(picture(source, angle, 1), FORMATS);
  if (codes.length) return codes;
  const squashed = picture(source, angle, SQUASH);
  const noisy = await read(squashed, LINEAR);
  return noisy.length ? noisy : read(sharpened(squashed), LINEAR);
}

/** All turns of a still picture. */
export async function decodeStill(source) {
  const all = new Map();
  for (let turn = 0; turn < TURNS.length && !all.size; turn++) {
    for (const code of await decode(source, turn)) all.set(code.text, code);
  }
  return [...all.values()];
}

async function read(picture, formats) {
  if (!picture) return [];
  const found = await readBarcodes(picture, {
    formats, tryHarder: true, tryRotate: true, tryInvert: true, tryDownscale: true, maxNumberOfSymbols: 12,
  });
  return [...new Map(found.filter(f => f.isValid).map(f => [f.text, { text: f.text, format: f.format }])).values()];
}

/** The source turned, no larger than needed, with its full range of brightness. @param squash divides the height */
function picture(source, angle, squash) {
  const width = source.videoWidth ?? source.width, height = source.videoHeight ?? source.height;
  if (!width) return null;
  const scale = Math.min(1, LARGEST / Math.max(width, height));
  const w = width * scale, h = height * scale, cos = Math.abs(Math.cos(angle)), sin = Math.abs(Math.sin(angle));
  const canvas = new OffscreenCanvas(Math.round(w * cos + h * sin), Math.round((w * sin + h * cos) / squash));
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context.imageSmoothingQuality = 'high';
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.translate(canvas.width / 2, canvas.height / 2);
  context.scale(1, 1 / squash);
  context.rotate(angle);
  context.drawImage(source, -w / 2, -h / 2, w, h);
  const pixels = context.getImageData(0, 0, canvas.width, canvas.height);
  stretch(pixels.data);
  return pixels;
}

/**
 * Upright bars lose nothing by averaging along them, which removes noise, and an unsharp mask across them undoes a part of the blur:
 * averages four rows of a squashed picture, and sharpens each.
 */
function sharpened(picture) {
  if (!picture) return null;
  const { width, height, data } = picture, rows = Math.max(1, height - 3), out = new ImageData(2 * width, rows);
  const line = new Float32Array(width), sharp = new Float32Array(width);
  for (let y = 0; y < rows; y++) {
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let k = 0; k < 4 && y + k < height; k++) sum += data[4 * ((y + k) * width + x) + 1];
      line[x] = sum / 4;
    }
    for (let x = 0; x < width; x++) {
      let mean = 0;
      for (let k = -3; k <= 3; k++) mean += line[Math.min(width - 1, Math.max(0, x + k))] / 7;
      sharp[x] = line[x] + 3 * (line[x] - mean);
    }
    for (let x = 0; x < 2 * width; x++) { // twice as wide, so that a narrow bar has more than three columns
      const left = sharp[x >> 1], right = sharp[Math.min(width - 1, (x + 1) >> 1)], i = 4 * (y * 2 * width + x);
      out.data[i] = out.data[i + 1] = out.data[i + 2] = (left + right) / 2;
      out.data[i + 3] = 255;
    }
  }
  return out;
}

/** Spreads the brightness between the 1st and 99th percentile over the whole range: a picture in low light is dark and flat. */
function stretch(data) {
  const counts = new Uint32Array(256), pixels = data.length / 4;
  for (let i = 0; i < data.length; i += 4) counts[(data[i] * 77 + data[i + 1] * 151 + data[i + 2] * 28) >> 8]++;
  let low = 0, high = 255;
  for (let n = counts[0]; n < pixels / 100 && low < 255; n += counts[++low]);
  for (let n = counts[255]; n < pixels / 100 && high > 0; n += counts[--high]);
  if (high - low > 200 || high <= low) return;
  const factor = 255 / (high - low);
  for (let i = 0; i < data.length; i += 4) {
    for (let k = i; k < i + 3; k++) data[k] = (data[k] - low) * factor; // the array clamps to 0 and 255
  }
}
