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
    this.still = false;
  }

  // Room in window pixels: the whole window for the reader, a box of the operator's view.
  room() {
    return this.alone ? [window.innerWidth, window.innerHeight] : [this.glass.clientWidth, this.glass.clientHeight];
  }

  // Sizes follow the window by layout, not by a scaled layer, and the layers stand on whole device pixels: a flip
  // moves every dot onto a dot.
  fit() {
    const [width, height] = this.room();
    const dots = window.devicePixelRatio || 1;
    const scale = Math.max(Math.min(width / frame.width_px, height / frame.height_px), 1e-4);
    const step = [1, 2, 3, 4].find((n) => Number.isInteger(n * dots)) ?? 1;
    const snap = (value) => Math.floor(value / step + 1e-6) * step;
    document.documentElement.style.setProperty("--px", `${scale}px`);
    this.canvas.style.left = `${snap((width - frame.width_px * scale) / 2)}px`;
    this.canvas.style.top = `${snap((height - frame.height_px * scale) / 2)}px`;
    this.column(scale, snap);
    this.scale = scale;
    this.dots = dots;
    this.step = step;
    this.drawn = null;
    this.measure();
  }

  // The moving layer is no wider than the copy with some room for overhanging letters: less to draw for each frame.
  column(scale, snap) {
    const [left, room] = [frame.left_px * scale, 0.3 * frame.line_px * scale];
    const edge = snap(left - room);
    const width = Math.ceil(left - edge + frame.column_px * scale + room);
    const right = width - (left - edge) - frame.column_px * scale;
    const style = { left: `${edge}px`, width: `${width}px`, paddingLeft: `${left - edge}px`, paddingRight: `${right}px` };
    Object.assign(this.strip.style, style);
  }

  // Where the middles of the lines really are, in window pixels of the strip: browsers round heights. Measured
  // upright, so that every flip gets the very same numbers.
  measure() {
    const turned = this.glass.style.transform;
    this.glass.style.transform = "none";
    const { top } = this.strip.getBoundingClientRect();
    this.centres = lineElements.map((element) => {
      const box = element.getBoundingClientRect();
      return (box.top + box.bottom) / 2 - top;
    });
    this.glass.style.transform = turned;
  }

  // A height of the planned strip as window pixels of the strip as laid out.
  laid(height) {
    const i = lastNotAfter(plan.lines, height - frame.line_px / 2, (l) => l[3]);
    if (i < 0 || i >= this.centres.length - 1) {
      const end = clamp(i, 0, this.centres.length - 1);
      return this.centres.length ? this.centres[end] + (height - centreOf(end)) * this.scale : 0;
    }
    const share = (height - centreOf(i)) / (centreOf(i + 1) - centreOf(i));
    return this.centres[i] + share * (this.centres[i + 1] - this.centres[i]);
  }

  turn() {
    const x = this.flip === "horizontal" || this.flip === "both" ? -1 : 1;
    const y = this.flip === "vertical" || this.flip === "both" ? -1 : 1;
    const [width, height] = this.room();
    const mirror = x === 1 && y === 1 ? "none" : `matrix(${x}, 0, 0, ${y}, ${x < 0 ? width : 0}, ${y < 0 ? height : 0})`;
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
    this.place(frame.lens_y_px * this.scale - this.laid(height), opacity);
  }

  drawPage(at) {
    const page = screenfulAt(at);
    if (page !== this.page) {
      const [first, last, , shift] = plan.screenfuls[page] ?? [0, -1, 0, 0];
      for (const element of this.strip.querySelectorAll(".shown")) element.classList.remove("shown");
      for (let line = first; line <= last; line += 1) lineElements[line].classList.add("shown");
      this.page = page;
      this.pageFirst = [first, centreOf(first) + shift];
    }
    this.place(this.pageFirst[1] * this.scale - (this.centres[this.pageFirst[0]] ?? 0), 1);
  }

  place(y, opacity) {
    const drawn = `translate3d(0, ${this.still ? this.step * Math.round(y / this.step) : Math.round(y * this.dots) / this.dots}px, 0)`;
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
