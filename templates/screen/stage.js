// The picture: scales the rig's own pixels to the window, flips it, moves the strip.
const FADE_S = 0.4;
const GLIDE_S = 0.5;

class Stage {
  constructor() {
    this.glass = byId("glass");
    this.canvas = byId("canvas");
    this.strip = byId("strip");
    this.panels = byId("panels");
    this.flip = plan.flip;
    this.panelsTurn = true;
    this.pages = false;
    this.light = 1;
    this.warm = 0;
    this.glide = null;
    this.shown = null;
    this.page = null;
    this.alone = true;
  }

  // Room in window pixels: the whole window for the reader, a box of the operator's view.
  room() {
    return this.alone ? [window.innerWidth, window.innerHeight] : [this.glass.clientWidth, this.glass.clientHeight];
  }

  // Whole device pixels everywhere, so that a flip moves every dot onto a dot.
  fit() {
    const [width, height] = this.room();
    const dots = window.devicePixelRatio || 1;
    const scale = Math.max(Math.min(width / frame.width_px, height / frame.height_px), 1e-6);
    const snap = (value) => Math.floor(value * dots) / dots;
    const [left, top] = [snap((width - frame.width_px * scale) / 2), snap((height - frame.height_px * scale) / 2)];
    this.canvas.style.transform = `translate(${left}px, ${top}px) scale(${scale})`;
    this.scale = scale * dots;
    this.drawn = null;
    this.fresh();
  }

  // A layer keeps the sharpness it was first drawn with: drop it, so that it is drawn anew at this scale.
  fresh() {
    this.strip.style.willChange = "auto";
    void this.strip.offsetHeight;
    requestAnimationFrame(() => { this.strip.style.willChange = ""; });
  }

  turn() {
    const x = this.flip === "horizontal" || this.flip === "both" ? -1 : 1;
    const y = this.flip === "vertical" || this.flip === "both" ? -1 : 1;
    const mirror = x === 1 && y === 1 ? "none" : `scale(${x}, ${y})`;
    this.glass.style.transform = mirror;
    this.panels.style.transform = this.panelsTurn ? "none" : mirror;
  }

  colour() {
    const style = document.documentElement.style;
    style.setProperty("--ink", warmed(plan.ink, this.light, this.warm));
    style.setProperty("--ground", warmed(plan.ground, this.light, this.warm));
  }

  setPages(pages) {
    this.pages = pages;
    this.strip.classList.toggle("pages", pages);
    this.page = null;
  }

  // From where the text stands now it glides to where it should be, or fades over when that is far.
  glideFrom() {
    if (this.shown !== null && !this.pages) this.glide = { from: this.shown, since: null };
  }

  draw(at, now) {
    if (this.pages) this.drawPage(at);
    else this.drawText(at, now);
  }

  drawText(at, now) {
    let height = heightAt(at);
    let opacity = 1;
    if (this.glide) {
      this.glide.since ??= now;
      const u = (now - this.glide.since) / 1000 / GLIDE_S;
      if (u >= 1) this.glide = null;
      else if (Math.abs(height - this.glide.from) <= 2 * frame.line_px) height = this.glide.from + (height - this.glide.from) * eased(u);
      else [height, opacity] = u < 0.5 ? [this.glide.from, 1 - eased(2 * u)] : [height, eased(2 * u - 1)];
    }
    this.shown = height;
    this.place(frame.lens_y_px - height, opacity);
  }

  drawPage(at) {
    const page = screenfulAt(at);
    if (page !== this.page) {
      const [first, last, , shift] = plan.screenfuls[page] ?? [0, -1, 0, 0];
      for (const element of this.strip.querySelectorAll(".shown")) element.classList.remove("shown");
      for (let line = first; line <= last; line += 1) lineElements[line].classList.add("shown");
      this.page = page;
      this.pageShift = shift;
    }
    this.place(this.pageShift, 1);
  }

  place(y, opacity) {
    const snap = (value) => Math.round(value * this.scale) / this.scale;
    const drawn = `translate3d(${snap(frame.left_px)}px, ${snap(y)}px, 0)`;
    if (drawn !== this.drawn) this.strip.style.transform = this.drawn = drawn;
    if (opacity !== this.opacity) this.strip.style.opacity = this.opacity = opacity;
  }

}

// A colour dimmed to a share of its light and warmed in three steps (blue and some green taken away).
function warmed(colour, light, warm) {
  const digits = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour);
  if (!digits) return colour;
  const share = [1, 1 - 0.06 * warm, 1 - 0.2 * warm];
  return `rgb(${digits.slice(1).map((hex, i) => Math.round(parseInt(hex, 16) * light * share[i])).join(" ")})`;
}
