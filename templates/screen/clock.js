// The script's clock: planned seconds, moved by real ones. `due` is where the plan stands: it runs from release to
// hold, whatever the frames do. `at` is where the picture stands: it starts and stops softly and follows `due` over a
// slow frame without a jump. A window or a computer that slept holds both.
const SOFT_S = 0.45;
const SLOW_FRAME_S = 0.25;
const SLEPT_S = 2;
const PAY_BACK = 0.3;

class Clock {
  constructor() {
    this.at = 0;
    this.due = 0;
    this.going = false;
    this.ramp = 0;
    this.factor = 1;
    this.last = null;
    this.apart = null;
    this.onsleep = () => {};
  }

  release() {
    if (this.going || this.due >= plan.end_s) return;
    this.going = true;
    if (Math.abs(speedAt(this.at)) < frame.line_px * 0.05) this.ramp = 1;
  }

  hold(atOnce = false) {
    this.going = false;
    if (atOnce) this.ramp = 0;
  }

  jump(at) {
    this.at = this.due = clamp(at, 0, plan.end_s);
  }

  get rate() {
    return eased(this.ramp);
  }

  // Real seconds since the last tick. `now` in milliseconds.
  tick(now) {
    const gap = (this.last === null ? 0 : Math.max(now - this.last, 0) / 1000) + this.asleep();
    this.last = Math.max(now, this.last ?? now);
    if (gap > SLEPT_S && this.going) {
      this.hold(true);
      this.onsleep(gap);
      return gap;
    }
    this.move(gap);
    return gap;
  }

  // Seconds that the computer slept since the last tick: the page's own clock stands meanwhile, the wall's goes on.
  asleep() {
    const apart = Date.now() - performance.now();
    const slept = this.apart === null ? 0 : (apart - this.apart) / 1000;
    this.apart = apart;
    return slept > SLEPT_S ? slept : 0;
  }

  move(gap) {
    const step = Math.min(gap, SLOW_FRAME_S);
    this.ramp = clamp(this.ramp + (this.going ? step : -step) / SOFT_S, 0, 1);
    if (this.going) this.due = onward(this.due, gap, this.factor);
    const { rate } = this;
    if (rate > 0) this.follow(step * rate);
    if (this.going && this.at >= plan.end_s && this.due >= plan.end_s) this.hold();
  }

  // What a soft start or a slow frame cost is paid back in small parts; what a soft stop ran on is waited for.
  follow(seconds) {
    const next = onward(this.at, seconds, this.factor);
    const most = PAY_BACK * seconds;
    const back = this.going ? clamp(this.due - next, this.ramp < 1 ? 0 : -most, most) : 0;
    this.at = Math.min(next + back, plan.end_s);
  }
}
