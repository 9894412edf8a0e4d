/**
 * Draws a recording. The page holds the same facts as tables; the chart reads regimes, marks and limits from there and
 * asks the server for the visible stretch, thinned so that every minimum and maximum survives.
 */
import { pattern, theme } from './backdrop.js';
import { gestures } from './gestures.js';
import { LOOK, PANELS, build, table } from './plots.js';
import { View, clock } from './view.js';

const DEBOUNCE_MS = 140;

class Chart {
  constructor(figure, index) {
    this.figure = figure;
    this.key = 'recording-' + index;
    this.part = name => figure.querySelector(`[data-part=${name}]`);
    this.plot = this.part('plot');
    this.readout = this.part('readout');
    this.range = this.part('range');
    const rows = (name, read) => [...figure.querySelectorAll(`[data-${name}]`)].map(e => read(e.dataset, e));
    this.regimes = rows('regime-from', d => ({ from: +d.regimeFrom, to: +d.regimeTo, regime: d.regime, label: d.label }));
    this.marks = rows('mark-at', d => ({ at: +d.markAt, text: d.text }));
    this.limits = rows('limit-value', d => ({ value: +d.limitValue, unit: d.unit, label: d.label, short: d.short }));
    this.names = new Map(rows('channel', d => [d.channel, d]));
    this.chosen = new Set(['volts', 'amps']);
    this.lines = {};
    this.plots = [];
    this.view = new View(+figure.dataset.from, +figure.dataset.to, () => this.moved());
  }

  has(channel) { return this.names.has(channel); }

