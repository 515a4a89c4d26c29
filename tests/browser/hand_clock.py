"""The page's clock in the test's hand: one call is one frame, and time stands still between two."""

from __future__ import annotations

from typing import Any

from promptprep.model.prepared import PreparedScript
from promptprep.rendering.screen import screen_html
from tests.rendering.screen_factory import env, fonts

HAND_CLOCK = """(() => {
  let now = 0; let asleep = 0; const born = Date.now(); const waiting = [];
  window.requestAnimationFrame = (f) => waiting.push(f);
  performance.now = () => now;
  Date.now = () => born + now + asleep;
  window.pass = (ms) => { now += ms; };
  window.sleep = (ms) => { asleep += ms; };
  window.wall = () => (now + asleep) / 1000;
  window.frame = (ms) => { now += ms; for (const f of waiting.splice(0)) f(now); };
  window.key = (key, ago = 0) => { const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true });
    Object.defineProperty(event, 'timeStamp', { value: now - ago }); document.dispatchEvent(event); };
  window.lensOf = (n) => { const r = document.querySelector(`[data-line="${n}"]`).getBoundingClientRect();
    return (r.top + r.bottom) / 2; };
  window.shift = () => Number(/, (-?[\\d.]+)px/.exec(document.getElementById('strip').style.transform)[1]);
  window.play = (seconds, ms) => { const seen = []; const end = now + seconds * 1000;
    while (now < end - 1e-6) { frame(ms); seen.push([now / 1000, shift()]); } return seen; };
})()"""
"""`frame(ms)` draws, `pass(ms)` lets time go by without a frame, `sleep(ms)` is the computer's own sleep (the wall's
clock alone goes on), `key(k, ago)` is a key that was pressed `ago` ms before the page got to it."""


def held(context: Any, write_page: Any, one: PreparedScript, fragment: str = "flip=none&at=0&hold=1") -> Any:
    """The page of a script, held at its first frame."""
    page = context.new_page()
    page.add_init_script(HAND_CLOCK)
    page.goto(f"{write_page('a.html', screen_html(one, env(), fonts))}#{fragment}")
    page.evaluate("document.fonts.ready")
    page.evaluate("frame(1000 / 60)")
    return page
