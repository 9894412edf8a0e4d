/** The panels of a recording, one under the other with one time axis. */
import uPlot from '/webjars/uplot/dist/uPlot.esm.js';
import { bands, flags, limits } from './backdrop.js';
import { clock } from './view.js';

/** Panels in drawing order; the first two are always there if recorded, the others on request. */
export const PANELS = [
  { id: 'volts', unit: 'V', height: 240, channels: ['measured_v', 'reported_v'], named: true },
  { id: 'amps', unit: 'A', height: 170, channels: ['measured_a', 'reported_a'] },
  { id: 'soc', unit: '%', height: 120, channels: ['reported_soc_pct'] },
  { id: 'rpm', unit: '1/min', height: 120, channels: ['engine_rpm'] },
  { id: 'speed', unit: 'km/h', height: 120, channels: ['speed_kmh'] },
  { id: 'temps', unit: '°C', height: 120, channels: ['coolant_c', 'ambient_c'] },
];

const STEPS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400, 28800, 86400];

/** How each line looks; vehicle's words are dashed so that colour is not needed to tell them. */
export const LOOK = {
  measured_v: ['measured', []], measured_a: ['measured', []],
  reported_v: ['reported', [7, 3]], reported_a: ['reported', [7, 3]], reported_soc_pct: ['reported', [7, 3]],
  engine_rpm: ['fourth', []], speed_kmh: ['fourth', []], coolant_c: ['third', []], ambient_c: ['fourth', [7, 3]],
};

export function build(host, panel, last, chart, t, width) {
  const axis = (more) => ({
    stroke: t.dim, font: `12px ${t.font}`, grid: { stroke: t.line, width: 1 }, ticks: { stroke: t.line, width: 1, size: 5 }, ...more,
  });
  const known = chart.limits.filter(l => l.unit === panel.unit);
  return new uPlot({
    width, height: panel.height + (last ? 30 : 0),
    padding: [6, 14, last ? 0 : 8, 0],
    legend: { show: false },
    cursor: {
      y: false, drag: { x: true, y: false, setScale: false, dist: 6 },
      sync: { key: chart.key, setSeries: false },
      points: { size: 7 },
      bind: { dblclick: () => () => { chart.view.all(); return null; } },
    },
    scales: {
      x: { time: false, auto: false, min: chart.view.from, max: chart.view.to },
      y: { range: (u, low, high) => withLimits(low, high, known) },
    },
    axes: [
      axis({ show: true, size: last ? 34 : 8, incrs: STEPS, space: 70, values: (u, splits, i, space, step) => splits.map(s => last ? clock(s, step) : '') }),
      axis({ size: 56, label: panel.unit, labelSize: 18, labelFont: `12px ${t.font}`, labelGap: 0 }),
    ],
    series: [{}, ...panel.channels.filter(c => chart.has(c)).map(c => ({
      label: c, stroke: t[LOOK[c][0]], width: 1.6, dash: LOOK[c][1], points: { show: false }, spanGaps: false,
    }))],
    hooks: {
      drawClear: [u => bands(u, chart.regimes, t, panel.named)],
      draw: [u => { limits(u, known, t); flags(u, chart.marks, t, panel.named); }],
      setSelect: [u => {
        if (u.select.width < 6) return;
        const from = u.posToVal(u.select.left, 'x'), to = u.posToVal(u.select.left + u.select.width, 'x');
        u.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
        chart.view.show(from, to);
      }],
      setCursor: [u => { if (u.cursor.left >= 0 && u.cursor.event !== undefined) chart.point(u.posToVal(u.cursor.left, 'x')); }],
    },
  }, [[]], host);
}

/** A little air around the values, and a limit taken in where it lies near. */
function withLimits(low, high, known) {
  if (low === null || high === null) return [0, 1];
  const span = Math.max(high - low, 0.05);
  let bottom = low, top = high;
  for (const l of known) {
    if (l.value < bottom && low - l.value < Math.max(span, 1)) bottom = l.value;
    if (l.value > top && l.value - high < Math.max(span, 1)) top = l.value;
  }
  const air = Math.max(top - bottom, 0.05) * 0.08;
  return [bottom - air, top + air];
}

/** Joins the channels of a panel, each with its own times, into uPlot's table. */
export function table(panel, chart, lines) {
  const parts = panel.channels.filter(c => chart.has(c)).map(c => lines[c] ? [lines[c].t, lines[c].v] : [[], []]);
  return parts.length ? uPlot.join(parts) : [[]];
}
