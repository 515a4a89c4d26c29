// The script's clock: planned seconds, moved by real ones. It starts and stops softly, pays back what a soft start or
// a slow frame cost (less what the soft stop before it ran on), and holds rather than jumps when the window slept.
const SOFT_S = 0.45;
const SLOW_FRAME_S = 0.25;
const SLEPT_S = 2;
const PAY_BACK = 0.3;

class Clock {
  constructor() {
    this.at = 0;
    this.going = false;
    this.ramp = 0;
    this.factor = 1;
    this.owed = 0;
    this.last = null;
    this.onsleep = () => {};
  }

  release() {
    if (this.going || this.at >= plan.end_s) return;
    this.going = true;
    if (Math.abs(speedAt(this.at)) < frame.line_px * 0.05) this.ramp = 1;
  }

  hold(atOnce = false) {
    this.going = false;
    this.owed = 0;
    if (atOnce) this.ramp = 0;
  }

  jump(at) {
    this.at = clamp(at, 0, plan.end_s);
    this.owed = 0;
  }

  get rate() {
    return eased(this.ramp);
  }

  // Real seconds since the last frame. `now` in milliseconds.
  tick(now) {
    const gap = this.last === null ? 0 : Math.max(now - this.last, 0) / 1000;
    this.last = now;
    if (gap > SLEPT_S && this.going) {
      this.hold(true);
      this.onsleep(gap);
      return gap;
    }
    this.move(gap);
    return gap;
  }

  move(gap) {
    const step = Math.min(gap, SLOW_FRAME_S);
    if (this.going) this.owed += gap - step;
    this.ramp = clamp(this.ramp + (this.going ? step : -step) / SOFT_S, 0, 1);
    const rate = this.rate;
    this.owed += this.going ? step * (1 - rate) : -step * rate;
    const back = this.going ? clamp(this.owed, 0, step * PAY_BACK * rate) : 0;
    this.owed -= back;
    if (rate > 0) this.advance((step * rate + back) * (waitAt(this.at) ? 1 : this.factor));
  }

  advance(seconds) {
    this.at = Math.min(this.at + seconds, plan.end_s);
    if (this.at >= plan.end_s) this.hold();
  }
}
