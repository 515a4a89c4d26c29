// The plan that came with the page, and small helpers.
const plan = JSON.parse(document.getElementById("plan").textContent);
const words = plan.words;
const frame = plan.frame;
const byId = (id) => document.getElementById(id);
const lineElements = [...document.querySelectorAll("#strip .line")];

const fill = (text, values) => text.replace(/\{(\w+)\}/g, (_, name) => String(values[name]));

const clamp = (value, low, high) => Math.min(Math.max(value, low), high);

// Eases from 0 to 1 with no step in speed.
const eased = (u) => { const x = clamp(u, 0, 1); return x * x * (3 - 2 * x); };

// Minutes and seconds as people in a studio write them.
function clockText(seconds) {
  const whole = Math.round(Math.abs(seconds));
  const sign = seconds < 0 && whole > 0 ? "−" : "";
  const two = (n) => String(n).padStart(2, "0");
  const [h, m, s] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  return sign + (h ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`);
}

function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value);
  }
  element.append(...children);
  return element;
}

// Writes only what changed: a page that is touched sixty times a second must not lay out again for nothing.
function write(element, text) {
  if (element.textContent !== text) element.textContent = text;
}