  start() {
    this.figure.querySelectorAll('[data-script]').forEach(e => { e.hidden = false; });
    this.part('wait').hidden = true;
    this.part('tools').addEventListener('click', e => this.tool(e.target.closest('button')?.dataset.do));
    this.part('tools').addEventListener('change', e => {
      if (e.target.checked) this.chosen.add(e.target.value); else this.chosen.delete(e.target.value);
      this.rebuild();
      this.fetch();
    });
    gestures(this.plot, this);
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.rebuild());
    let width = this.plot.clientWidth;
    new ResizeObserver(() => {
      if (this.plot.clientWidth !== width) { width = this.plot.clientWidth; this.rebuild(); this.soon(); }
    }).observe(this.plot);
    if (!width) return; // in a section that is not shown yet
    this.rebuild();
    this.fetch();
  }

  tool(what) {
    const view = this.view;
    ({ in: () => view.zoom(0.5), out: () => view.zoom(2), left: () => view.pan(-view.span / 4), right: () => view.pan(view.span / 4), all: () => view.all() })[what]?.();
  }

  panels() { return PANELS.filter(p => this.chosen.has(p.id) && p.channels.some(c => this.has(c))); }

  rebuild() {
    this.plots.forEach(p => p.u.destroy());
    this.plot.replaceChildren();
    const t = theme(this.figure), panels = this.panels();
    this.plots = panels.map((panel, i) => ({ panel, u: build(this.plot, panel, i === panels.length - 1, this, t, this.plot.clientWidth) }));
    this.paintKey(t);
    this.fill();
  }

  paintKey(t) {
    for (const canvas of this.figure.querySelectorAll('canvas[data-pattern], canvas[data-line]')) {
      const ratio = devicePixelRatio, c = canvas.getContext('2d');
      canvas.width = 30 * ratio;
      canvas.height = 14 * ratio;
      if (canvas.dataset.pattern) {
        c.fillStyle = pattern(c, canvas.dataset.pattern, t, ratio);
        c.fillRect(0, 0, canvas.width, canvas.height);
      } else {
        const [colour, dash] = LOOK[canvas.dataset.line];
        c.strokeStyle = t[colour];
        c.lineWidth = 2 * ratio;
        c.setLineDash(dash.map(d => d * ratio));
        c.beginPath();
        c.moveTo(2 * ratio, canvas.height / 2);
        c.lineTo(canvas.width - 2 * ratio, canvas.height / 2);
        c.stroke();
      }
    }
  }

  fill() {
    for (const { panel, u } of this.plots) {
      u.setData(table(panel, this, this.lines), false);
      u.setScale('x', { min: this.view.from, max: this.view.to });
    }
    this.tell();
  }

  moved() {
    for (const { u } of this.plots) u.setScale('x', { min: this.view.from, max: this.view.to });
    this.tell();
    this.soon();
  }

  tell() {
    const { from, to, span } = this.view;
    const step = span < 20 ? 0.1 : 1;
    this.range.value = `${clock(from, step)} – ${clock(to, step)}`;
    this.plot.dataset.from = from.toFixed(3);
    this.plot.dataset.to = to.toFixed(3);
  }

  soon() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.fetch(), DEBOUNCE_MS);
  }

  async fetch() {
    this.asked?.abort();
    const asked = this.asked = new AbortController();
    const { from, to, span, first, last } = this.view;
    const channels = this.panels().flatMap(p => p.channels).filter(c => this.has(c));
    const query = new URLSearchParams({
      channels: channels.join(','), from: Math.max(first, from - span / 4), to: Math.min(last, to + span / 4),
      points: Math.round(Math.min(4000, Math.max(400, this.innerWidth() * 1.5))),
    });
    try {
      const answer = await fetch(`${this.figure.dataset.series}?${query}`, { signal: asked.signal, headers: { Accept: 'application/json' } });
      if (!answer.ok) throw new Error(String(answer.status));
      this.lines = (await answer.json()).channels;
      this.part('trouble').hidden = true;
      this.fill();
      this.plot.dataset.drawn = `${this.view.from.toFixed(3)},${this.view.to.toFixed(3)}`;
    } catch (trouble) {
      if (trouble.name !== 'AbortError') this.part('trouble').hidden = false;
    }
  }

  innerWidth() { return this.plots[0] ? this.plots[0].u.over.clientWidth || 300 : 300; }

  timeAt(clientX) {
    const box = this.plots[0].u.over.getBoundingClientRect();
    return this.view.from + (clientX - box.left) / box.width * this.view.span;
  }

  /** The moment the reader looks at: the cursor if it is in view, else the middle. */
  focus() {
    const { from, to } = this.view;
    return this.at >= from && this.at <= to ? this.at : (from + to) / 2;
  }

  /** Moves the cursor by keys. */
  step(way) {
    const { from, to, span } = this.view;
    this.at = Math.min(to, Math.max(from, this.focus() + way * span / 100));
    for (const { u } of this.plots) u.setCursor({ left: u.valToPos(this.at, 'x'), top: 10 }, false);
    this.point(this.at);
  }

  hint() { this.readout.textContent = this.readout.dataset.hint; }

  /** Tells what was measured and reported at a moment. */
  point(time) {
    this.at = time;
    const out = [];
    const say = (name, value) => { const b = document.createElement('b'); b.textContent = value; const s = document.createElement('span'); s.append(name + ' ', b); out.push(s); };
    say(this.readout.dataset.time, clock(time, this.view.span < 60 ? 0.1 : 1));
    for (const [channel, d] of this.names) {
      const value = nearest(this.lines[channel], time, this.view.span);
      if (value !== null) say(d.label, `${value.toFixed(d.unit === 'V' ? 2 : d.unit === 'A' ? 1 : 0).replace('-', '−')} ${d.unit}`);
    }
    const regime = this.regimes.find(r => time >= r.from && time < r.to);
    if (regime) say(this.readout.dataset.regime, regime.label);
    const mark = this.marks.find(m => Math.abs(m.at - time) < this.view.span / 150);
    if (mark) say('⚑', mark.text);
    this.readout.replaceChildren(...out);
  }
}

/** The value of a line at the sample nearest to a time; null where none is near. */
function nearest(line, time, span) {
  if (!line || !line.t.length) return null;
  let low = 0, high = line.t.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (line.t[middle] <= time) low = middle; else high = middle;
  }
  const i = Math.abs(line.t[low] - time) <= Math.abs(line.t[high] - time) ? low : high;
  return Math.abs(line.t[i] - time) <= Math.max(5, span / 50) ? line.v[i] : null;
}

let count = 0;
function drawAll() {
  for (const figure of document.querySelectorAll('figure.recording[data-series]:not([data-started])')) {
    figure.dataset.started = '';
    new Chart(figure, count++).start();
  }
}
drawAll();
document.addEventListener('parts-renewed', drawAll);
