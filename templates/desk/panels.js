// What stands beside the copy: time, findings, lines on the glass, prepared files. Built of elements, never of markup.

export function element(name, values = {}, ...inside) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(values)) {
    if (key.startsWith("on")) made.addEventListener(key.slice(2), value);
    else if (value !== null && value !== undefined && value !== false) made.setAttribute(key, value === true ? "" : value);
  }
  made.append(...inside.filter((one) => one !== null && one !== undefined));
  return made;
}

const VERDICTS = { fits: "✓ fits", tight: "≈ tight", over: "▲ over", "no slot": "" };

export function drawScripts(list, scripts, chosen, choose) {
  const shows = new Map();
  for (const one of scripts) {
    const show = one.show ?? one.name;
    shows.set(show, [...(shows.get(show) ?? []), one]);
  }
  list.replaceChildren(
    ...[...shows].map(([show, versions]) =>
      element(
        "li", {},
        element("div", { class: "show" }, show),
        ...versions.map((one) =>
          element(
            "button",
            { "aria-current": String(one.name === chosen), title: one.error ? one.error.message : `${one.title}. ${one.sentence}`, onclick: () => choose(one.name) },
            element("span", {}, one.error ? "?" : one.language),
            element("span", {}, one.error ? "cannot be read" : one.mean),
            element("span", { class: one.error ? "broken" : one.verdict }, one.error ? "!" : VERDICTS[one.verdict]),
          ),
        ),
      ),
    ),
  );
}

export function drawTime(place, view, go) {
  const time = view.time;
  const longest = Math.max(time.high_s, time.slot_s ?? 0) * 1.03 || 1;
  const percent = (seconds) => `${(100 * seconds) / longest}%`;
  place.className = time.verdict;
  place.replaceChildren(
    element("h2", {}, "Time"),
    element("p", { class: "big" }, time.mean, element("small", {}, ` in 8 of 10 takes ${time.low} to ${time.high}`)),
    element(
      "div", { class: "bar", role: "img", "aria-label": time.sentence },
      element("i", { class: "mean", style: `width:${percent(time.mean_s)}` }),
      element("i", { class: "range", style: `left:${percent(time.low_s)};width:${percent(time.high_s - time.low_s)}` }),
      time.slot_s === null ? null : element("i", { class: "slot", style: `left:${percent(time.slot_s)}` }),
    ),
    element("p", { class: "verdict" }, time.sentence),
    element(
      "table", {},
      ...view.segments.map((one) =>
        element(
          "tr", {},
          element("th", { scope: "row" }, element("button", { dir: "auto", onclick: () => go(one.at) }, one.title)),
          element("td", {}, one.mean),
          element("td", {}, one.slot === null ? "" : `of ${one.slot}`),
          element("td", { class: one.over_s > 0.5 ? "over" : "" }, one.over_s === null ? "" : signed(one.over_s)),
        ),
      ),
    ),
    element("p", { class: "pace" }, `${view.reader ?? "A reader whom nobody has timed"}; ${time.words} words. Pace: ${time.pace}.`),
  );
}

function signed(seconds) {
  const whole = Math.round(Math.abs(seconds));
  return `${seconds < 0 ? "−" : "+"}${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

export function drawFindings(place, findings, go) {
  place.querySelector("h2").textContent = findings.length ? `Findings: ${findings.length}` : "No findings";
  place.querySelector("ol").replaceChildren(
    ...findings.map((one, number) =>
      element(
        "li", {},
        element(
          "button", { onclick: () => go(one.start, one.end, number) },
          element("b", { class: one.level }, one.level), `line ${one.line}: ${one.message}`,
          element("span", { class: "hint", dir: "auto" }, one.excerpt),
          one.why ? element("span", { class: "why" }, one.why) : null,
          one.hint ? element("span", { class: "hint" }, one.hint) : null,
        ),
      ),
    ),
  );
}

export function drawGlass(place, view, go) {
  place.querySelector("p").textContent =
    `${view.rig}: ${view.view.lines} lines in view, about ${Math.round(view.view.characters)} characters each`;
  place.querySelector("ol").replaceChildren(
    ...view.rows.map((row) =>
      element(
        "li", { class: row.kind, "data-at": row.at, onclick: () => go(row.at, row.at) },
        element("time", {}, row.time ?? ""),
        element("span", { dir: view.direction, lang: view.language }, row.text),
      ),
    ),
  );
}

export function follow(place, caret) {
  let here = null;
  for (const row of place.querySelectorAll("li.line")) {
    row.removeAttribute("aria-current");
    if (Number(row.dataset.at) <= caret) here = row;
  }
  if (!here) return;
  here.setAttribute("aria-current", "true");
  const list = here.parentElement;
  if (here.offsetTop < list.scrollTop + list.offsetTop || here.offsetTop > list.scrollTop + list.offsetTop + list.clientHeight - 40)
    list.scrollTop = here.offsetTop - list.offsetTop - list.clientHeight / 3;
}

export function drawFiles(place, made, of) {
  place.hidden = false;
  place.querySelector("h2").textContent = `Prepared: ${of}`;
  const order = ["report.html", ".screen.html", ".paper.pdf", ".crew.pdf"];
  const rank = (name) => (order.findIndex((end) => name.endsWith(end)) + order.length + 1) % (order.length + 1);
  const shown = made.files.filter((name) => !name.endsWith(".json")).sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));
  place.querySelector("ul").replaceChildren(
    ...made.first.map((text) => element("li", {}, `• ${text}`)),
    ...shown.map((name) => element("li", {}, element("a", { href: `/out/${encodeURIComponent(name)}`, target: "_blank", rel: "noopener" }, name))),
    ...made.kept.map((name) => element("li", {}, `kept beside: ${name}`)),
  );
}

export function drawStudio(place, studio, chosen, choose, make) {
  place.replaceChildren(
    studio === null
      ? element("button", { onclick: make }, "Describe your studio")
      : element("button", { "aria-current": String(studio.name === chosen), onclick: () => choose(studio.name) }, `Studio: ${studio.name}`),
  );
}

export function drawRigs(place, view) {
  place.replaceChildren(
    element("h2", {}, view.title || "Your studio"),
    ...view.rigs.map((rig) =>
      element(
        "article", {},
        element("h3", {}, rig.title),
        element("p", {}, `${rig.type}; flip ${rig.flip}`),
        rig.advice ? element("p", { class: "advice" }, rig.advice) : null,
        verdictTable(rig.verdicts.filter((one) => one.level !== "good")),
        ...rig.drawings.map(drawing),
        element(
          "details", {},
          element("summary", {}, "All figures and limits"),
          element("table", {}, ...rig.figures.map(([name, value]) => element("tr", {}, element("th", { scope: "row" }, name), element("td", {}, value)))),
          verdictTable(rig.verdicts),
        ),
        element("ul", { class: "care" }, ...rig.cautions.map((text) => element("li", {}, text))),
      ),
    ),
    element("p", { class: "pace" }, view.readers.map((one) => `${one.name}: ${one.paces.length ? `timed in ${one.paces.join(", ")}` : "not timed yet"}`).join(" · ")),
  );
}

function verdictTable(verdicts) {
  return element(
    "table", {},
    ...verdicts.map((one) =>
      element(
        "tr", { title: one.source },
        element("td", {}, element("b", { class: one.level }, one.level)),
        element("th", { scope: "row" }, one.name),
        element("td", {}, one.value),
        element("td", {}, one.bounds),
      ),
    ),
  );
}

function drawing(text) {
  return document.importNode(new DOMParser().parseFromString(text, "image/svg+xml").documentElement, true);
}
