/** Mouse, touch and keys on a chart. Dragging with the mouse is the plots' own: it selects a stretch. */
export function gestures(plot, chart) {
  const at = clientX => chart.timeAt(clientX);
  const perPixel = () => chart.view.span / chart.innerWidth();
  const down = new Map();

  plot.addEventListener('wheel', event => {
    if (Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
      event.preventDefault();
      chart.view.pan(event.deltaX * perPixel());
      return;
    }
    if (!event.ctrlKey && !plot.contains(document.activeElement)) {
      chart.hint();
      return;
    }
    event.preventDefault();
    const pixels = event.deltaMode === 1 ? event.deltaY * 16 : event.deltaY;
    chart.view.zoom(Math.exp(Math.max(-1, Math.min(1, pixels * 0.002))), at(event.clientX));
  }, { passive: false });

  plot.addEventListener('pointerdown', event => {
    plot.focus({ preventScroll: true });
    if (event.pointerType === 'mouse' && !event.shiftKey) return;
    event.preventDefault();
    event.stopPropagation();
    plot.setPointerCapture(event.pointerId);
    down.set(event.pointerId, event.clientX);
  }, { capture: true });

  plot.addEventListener('pointermove', event => {
    if (!down.has(event.pointerId)) return;
    const before = [...down.values()];
    down.set(event.pointerId, event.clientX);
    const now = [...down.values()];
    if (now.length === 1) {
      chart.view.pan((before[0] - now[0]) * perPixel());
    } else {
      const apart = v => Math.max(8, Math.abs(v[0] - v[1])), middle = v => (v[0] + v[1]) / 2;
      chart.view.pan((middle(before) - middle(now)) * perPixel());
      chart.view.zoom(apart(before) / apart(now), at(middle(now)));
    }
  });

  const up = event => {
    if (down.delete(event.pointerId) && event.pointerType !== 'mouse') chart.point(at(event.clientX));
  };
  plot.addEventListener('pointerup', up);
  plot.addEventListener('pointercancel', up);

  plot.addEventListener('keydown', event => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const view = chart.view;
    const does = {
      ArrowLeft: () => event.shiftKey ? chart.step(-1) : view.pan(-view.span / 10),
      ArrowRight: () => event.shiftKey ? chart.step(1) : view.pan(view.span / 10),
      '+': () => view.zoom(0.5, chart.focus()), '=': () => view.zoom(0.5, chart.focus()),
      '-': () => view.zoom(2, chart.focus()), '−': () => view.zoom(2, chart.focus()),
      0: () => view.all(), Home: () => view.start(), End: () => view.end(),
    }[event.key];
    if (!does) return;
    event.preventDefault();
    does();
  });
}
