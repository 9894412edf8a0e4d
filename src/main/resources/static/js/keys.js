/** Reads serials and VINs from the text of a code or of a field. Corrections are offered, never made. */

const VALUES = Object.fromEntries([...'ABCDEFGHJKLMNPRSTUVWXYZ'].map((c, i) => [c, +'12345678123457923456789'[i]]));
const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
/** Characters that are mistaken for each other in print; common practice. */
const ALIKE = ['0DOQ', '1I7L', '2Z', '5S', '6G', '8B', 'UV', 'MN'];

/** Check digit of 17 characters (49 CFR 565.15(c)). */
export function checkDigit(vin) {
  const sum = [...vin].reduce((total, c, i) => total + WEIGHTS[i] * (VALUES[c] ?? Number(c)), 0) % 11;
  return sum === 10 ? 'X' : String(sum);
}

/** North America alone binds the check digit: 1 to 5 and 7F to 70. */
const binds = vin => /^([1-5]|7[F-Z0-9])/.test(vin);
const isVin = text => /^[A-HJ-NPR-Z0-9]{17}$/.test(text) && (!binds(text) || checkDigit(text) === text[8]);
const isSerial = text => /^[A-Z0-9./-]{4,40}$/.test(text);

/**
 * @typedef {{ text: string, doubtful: number[], certain: boolean }} Offer a key, the positions that differ from what was read,
 * and whether it is exactly what was read
 */

/** @returns {Offer[]} what the text may be as a VIN, best first; empty if it is none */
export function vins(raw) {
  const upper = raw.toUpperCase(), whole = upper.replace(/[\s*-]+/g, '');
  const tokens = [whole, ...upper.split(/[^A-Z0-9]+/)].map(t => t.length === 18 && t[0] === 'I' ? t.slice(1) : t);
  const read = tokens.find(t => t.length === 17 && /^[A-Z0-9]+$/.test(t));
  if (!read) return [];
  if (isVin(read)) return [{ text: read, doubtful: [], certain: true }];
  const offers = new Map();
  const mended = read.replaceAll('I', '1').replace(/[OQ]/g, '0');
  if (isVin(mended)) offers.set(mended, true);
  else if (binds(mended)) {
    for (let i = 0; i < 17; i++) {
      for (const c of ALIKE.find(set => set.includes(mended[i])) ?? '') {
        const other = mended.slice(0, i) + c + mended.slice(i + 1);
        if (c !== mended[i] && isVin(other)) offers.set(other, true);
      }
    }
  }
  return [...offers.keys()].slice(0, 6).map(text => offer(text, read));
}

/** @returns {Offer[]} what the text may be as a serial; characters easily mistaken are offered where the text was typed */
export function serials(raw) {
  const read = raw.toUpperCase().replace(/[\s*]+/g, '');
  return isSerial(read) ? [{ text: read, doubtful: [], certain: true }] : [];
}

export const keys = { vin: vins, serial: serials, any: raw => [...new Map([...vins(raw), ...serials(raw)].map(o => [o.text, o])).values()] };

function offer(text, read) {
  const doubtful = [...text].flatMap((c, i) => c === read[i] ? [] : [i]);
  return { text, doubtful, certain: doubtful.length === 0 };
}

/** The text of an offer with its doubtful characters marked. */
export function shown({ text, doubtful }) {
  const code = document.createElement('code');
  [...text].forEach((c, i) => {
    if (!doubtful.includes(i)) return code.append(c);
    const mark = document.createElement('mark');
    mark.textContent = c;
    code.append(mark);
  });
  return code;
}
