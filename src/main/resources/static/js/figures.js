/** Loads the chart when the first recording is shown: on a phone that is when its section is opened. */
const shown = new ResizeObserver(entries => {
  if (!entries.some(entry => entry.contentRect.width > 0)) return;
  shown.disconnect();
  import('./recording.js');
});
const watch = () => document.querySelectorAll('figure.recording[data-series]').forEach(figure => shown.observe(figure));
watch();
document.addEventListener('parts-renewed', watch);
