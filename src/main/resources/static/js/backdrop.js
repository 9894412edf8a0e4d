/** What lies behind and over the lines: regimes as patterned bands, limits as dashed lines, marks as flags. */

const PATTERNS = {
  rest: (c, s) => dots(c, s, 1, 8),
  cranking: (c, s) => { lines(c, s, 1); lines(c, s, -1); },
  charging: (c, s) => lines(c, s, 1),
  holding: (c, s) => level(c, s, 8),
  discharging: (c, s) => lines(c, s, -1),
  stopped: (c, s) => upright(c, s),
  unknown: () => {},
};

function lines(c, s, way) {
  c.beginPath();
  for (const shift of [-s, 0, s]) {
    c.moveTo(shift, way > 0 ? s : 0);
    c.lineTo(shift + s, way > 0 ? 0 : s);
  }
  c.stroke();
}
function dots(c, s) { c.fillRect(s / 4, s / 4, s / 8, s / 8); c.fillRect(3 * s / 4, 3 * s / 4, s / 8, s / 8); }
function level(c, s) { c.beginPath(); c.moveTo(0, s / 2); c.lineTo(s, s / 2); c.stroke(); }
function upright(c, s) { c.beginPath(); c.moveTo(s / 2, 0); c.lineTo(s / 2, s); c.stroke(); }

const TINT = { charging: 0.16, discharging: 0.16, cranking: 0.28, stopped: 0.1, holding: 0.06, rest: 0.05, unknown: 0 };

export function theme(element) {
  const style = getComputedStyle(element);
  const read = name => style.getPropertyValue(name).trim();
  return {
    ink: read('--ink'), dim: read('--dim'), line: read('--line'), strong: read('--line-strong'), card: read('--card'),
    measured: read('--measured'), reported: read('--reported'), third: read('--third'), fourth: read('--fourth'),
    outside: read('--outside'), font: style.fontFamily,
  };
}

const tintOf = (regime, t) => regime === 'discharging' || regime === 'cranking' ? t.reported : regime === 'charging' ? t.measured : t.dim;

/** A canvas pattern of a regime, the same in the band and in the key. */
export function pattern(context, regime, t, ratio) {
  const s = Math.round(10 * ratio);
  const tile = document.createElement('canvas');
  tile.width = tile.height = s;
  const c = tile.getContext('2d');
  c.strokeStyle = c.fillStyle = tintOf(regime, t);
  c.lineWidth = ratio;
  c.globalAlpha = TINT[regime] ?? 0;
  c.fillRect(0, 0, s, s);
  c.globalAlpha = 0.32;
  (PATTERNS[regime] ?? PATTERNS.unknown)(c, s);
  return context.createPattern(tile, 'repeat');
}

/** Bands of the regimes; the panel that carries names writes them where they fit. */
export function bands(u, regimes, t, named) {
  const { ctx, bbox } = u, ratio = devicePixelRatio;
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
  ctx.clip();
  for (const r of regimes) {
    if (r.to <= u.scales.x.min || r.from >= u.scales.x.max) continue;
    const x0 = Math.max(bbox.left, u.valToPos(r.from, 'x', true));
    const x1 = Math.min(bbox.left + bbox.width, u.valToPos(r.to, 'x', true));
    ctx.fillStyle = pattern(ctx, r.regime, t, ratio);
    ctx.fillRect(x0, bbox.top, x1 - x0, bbox.height);
    ctx.fillStyle = t.line;
    ctx.fillRect(x0, bbox.top, ratio, bbox.height);
    if (named) name(ctx, r.label, x0, x1, bbox.top, t, ratio);
  }
  ctx.restore();
}

function name(ctx, text, x0, x1, top, t, ratio) {
  ctx.font = `${11 * ratio}px ${t.font}`;
  const wide = ctx.measureText(text).width;
  if (wide + 8 * ratio > x1 - x0) return;
  ctx.fillStyle = t.card;
  ctx.globalAlpha = 0.85;
  ctx.fillRect(x0 + 3 * ratio, top + 2 * ratio, wide + 6 * ratio, 15 * ratio);
  ctx.globalAlpha = 1;
  ctx.fillStyle = t.ink;
  ctx.textBaseline = 'top';
  ctx.textAlign = 'left';
  ctx.fillText(text, x0 + 6 * ratio, top + 4 * ratio);
}

/** Limits as dashed lines with their labels at the right end; limits on one line share it, and labels never lie on each other. */
export function limits(u, all, t) {
  const { ctx, bbox } = u, ratio = devicePixelRatio, taken = [];
  ctx.save();
  ctx.font = `600 ${11 * ratio}px ${t.font}`;
  for (const group of together(all)) {
    const y = u.valToPos(group[0].value, 'y', true);
    if (y < bbox.top || y > bbox.top + bbox.height) continue;
    ctx.strokeStyle = t.outside;
    ctx.lineWidth = 1.5 * ratio;
    ctx.setLineDash([6 * ratio, 4 * ratio]);
    ctx.beginPath();
    ctx.moveTo(bbox.left, y);
    ctx.lineTo(bbox.left + bbox.width, y);
    ctx.stroke();
    ctx.setLineDash([]);
    const whole = group.map(l => l.label).join(' · ');
    const text = ctx.measureText(whole).width < bbox.width * 0.6 ? whole : group[0].short;
    const high = 14 * ratio, wide = ctx.measureText(text).width, right = bbox.left + bbox.width - 4 * ratio;
    const places = [y - 16 * ratio, y + 2 * ratio].filter(top => top >= bbox.top + 22 * ratio || top > y);
    const top = places.find(p => p + high <= bbox.top + bbox.height && taken.every(o => Math.abs(o - p) >= high));
    if (top === undefined) continue;
    taken.push(top);
    ctx.fillStyle = t.card;
    ctx.globalAlpha = 0.85;
    ctx.fillRect(right - wide - 3 * ratio, top, wide + 6 * ratio, high);
    ctx.globalAlpha = 1;
    ctx.fillStyle = t.outside;
    ctx.textAlign = 'right';
    ctx.textBaseline = 'middle';
    ctx.fillText(text, right, top + 7.5 * ratio);
  }
  ctx.restore();
}

/** Limits of one value, in the order given. */
function together(all) {
  const groups = new Map();
  for (const l of all) groups.set(l.value, [...(groups.get(l.value) ?? []), l]);
  return groups.values();
}

/** The driver's marks: a numbered flag on a pole; the numbers are those of the list under the chart. */
export function flags(u, marks, t, numbered) {
  const { ctx, bbox } = u, ratio = devicePixelRatio;
  ctx.save();
  ctx.font = `600 ${10 * ratio}px ${t.font}`;
  marks.forEach((m, i) => {
    if (m.at < u.scales.x.min || m.at > u.scales.x.max) return;
    const x = u.valToPos(m.at, 'x', true);
    ctx.strokeStyle = ctx.fillStyle = t.third;
    ctx.lineWidth = 1.5 * ratio;
    ctx.beginPath();
    ctx.moveTo(x, bbox.top);
    ctx.lineTo(x, bbox.top + bbox.height);
    ctx.stroke();
    if (!numbered) return;
    const text = String(i + 1), wide = ctx.measureText(text).width + 8 * ratio, y = bbox.top + 20 * ratio;
    const left = x + wide > bbox.left + bbox.width ? x - wide : x;
    ctx.fillRect(left, y, wide, 14 * ratio);
    ctx.fillStyle = t.card;
    ctx.textAlign = 'center';
    ctx.textBaseline = 'middle';
    ctx.fillText(text, left + wide / 2, y + 7.5 * ratio);
  });
  ctx.restore();
}
