/** The stretch of a recording that is shown: pure arithmetic, seconds. */
export class View {
  constructor(first, last, onChange) {
    this.first = first;
    this.last = Math.max(last, first + 0.001);
    this.from = this.first;
    this.to = this.last;
    this.onChange = onChange;
  }

  get span() { return this.to - this.from; }

  /** Shows a stretch, held within the recording and no shorter than a thousandth of a second or of the whole's 1e-5. */
  show(from, to) {
    const whole = this.last - this.first;
    const least = Math.max(0.05, whole * 1e-5);
    let span = Math.min(whole, Math.max(least, to - from));
    let start = (from + to) / 2 - span / 2;
    start = Math.min(Math.max(start, this.first), this.last - span);
    if (start === this.from && start + span === this.to) return;
    this.from = start;
    this.to = start + span;
    this.onChange(this);
  }

  /** @param factor below 1 shows less @param about the moment that stays where it is */
  zoom(factor, about = (this.from + this.to) / 2) {
    const share = (about - this.from) / this.span;
    const whole = this.last - this.first;
    const span = Math.min(whole, this.span * factor);
    this.show(about - share * span, about - share * span + span);
  }

  /** @param seconds positive shows what comes later */
  pan(seconds) { this.show(this.from + seconds, this.to + seconds); }

  all() { this.show(this.first, this.last); }
  start() { this.show(this.first, this.first + this.span); }
  end() { this.show(this.last - this.span, this.last); }
}

/** Seconds as m:ss or h:mm:ss, with tenths or hundredths where the step needs them. */
export function clock(seconds, step = 1) {
  const sign = seconds < 0 ? '−' : '';
  const digits = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
  const unit = 10 ** digits;
  const ticks = Math.round(Math.abs(seconds) * unit);
  const whole = Math.floor(ticks / unit);
  const rest = digits ? '.' + String(ticks % unit).padStart(digits, '0') : '';
  const two = n => String(n).padStart(2, '0');
  const h = Math.floor(whole / 3600), m = Math.floor(whole / 60) % 60, s = whole % 60;
  return sign + (h ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`) + rest;
}
